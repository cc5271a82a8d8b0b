import type { CalibrationPoint } from './calibration.ts';
import { type CalibratedProbe, LARGEST_SLOPE, objectionTo } from './check-points.ts';
import { type Correction, type CorrectionMethod, corrected } from './correction.ts';
import { leastSquares } from './least-squares.ts';
import { type PointErrors, propagate } from './propagate.ts';
import type { CalibrationRefusal } from './refusals.ts';

/**
 * The correction that points give: an offset from one, the straight line through two, a least-squares line from more;
 * or why there is none. The order of the points does not matter.
 *
 * Its uncertainty (GUM 5.2): a reading's own part counts as independent. References by the same instrument, or by the
 * same kind of water, are wrong together, so that taking more of them makes nothing better.
 */
export function fitCorrection(
  points: readonly CalibrationPoint[],
  probe: CalibratedProbe,
): Correction | CalibrationRefusal {
  const objection = objectionTo(points, probe);
  if (objection !== null) return objection;
  const rising = [...points].sort((a, b) => a.readingC - b.readingC || a.referenceC - b.referenceC);
  const readingsC = rising.map((p) => p.readingC);
  const t0C = readingsC.reduce((sum, c) => sum + c, 0) / rising.length;
  const xy = rising.map((p) => ({ x: p.readingC, y: p.referenceC - p.readingC }));
  const line = leastSquares(xy, t0C);
  const b2 = line?.b2 ?? 0;
  if (Math.abs(b2) > LARGEST_SLOPE) return { reason: 'slope-too-large', slope: b2 };
  const sK = line?.scatter?.s ?? null;
  const { u1, u2, r } = propagate(
    xy,
    t0C,
    rising.map((p) => errorsOf(p, sK)),
  );
  return {
    method: methodFor(rising.length),
    t0C,
    b1K: line?.b1 ?? xy[0]?.y ?? 0,
    b2,
    u1K: u1,
    u2,
    r,
    sK,
    fromC: readingsC[0] ?? t0C,
    toC: readingsC.at(-1) ?? t0C,
  };
}

const methodFor = (points: number): CorrectionMethod => {
  if (points === 1) return 'offset';
  return points === 2 ? 'line' : 'least-squares';
};

/**
 * A reading's own part: its spread while waiting, not divided by the root of their number, since readings a moment apart
 * are no independent looks; its step over the root of 12; or the points' scatter about the line where that is larger.
 */
const errorsOf = (p: CalibrationPoint, sK: number | null): PointErrors => ({
  own: Math.max(sK ?? 0, Math.hypot(p.readingSpreadK, (p.resolutionK ?? 0) / Math.sqrt(12))),
  shared: p.referenceUK,
  source: p.kind === 'contact' ? `contact ${p.instrument}` : p.kind,
});

/** How far each point's corrected reading is under its reference, K, in the order given. */
export const residualsK = (points: readonly CalibrationPoint[], correction: Correction): readonly number[] =>
  points.map((p) => p.referenceC - corrected(p.readingC, correction));
