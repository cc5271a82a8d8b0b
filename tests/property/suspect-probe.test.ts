import { describe, expect, test } from 'vitest';
import { type IronTraits, withEmf } from '../../daemon/probe/simulated/irons.ts';
import { leftOnRest, type Scenario } from '../../daemon/probe/simulated/scenario.ts';
import { saidBy, simulateIron } from '../../daemon/probe/simulated/simulated-iron.ts';
import { varyIron } from '../../daemon/probe/simulated/vary.ts';
import { parseLine } from '../../daemon/probe/wire/line.ts';
import { type ThermocoupleType, thermocoupleTypes } from '../../shared/thermocouple/types.ts';
import { Live } from '../unit/watch/support/live.ts';
import { carried, probeSettings, watchSettings } from '../unit/watch/support/settings.ts';
import { drawer } from '../unit/watch/support/worked-iron.ts';

/** A watch that hears a simulated iron's own lines, from cold. */
function heard(iron: IronTraits, scenario: Scenario, set: ThermocoupleType, forS: number) {
  const live = new Live(carried(watchSettings([probeSettings('board/1', { thermocouple: set })])));
  let [seed, suspectedAtMs, plateC]: [number, number | null, number] = [0, null, 0];
  for (const { tMs, lines, truth } of saidBy(simulateIron(iron, scenario, ++seed))) {
    if (tMs > forS * 1000) break;
    live.tMs = tMs;
    for (const line of lines) {
      const parsed = parseLine(line, 'board');
      if (parsed.kind === 'sample') live.give({ kind: 'sample', sample: parsed.sample });
    }
    if (suspectedAtMs === null && live.alarm('suspect-probe') !== undefined) {
      suspectedAtMs = tMs;
      plateC = truth.plateC;
    }
  }
  return { live, suspectedAtMs, plateC };
}

/** Cold for half a minute, then at some setting. */
function scenarioOf(seed: number): Scenario {
  const dialC = drawer(seed)(110, 175);
  return { ...leftOnRest(dialC), turns: [{ atS: 30, dialC }] };
}

const typeOf = (seed: number): ThermocoupleType => thermocoupleTypes[seed % thermocoupleTypes.length] ?? 'K';

describe('simulated irons from cold, of known truth', () => {
  test('with the right type are never suspected, through warm-up and a quarter of an hour of cycles', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const type = typeOf(seed);
      const iron = withEmf(varyIron(seed), { type, reversed: false });
      const { live } = heard(iron, scenarioOf(seed), type, 900);
      expect(live.changes.filter((c) => c.startsWith('suspect-probe'))).toEqual([]);
      expect(live.state.behaviour.phase).toBe('regulating');
    }
  });

  test('with swapped wires are told before the plate is at its stage', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const type = typeOf(seed);
      const iron = withEmf(varyIron(seed), { type, reversed: true });
      const { live, suspectedAtMs, plateC } = heard(iron, scenarioOf(seed), type, 240);
      expect(suspectedAtMs).toBeGreaterThan(30_000);
      expect(plateC).toBeLessThan(100);
      expect(live.alarm('suspect-probe')).toMatchObject({ state: 'unacknowledged', detail: 'reversed' });
    }
  });
});
