import { describe, expect, test } from 'vitest';
import { settledCycle } from '../../../daemon/probe/simulated/cycle.ts';
import { demoIrons, type IronTraits } from '../../../daemon/probe/simulated/irons.ts';
import { advanceBody, coldBody } from '../../../daemon/probe/simulated/physics.ts';
import { followPlate, probeText } from '../../../daemon/probe/simulated/probe.ts';
import { Sitter } from '../../unit/iron/dial/sitting-plate.ts';

/** Warm-up and drop under load of simulated irons, through their probes, against what they truly do. */

const dialC = 150;
const around = { ambientC: 21, dialC, runaway: false };

/** Cold for 20 s, on its rest for ten cycles or so, then on the work for as long; with what truly happened. */
function useOf({ body, probe, wire }: IronTraits) {
  const sitter = new Sitter().say({ mark: 3, place: 'on-rest' });
  const dtS = wire.periodMs / 1000;
  const restS = 300 + 8 * settledCycle(body, { ...around, onWork: false }).periodS;
  const workS = 60 + 7 * settledCycle(body, { ...around, onWork: true }).periodS;
  let state = coldBody(around.ambientC);
  let junctionC = around.ambientC;
  let seed = 5;
  let firstPeak: { tS: number; plateC: number } | null = null;
  for (let tS = 0; tS < 20 + restS + workS; tS += dtS) {
    const onWork = tS >= 20 + restS;
    const after = advanceBody(body, state, { ...around, dialC: tS < 20 ? null : dialC, onWork }, dtS);
    if (firstPeak === null && after.plateC < state.plateC - 1e-6) firstPeak = { tS, plateC: state.plateC };
    junctionC = followPlate(probe.lagS, junctionC, { fromC: state.plateC, toC: after.plateC, dtS });
    state = after;
    const said = probeText(probe, junctionC, seed);
    seed = said.seed;
    if (onWork) sitter.say({ place: 'on-work' });
    sitter.hear(sitter.tMs + wire.periodMs, Number(said.text));
  }
  sitter.say({ place: 'on-rest' }).hear(sitter.tMs + wire.periodMs, junctionC);
  return { sitter, firstPeak };
}

describe.each(demoIrons.map((iron) => [iron.name, iron] as const))('%s', (_, traits) => {
  const { sitter, firstPeak } = useOf(traits);
  const { figures } = sitter.last;
  const rest = settledCycle(traits.body, { ...around, onWork: false });
  const work = settledCycle(traits.body, { ...around, onWork: true });

  test('heating-up time and excess', () => {
    if (firstPeak === null) throw new Error('it never peaked');
    // Where the plate leaves the kelvin in which it stands, and where a flat peak lies, both cost some seconds.
    const lateS = (figures.heatingUpS ?? 0) - (firstPeak.tS - 20);
    const overK = (figures.heatingUpExcessK ?? 0) - (firstPeak.plateC - rest.meanC);
    expect(Math.abs(lateS)).toBeLessThan(8);
    expect(Math.abs(overK)).toBeLessThan(0.5);
  });

  test('drop under load', () => {
    const [load] = sitter.loads;
    expect(sitter.loads).toHaveLength(1);
    // On the work the steady iron swings 4.7 K in 27 s; through its probe's lag and the smoothing too little is left of
    // that to be a cycle (3 K), so its mean there is not told.
    if (traits.name === 'Steady demo iron') expect(load?.meanDropK).toBeNull();
    else expect(Math.abs((load?.meanDropK ?? 99) - (rest.meanC - work.meanC))).toBeLessThan(0.1);
    expect(Math.abs((load?.troughDropK ?? 99) - (rest.troughC - work.troughC))).toBeLessThan(0.1);
  });
});
