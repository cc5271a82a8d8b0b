import { describe, expect, test } from 'vitest';
import { AIR_HOLDS_MS, type AirSegment, airAt, airCourse } from '../../../shared/cure/course.ts';
import { courseOf, HOUR_MS, MINUTE_MS, NOW_MS, OWN_AIR, probeAt } from './curing.ts';

const DAYS_60_MS = 60 * 86_400_000;
const warm = { airC: 30, rhPct: 40 };
const forecastAt = (hours: number) => ({ ...warm, atUtcMs: NOW_MS + hours * HOUR_MS });

/** What is taken for the air at so many minutes from now. */
const at = (course: readonly AirSegment[], minutes: number): AirSegment | undefined =>
  course.find(
    ({ fromMs, toMs }) => fromMs <= NOW_MS + minutes * MINUTE_MS && NOW_MS + minutes * MINUTE_MS < toMs,
  );

/** No gap, nothing twice, to sixty days from now. */
function sound(course: readonly AirSegment[]): void {
  for (const [i, { fromMs, toMs }] of course.entries()) {
    expect(toMs).toBeGreaterThan(fromMs);
    if (i > 0) expect(fromMs).toBe(course[i - 1]?.toMs);
  }
  expect(course.at(-1)?.toMs).toBe(NOW_MS + DAYS_60_MS);
}

describe('the air as it was told', () => {
  test('nothing told: nothing known, for as long as can be seen', () => {
    const course = courseOf([]);
    expect(course).toHaveLength(1);
    expect(course[0]).toMatchObject({ fromMs: NOW_MS, air: null, why: 'no-air' });
    sound(course);
  });

  test('a probe is believed for a quarter of an hour, then less with each hour, up to a most', () => {
    const course = courseOf([probeAt(0)]);
    sound(course);
    expect(at(course, 14)).toMatchObject({ air: OWN_AIR, doubt: { airK: 0, rhPct: 0 }, why: null });
    expect(at(course, 16)).toMatchObject({ air: OWN_AIR, doubt: { airK: 0.5, rhPct: 2 }, why: 'old-air' });
    expect(at(course, 5 * 60)).toMatchObject({ doubt: { airK: 2.5, rhPct: 10 } });
    expect(at(course, 24 * 60)).toMatchObject({
      air: OWN_AIR,
      doubt: { airK: 6, rhPct: 20 },
      why: 'old-air',
    });
  });

  test('what was typed is believed for four hours, and never sharply', () => {
    const course = courseOf([{ ...probeAt(0), how: 'typed' }]);
    expect(at(course, 239)).toMatchObject({ doubt: { airK: 1.5, rhPct: 5 }, why: 'typed' });
    expect(at(course, 241)).toMatchObject({ doubt: { airK: 2, rhPct: 7 }, why: 'old-air' });
  });

  test('a night without data leaves no gap, and the morning’s reading is believed again', () => {
    const course = courseOf([probeAt(-600), probeAt(-1, warm)]);
    sound(course);
    expect(at(course, -30)).toMatchObject({ air: OWN_AIR, doubt: { airK: 5, rhPct: 20 }, why: 'old-air' });
    expect(at(course, 0)).toMatchObject({ air: warm, why: null });
  });

  test('in any order; of two at one moment the last counts', () => {
    const [early, late] = [probeAt(-20), probeAt(-10, warm)];
    expect(courseOf([late, early])).toEqual(courseOf([early, late]));
    const twice = courseOf([early, probeAt(-10), late]);
    expect(twice).toEqual(courseOf([early, late]));
    sound(twice);
  });

  test('told of a time that is still to come (a clock that was set back): it counts from then on', () => {
    const course = courseOf([probeAt(90, warm)]);
    expect(course[0]?.fromMs).toBe(NOW_MS + 90 * MINUTE_MS);
    sound(course);
    sound(courseOf([{ ...OWN_AIR, atUtcMs: NOW_MS + 2 * DAYS_60_MS, how: 'probe' }]));
  });
});

describe('the air as it is expected', () => {
  test('a forecast takes over from its time on, and gets old itself', () => {
    const course = courseOf([probeAt(0)], [forecastAt(2)]);
    sound(course);
    expect(at(course, 119)).toMatchObject({ air: OWN_AIR });
    expect(at(course, 121)).toMatchObject({ air: warm, doubt: { airK: 2.5, rhPct: 10 }, why: 'forecast' });
    expect(at(course, 5 * 60 + 1)).toMatchObject({
      air: warm,
      doubt: { airK: 3, rhPct: 12 },
      why: 'old-air',
    });
  });

  test('it stands back for as long as what was told last holds: longer where that was typed', () => {
    const standsBackMin = (how: 'probe' | 'typed'): number => {
      const course = courseOf([{ ...probeAt(0), how }], [forecastAt(0.1)]);
      sound(course);
      const foreseen = course.find(({ air }) => air?.airC === warm.airC);
      return ((foreseen?.fromMs ?? Number.NaN) - NOW_MS) / MINUTE_MS;
    };
    expect(standsBackMin('probe')).toBe(15);
    expect(standsBackMin('typed')).toBe(240);
    // Typed first, told by a probe since: that one holds, and for as long as a probe's.
    const both = courseOf([{ ...probeAt(0), how: 'typed' }, probeAt(30)], [forecastAt(0.1)]);
    expect(at(both, 44)).toMatchObject({ air: OWN_AIR, why: null });
    expect(at(both, 46)).toMatchObject({ air: OWN_AIR, why: 'old-air' });
  });

  test('it stands back while a probe tells, and where it was passed by', () => {
    const points = [0, 10, 20, 30].map((minutes) => probeAt(minutes));
    expect(courseOf(points, [forecastAt(0.2)])).toEqual(courseOf(points));
    const passed = courseOf(points, [forecastAt(-1)]);
    expect(passed[0]).toMatchObject({ air: warm, why: 'forecast' });
    expect(passed.slice(1)).toEqual(courseOf(points));
    // Of those that stood back the last one counts.
    const course = courseOf([probeAt(0)], [{ ...forecastAt(0.1), airC: 10 }, forecastAt(0.2)]);
    sound(course);
    expect(at(course, 16)).toMatchObject({ air: warm, why: 'forecast' });
  });

  test('without any other air it is all there is, from its own time on', () => {
    const course = courseOf([], [forecastAt(1)]);
    expect(course[0]).toMatchObject({ fromMs: NOW_MS + HOUR_MS, air: warm });
    sound(course);
  });

  test('what is taken for the air doesn’t depend on when it is asked', () => {
    const told = { points: [probeAt(0)], forecast: [forecastAt(2), forecastAt(4)] };
    const [early, late] = [0, 5].map((hours) => airCourse({ ...told, nowUtcMs: NOW_MS + hours * HOUR_MS }));
    expect(early?.slice(0, -1)).toEqual(late?.slice(0, -1));
  });
});

describe('which air counts at a moment', () => {
  const points = [{ ...probeAt(0), how: 'typed' as const }];
  const forecast = [forecastAt(-1), forecastAt(2), forecastAt(5)];
  const counts = (minutes: number) => airAt({ points, forecast }, NOW_MS + minutes * MINUTE_MS);

  test('is the point that was told, while that holds, then what was forecast since', () => {
    expect(counts(-61)).toBeNull();
    expect(counts(-1)).toMatchObject({ how: 'forecast', atUtcMs: NOW_MS - HOUR_MS });
    expect(counts(0)).toBe(points[0]);
    expect(counts(239)).toBe(points[0]);
    expect(counts(240)).toMatchObject({ how: 'forecast', atUtcMs: NOW_MS + 2 * HOUR_MS });
    expect(counts(301)).toMatchObject({ how: 'forecast', atUtcMs: NOW_MS + 5 * HOUR_MS });
    expect(airAt({ points, forecast: [] }, NOW_MS + 9000 * MINUTE_MS)).toBe(points[0]);
    expect(airAt({ points: [], forecast: [] }, NOW_MS)).toBeNull();
  });

  test('is what the course has there', () => {
    const course = courseOf(points, forecast);
    for (let minutes = -60; minutes < 600; minutes += 7) {
      const { airC, rhPct } = counts(minutes) ?? expect.unreachable();
      expect(at(course, minutes)?.air).toEqual({ airC, rhPct });
    }
  });
});

test('how long each is believed is in order', () => {
  expect(AIR_HOLDS_MS.probe).toBeLessThan(AIR_HOLDS_MS.forecast);
});
