import { expect, test } from 'vitest';
import { sessionOf } from '../soak/warnings/sessions.ts';
import { watchSession } from '../soak/warnings/study.ts';
import { tally } from '../soak/warnings/table.ts';

/** A slice of the study in tests/soak/warnings: two hours of it, with each kind of mishap. */

const LASTS_S = 1500;
const COUNT = 5;

/**
 * The bounds: each crossing is warned of, nine of ten 2 s ahead at least (an alarm's own delay of 1 s is in that). Before a
 * thermostat's peaks are known, one false warning an hour at most, and two where the lag is not known either; after that
 * none, and one.
 */
test('two hours of simulated work: no crossing without a warning, and no warning at each cycle', () => {
  const outcomes = Array.from({ length: COUNT }, (_, i) => watchSession(sessionOf(i + 1, LASTS_S)));
  const [slope, known, unknown] = tally(outcomes, (COUNT * LASTS_S) / 3600);
  if (slope === undefined || known === undefined || unknown === undefined) return expect.unreachable();
  expect(known.crossings).toBeGreaterThan(3);
  expect([known.missed, unknown.missed]).toEqual([0, 0]);
  expect(known.leadS[1]).toBeGreaterThan(2);
  expect(unknown.leadS[1]).toBeGreaterThan(2);
  expect(known.falseUnknownPerHour).toBeLessThanOrEqual(1);
  expect(unknown.falseUnknownPerHour).toBeLessThanOrEqual(2);
  expect(known.falseKnownPerHour).toBe(0);
  expect(unknown.falseKnownPerHour).toBeLessThanOrEqual(1);
});
