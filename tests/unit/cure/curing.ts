import type { Air, AirPoint } from '../../../shared/cure/air.ts';
import type { Cement } from '../../../shared/cure/cement.ts';
import { type AirSegment, airCourse } from '../../../shared/cure/course.ts';
import { type Curing, curingOf } from '../../../shared/cure/curing.ts';
import { shippedCements } from '../../../shared/cure/shipped.ts';

/** Air and cements that the tests of the clocks share. DEMO DATA. */

export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;
/** Some morning. */
export const NOW_MS = Date.UTC(2026, 2, 14, 8);

/** The shipped example of a kind; its times are for 23 degC and 50 %. */
export function example(kind: Cement['kind']): Cement {
  const found = shippedCements.find((cement) => cement.kind === kind);
  if (found !== undefined) return found;
  const [first] = shippedCements;
  if (first === undefined) throw new Error('no cement is shipped');
  return { ...first, id: `demo-${kind}`, kind };
}

export const OWN_AIR: Air = { airC: 23, rhPct: 50 };

/** Told by a probe, so many minutes from `NOW_MS`. */
export const probeAt = (minutes: number, air: Air = OWN_AIR): AirPoint => ({
  ...air,
  atUtcMs: NOW_MS + minutes * MINUTE_MS,
  how: 'probe',
});

/** A probe that tells it every ten minutes from one minute to another. */
export const probed = (fromMin: number, toMin: number, air: Air = OWN_AIR): readonly AirPoint[] =>
  Array.from({ length: Math.floor((toMin - fromMin) / 10) + 1 }, (_, i) => probeAt(fromMin + 10 * i, air));

export const courseOf = (
  points: readonly AirPoint[],
  forecast: readonly (Air & { readonly atUtcMs: number })[] = [],
): readonly AirSegment[] => airCourse({ points, forecast, nowUtcMs: NOW_MS });

export const curingIn = (cement: Cement, points: readonly AirPoint[]): Curing =>
  curingOf(cement, courseOf(points));
