import { expect, it } from 'vitest';
import { demoScenario } from '../../../daemon/probe/simulated/demo-scenario.ts';
import { padIron } from '../../../daemon/probe/simulated/irons.ts';
import { saidBy, simulateIron } from '../../../daemon/probe/simulated/simulated-iron.ts';
import { type CheckFound, emptyPad, onPad, type Pad } from '../../../shared/iron/check/pad.ts';

/** The checks of one round of the demo's work, with where the true plate was while it lay there. */
function demoChecks(): readonly { readonly check: CheckFound; readonly hottestC: number }[] {
  const checks: { check: CheckFound; hottestC: number }[] = [];
  let pad: Pad = emptyPad;
  let hottestC = 0;
  for (const { tMs, truth } of saidBy(simulateIron(padIron, demoScenario, 1))) {
    if (tMs > demoScenario.lengthS * 1000) return checks;
    if (truth.place === 'on-rest') hottestC = Math.max(hottestC, truth.plateC);
    const step = onPad(pad, { tMs, padC: truth.junctionC, tauS: null, uK: 3 });
    pad = step.pad;
    for (const check of step.found) if (check.ended !== null) checks.push({ check, hottestC });
    if (pad.contact === null && truth.place !== 'on-rest') hottestC = 0;
  }
  return checks;
}

it('a check pad under the demo’s iron is read at each rest, and never above what the plate was', () => {
  const checks = demoChecks();
  const settled = checks.filter(({ check }) => check.settledMs !== null);
  expect(checks.every(({ check }) => check.ended === 'lifted')).toBe(true);
  expect(settled.length).toBeGreaterThanOrEqual(5);
  for (const { check, hottestC } of settled) {
    expect(check.hottestC).toBeLessThanOrEqual(hottestC + 0.01);
    // The plate is past the peak of its work by the time the pad has come up to it.
    expect(hottestC - check.hottestC).toBeLessThan(7);
  }
});
