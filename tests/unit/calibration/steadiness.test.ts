import { describe, expect, test } from 'vitest';
import type { PointKind } from '../../../shared/calibration/calibration.ts';
import {
  addReading,
  measuredOf,
  type Steadiness,
  startWaiting,
  waitingOf,
} from '../../../shared/calibration/steadiness.ts';
import { drawer } from '../watch/support/worked-iron.ts';

/** Follows `plateC` of seconds, a reading every `everyMs`, from `fromS` to `toS`. */
function wait(
  state: Steadiness,
  plateC: (s: number) => number,
  span: { readonly fromS: number; readonly toS: number; readonly everyMs?: number },
): Steadiness {
  let next = state;
  for (let tMs = span.fromS * 1000; tMs <= span.toS * 1000; tMs += span.everyMs ?? 100)
    next = addReading(next, tMs, plateC(tMs / 1000));
  return next;
}
const steady = (kind: PointKind, plateC: (s: number) => number, toS: number): boolean =>
  waitingOf(wait(startWaiting(kind), plateC, { fromS: 0, toS })).steady;

test('nothing yet: no progress and no figures', () => {
  const waiting = waitingOf(startWaiting('ice'));
  expect(waiting).toMatchObject({ progress: 0, steady: false, meanC: null, readings: 0 });
  expect(measuredOf(waiting)).toBeNull();
});

test('a reading that holds becomes steady after the window, and not before', () => {
  expect(steady('ice', () => 0.4, 19.9)).toBe(false);
  expect(steady('ice', () => 0.4, 20)).toBe(true);
  expect(waitingOf(wait(startWaiting('ice'), () => 0.4, { fromS: 0, toS: 10 })).progress).toBeCloseTo(0.5, 1);
});

test('mean and spread are those of the readings, of the last window only', () => {
  const draw = drawer(3);
  const noisy = wait(startWaiting('boiling'), () => 98 + draw(-0.3, 0.3), { fromS: 0, toS: 90 });
  const waiting = waitingOf(noisy);
  expect(waiting.steady).toBe(true);
  expect(waiting.meanC).toBeCloseTo(98, 1);
  // A rectangular distribution of half-width 0.3.
  expect(waiting.spreadK).toBeCloseTo(0.3 / Math.sqrt(3), 1);
  expect(waiting.readings).toBeGreaterThan(195);
  expect(waiting.readings).toBeLessThan(215);
  expect(measuredOf(waiting)).toMatchObject({ readingC: waiting.meanC, readings: waiting.readings });
});

test('a probe that is still settling is not steady, and its progress says so', () => {
  const plunged = (s: number): number => 100 - 80 * Math.exp(-s / 10);
  const early = waitingOf(wait(startWaiting('boiling'), plunged, { fromS: 0, toS: 25 }));
  expect(early.steady).toBe(false);
  expect(early.progress).toBeLessThan(0.5);
  // After ten time constants less than 0.04 K of the step is left in the window.
  const late = waitingOf(wait(startWaiting('boiling'), plunged, { fromS: 0, toS: 100 }));
  expect(late.steady).toBe(true);
  expect(late.meanC).toBeCloseTo(100, 1);
});

test('progress falls back when the reading moves', () => {
  const held = wait(startWaiting('ice'), () => 0, { fromS: 0, toS: 19 });
  const moved = wait(held, () => 5, { fromS: 19.1, toS: 21 });
  expect(waitingOf(held).progress).toBeGreaterThan(0.9);
  expect(waitingOf(moved)).toMatchObject({ steady: false, resolutionK: null });
  expect(waitingOf(moved).progress).toBeLessThan(0.2);
});

test('a slow creep inside the spread is no steadiness: never shown as done', () => {
  const creeping = waitingOf(wait(startWaiting('ice'), (s) => s / 60, { fromS: 0, toS: 60 }));
  expect(creeping.driftKPerMin).toBeCloseTo(1, 1);
  expect(creeping).toMatchObject({ steady: false, progress: 0.95 });
});

test('a plate may move more than water', () => {
  const losing = (s: number): number => 160 - (4 * s) / 60;
  expect(steady('contact', losing, 30)).toBe(true);
  expect(steady('boiling', losing, 30)).toBe(false);
  expect(steady('contact', (s) => 160 - (12 * s) / 60, 30)).toBe(false);
});

describe('coarse probes', () => {
  test('one that counts whole degrees and flickers between two is steady', () => {
    const state = wait(startWaiting('ice'), (s) => Math.floor(s * 10) % 2, { fromS: 0, toS: 25 });
    expect(waitingOf(state)).toMatchObject({ steady: true, resolutionK: 1 });
  });

  test('one that stands still is steady too, and its step is not known', () => {
    expect(waitingOf(wait(startWaiting('ice'), () => 1, { fromS: 0, toS: 25 }))).toMatchObject({
      steady: true,
      spreadK: 0,
      resolutionK: null,
    });
  });

  test('one that climbs by whole degrees is not', () => {
    expect(steady('ice', (s) => Math.floor(s / 4), 40)).toBe(false);
  });
});

describe('rough lines', () => {
  test('a gap begins the window anew', () => {
    const before = wait(startWaiting('ice'), () => 0, { fromS: 0, toS: 19 });
    expect(waitingOf(addReading(before, 23_000, 0))).toMatchObject({ readings: 1, progress: 0 });
  });

  test('no numbers are left out, and early ones count with the last', () => {
    const state = wait(startWaiting('ice'), () => 0, { fromS: 0, toS: 5 });
    expect(addReading(state, 5100, Number.NaN)).toBe(state);
    expect(waitingOf(addReading(state, 4900, 0)).readings).toBe(waitingOf(state).readings + 1);
    expect(addReading(state, 4900, 0).lastMs).toBe(state.lastMs);
  });

  test('a reading a second or two thousand a second: the same answer, and no growing state', () => {
    const slow = wait(startWaiting('ice'), () => 0, { fromS: 0, toS: 60, everyMs: 1000 });
    const fast = wait(startWaiting('ice'), () => 0, { fromS: 0, toS: 60, everyMs: 4 });
    expect([waitingOf(slow).steady, waitingOf(fast).steady]).toEqual([true, true]);
    expect(fast.seconds.length).toBeLessThanOrEqual(21);
  });

  test('the state survives JSON', () => {
    const state = wait(startWaiting('contact'), (s) => 150 + Math.sin(s), { fromS: 0, toS: 30 });
    expect(JSON.parse(JSON.stringify(state))).toEqual(state);
  });
});
