import type { AirPoint } from '../../../shared/cure/air.ts';
import type { Cement, DryingStageKind } from '../../../shared/cure/cement.ts';
import { type CoatAsked, type CoatClock, coatClock } from '../../../shared/cure/clock.ts';
import { airCourse } from '../../../shared/cure/course.ts';
import { cured, curingOf } from '../../../shared/cure/curing.ts';
import { type DryCheck, learn } from '../../../shared/cure/learn.ts';
import { example, MINUTE_MS, NOW_MS, probed } from './curing.ts';

export const water = example('water-borne');

/** A cement with the times of one stage only. */
export const only = (kind: DryingStageKind, fromS: number, toS: number): Cement => ({
  ...water,
  stages: [{ kind, fromS, toS }],
});
export const exact = only('ready-for-iron', 3600, 3600);

export interface Situation {
  readonly cement?: Cement;
  readonly points?: readonly AirPoint[];
  /** Taps: after how many minutes, at which stage, what was found. */
  readonly taps?: readonly (readonly [number, DryingStageKind, DryCheck['found']])[];
  readonly atMin?: number;
  readonly more?: Partial<CoatAsked>;
}

/** A coat put on at `NOW_MS`, by default in the instructions' own air for a day, as it stands so many minutes later. */
export function clockOf({
  cement = water,
  points = probed(0, 1440),
  taps = [],
  atMin = 0,
  more = {},
}: Situation): CoatClock {
  const nowUtcMs = NOW_MS + atMin * MINUTE_MS;
  const curing = curingOf(cement, airCourse({ points, forecast: [], nowUtcMs }));
  const checks = taps.map(([minutes, stage, found]) => {
    const atUtcMs = NOW_MS + minutes * MINUTE_MS;
    return { atUtcMs, stage, found, curedS: cured(curing, NOW_MS, atUtcMs).likelyS };
  });
  return coatClock({
    cement,
    fromUtcMs: NOW_MS,
    checks,
    curing,
    learned: learn([]),
    nowUtcMs,
    clockLost: false,
    ...more,
  });
}

export const minutes = (ms: number | null | undefined): number | null =>
  ms === null || ms === undefined ? null : (ms - NOW_MS) / MINUTE_MS;
