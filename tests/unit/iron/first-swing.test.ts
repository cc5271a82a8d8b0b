import { describe, expect, test } from 'vitest';
import { settledCycle } from '../../../daemon/probe/simulated/cycle.ts';
import { bigIron, type IronTraits } from '../../../daemon/probe/simulated/irons.ts';
import type { Scenario } from '../../../daemon/probe/simulated/scenario.ts';
import { saidBy, simulateIron } from '../../../daemon/probe/simulated/simulated-iron.ts';
import { varyIron } from '../../../daemon/probe/simulated/vary.ts';
import { noBehaviour, observe } from '../../../shared/iron/behaviour.ts';
import type { Cycle } from '../../../shared/iron/cycle.ts';
import { drawer, work } from '../watch/support/worked-iron.ts';

/** A first peak far above the later swing says nothing of it: the cycles after it are seen at once, and no false ones. */

const still: Omit<Scenario, 'turns'> = { name: 'On its rest', ambientC: 21, lengthS: 1e9, faults: [] };

/** What is found of a simulated iron in `forS` seconds, and when its heater truly came on. */
function watched(traits: IronTraits, scenario: Scenario, forS: number, seed = 1) {
  let behaviour = noBehaviour;
  let on = false;
  const cycles: (Cycle & { readonly seenMs: number })[] = [];
  const cameOnMs: number[] = [];
  for (const { tMs, lines, truth } of saidBy(simulateIron(traits, scenario, seed))) {
    if (tMs > forS * 1000) return { cycles, cameOnMs };
    if (truth.heaterOn && !on) cameOnMs.push(tMs);
    on = truth.heaterOn;
    const text = / t=(-?[\d.]+)/.exec(lines.at(-1) ?? '')?.[1];
    const step = observe(behaviour, tMs, Number(text));
    behaviour = step.behaviour;
    if (step.cycle !== null) cycles.push({ ...step.cycle, seenMs: tMs });
  }
  throw new Error('a simulated iron never ends');
}

const slow = (traits: IronTraits): IronTraits => ({ ...traits, wire: { ...traits.wire, periodMs: 500 } });

/** A heavy heater and a quick thermostat: a small swing. */
const narrowIron = slow({
  ...bigIron,
  body: { ...bigIron.body, heaterMassJPerK: 400, couplingWPerK: 25, hysteresisK: 3 },
});

describe.each([170, 185])('brought up at a dial of %i degC, then turned down to 150', (firstC) => {
  const turns = [
    { atS: 0, dialC: firstC },
    { atS: 200, dialC: 150 },
  ];
  const { cycles, cameOnMs } = watched(narrowIron, { ...still, turns }, 1500);
  const truth = settledCycle(narrowIron.body, { ambientC: 21, dialC: 150, onWork: false, runaway: false });

  test('the small swing is seen with its second true cycle at the latest', () => {
    const secondOnMs = cameOnMs.filter((ms) => ms > 200_000)[0] ?? Number.NaN;
    expect(((cycles[0]?.seenMs ?? Number.POSITIVE_INFINITY) - secondOnMs) / 1000).toBeLessThan(
      2 * truth.periodS + 20,
    );
  });

  test('and each cycle is a true one', () => {
    expect(cycles.length).toBeGreaterThan(10);
    for (const { peakC, troughC, meanC } of cycles.slice(1)) {
      expect(Math.abs(peakC - troughC - (truth.peakC - truth.troughC))).toBeLessThan(1);
      expect(Math.abs(meanC - truth.meanC)).toBeLessThan(0.5);
    }
  });
});

test('work right after the first peak makes no false cycles: between two of the heater’s there is one at most', () => {
  let found = 0;
  for (let seed = 1; seed <= 30; seed++) {
    const draw = drawer(seed * 31);
    const fromS = draw(60, 200);
    const turns = [{ atS: 0, dialC: draw(115, 180) }, ...work(fromS, fromS + 1200, draw)];
    const { cycles, cameOnMs } = watched(slow(varyIron(seed)), { ...still, turns }, fromS + 1200, seed);
    found += cycles.length;
    // A cycle spans the heater's coming on at its beginning and at its end, each seen some seconds later.
    const isFalse = ({ fromMs, toMs }: Cycle): boolean =>
      cameOnMs.filter((ms) => ms > fromMs - 15_000 && ms < toMs + 5000).length < 2;
    expect(cycles.filter(isFalse), `seed ${seed}`).toEqual([]);
  }
  expect(found).toBeGreaterThan(200);
});
