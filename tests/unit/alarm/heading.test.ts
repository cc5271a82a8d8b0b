import { describe, expect, test } from 'vitest';
import {
  followReach,
  type HeadingFacts,
  headingForLimit,
  noReach,
  type Reach,
  secondsToLimit,
  WARN_FIRST_S,
  WARN_S,
} from '../../../shared/alarm/heading.ts';
import type { PlateEstimate } from '../../../shared/thermometer/lag/filter.ts';

const LIMIT_C = 190;

const plate = (plateC: number, slopeKPerS: number, more: Partial<PlateEstimate> = {}): PlateEstimate => ({
  plateC,
  slopeKPerS,
  standardK: 0.1,
  slopeStandardKPerS: 0.05,
  aheadK: 0,
  ...more,
});

const facts = (estimate: PlateEstimate, expectedPeakC: number | null = null): HeadingFacts => ({
  readC: estimate.plateC,
  estimate,
  limitC: LIMIT_C,
  expectedPeakC,
});

const judge = (estimate: PlateEstimate, expectedPeakC: number | null = null, reach: Reach = noReach) =>
  headingForLimit(facts(estimate, expectedPeakC), reach);

/** The reach after these, with a peak of 180 degC expected. */
const after = (estimates: readonly PlateEstimate[], from: Reach = noReach): Reach =>
  estimates.reduce((reach, e) => followReach(reach, facts(e, 180)), from);

const cycle = [plate(160, 0.8), plate(170, 0.9), plate(179, 0.3), plate(178.5, -0.2), plate(165, -0.3)];

describe('by slope, while no peak is known', () => {
  test('it comes some seconds before the limit and goes back with some more', () => {
    expect(judge(plate(LIMIT_C - WARN_FIRST_S + 0.1, 1))).toBe('beyond');
    expect(judge(plate(LIMIT_C - WARN_FIRST_S - 0.1, 1))).toBe('in-deadband');
    expect(judge(plate(LIMIT_C - 1.5 * WARN_FIRST_S - 0.1, 1))).toBe('inside');
  });

  test('a plate that rests or falls close under the limit heads nowhere', () => {
    expect(judge(plate(LIMIT_C - 0.5, 0))).toBe('inside');
    expect(judge(plate(LIMIT_C - 0.5, -0.4))).toBe('inside');
    expect(judge(plate(LIMIT_C - 0.5, 0.04))).toBe('inside');
  });

  test('an unmeasured lag brings it sooner', () => {
    const e = plate(LIMIT_C - WARN_FIRST_S - 4, 1);
    expect(judge(e)).not.toBe('beyond');
    expect(judge({ ...e, aheadK: 4.5 })).toBe('beyond');
    expect(secondsToLimit({ ...e, aheadK: 5 }, LIMIT_C)).toBeCloseTo(WARN_FIRST_S - 1, 9);
  });

  test('a plate that is over the limit before its lagging probe is: told while it rises', () => {
    expect(headingForLimit({ ...facts(plate(LIMIT_C + 0.5, 0.02)), readC: LIMIT_C - 2 }, noReach)).toBe(
      'beyond',
    );
    expect(headingForLimit({ ...facts(plate(LIMIT_C + 0.5, -0.1)), readC: LIMIT_C - 2 }, noReach)).toBe(
      'in-deadband',
    );
  });

  test('over the limit it neither comes nor goes; without a reading nothing is known', () => {
    expect(judge(plate(LIMIT_C, 1))).toBe('in-deadband');
    const none = { readC: null, estimate: null, limitC: LIMIT_C, expectedPeakC: null };
    expect(headingForLimit(none, noReach)).toBe('unknown');
    expect(followReach(after(cycle.slice(0, 2)), none).rising).toBeNull();
  });
});

describe('once its peaks are known', () => {
  test('it comes a little sooner', () => {
    expect(judge(plate(LIMIT_C - WARN_S + 0.1, 1), 200)).toBe('beyond');
    expect(judge(plate(LIMIT_C - WARN_S - 0.1, 1), 200)).toBe('in-deadband');
  });

  const close = { limitC: 183, expectedPeakC: 180 };

  test('a thermostat that stays close under the limit says nothing in its usual rise', () => {
    const reach = after([...cycle, ...cycle]);
    for (const e of cycle) expect(headingForLimit({ ...facts(e), ...close }, reach)).toBe('inside');
  });

  test('one that goes on rising where it usually turns is told before it passes its own peak', () => {
    const reach = after(cycle);
    expect(reach.usual?.aheadC).toBeCloseTo(Math.max(170 + 0.9 * WARN_S, 179 + 0.3 * WARN_S), 9);
    expect(headingForLimit({ ...facts(plate(170, 0.9)), ...close }, reach)).toBe('inside');
    expect(headingForLimit({ ...facts(plate(177, 1)), ...close }, reach)).toBe('beyond');
  });

  test('one that creeps beyond its peak is told', () => {
    const creeping = facts(plate(182.2, 0.2));
    expect(headingForLimit({ ...creeping, ...close }, after(cycle))).toBe('beyond');
  });

  test('one whose peaks are over the limit is judged by slope', () => {
    expect(judge(plate(185, 1), 195)).toBe('beyond');
  });

  test('a rise counts as usual only once the plate has come back from its peak', () => {
    const rising = after([plate(178, 1), plate(179, 0.1), plate(177, -0.1), plate(178, 0.2)]);
    expect(rising.usual).toBeNull();
    expect(after([plate(175, -0.2)], rising).usual?.aheadC).toBeCloseTo(178 + WARN_S, 9);
  });

  test('one that passed the limit never does', () => {
    const over = followReach(noReach, facts(plate(LIMIT_C + 1, 1), 195));
    expect(followReach(over, facts(plate(LIMIT_C - 4, -0.2), 195))).toEqual(noReach);
  });

  test('the rise from cold counts once its peak is known', () => {
    let reach = followReach(noReach, facts(plate(170, 1.5)));
    reach = followReach(reach, facts(plate(178, -0.1)));
    reach = followReach(reach, facts(plate(174, -0.3)));
    expect(reach.usual).toBeNull();
    expect(followReach(reach, facts(plate(173, -0.3), 178)).usual?.aheadC).toBeCloseTo(170 + 1.5 * WARN_S, 9);
  });

  test('after the dial was turned up, the first rise waits for its own peak to be counted', () => {
    const up = after([plate(193, 1), plate(194, 0.1), plate(190, -0.2)], after(cycle));
    expect(up.usual?.plateC).toBe(179);
    expect(up.rising?.plateC).toBe(194);
  });

  test('a plate that was let down before its peak was known leaves nothing behind', () => {
    const up = followReach(noReach, facts(plate(178, 1)));
    expect(followReach(up, facts(plate(140, -0.5))).rising?.plateC).toBe(178);
    expect(followReach(up, facts(plate(132, -0.5)))).toEqual(noReach);
  });

  test('with the dial turned down, or cold again, nothing is usual any more', () => {
    const reach = after(cycle);
    expect(followReach(reach, facts(plate(140, -0.2), 150)).usual).toBeNull();
    expect(followReach(reach, facts(plate(40, -0.1)))).toEqual(noReach);
  });
});
