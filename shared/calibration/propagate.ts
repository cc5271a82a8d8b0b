import { type Influence, influences, type LinePoint, type LineUncertainty } from './least-squares.ts';

/** What the errors of points do to the line through them: the law of propagation of uncertainty (GUM 5.2). */

export interface PointErrors {
  /** Standard uncertainty that a point has to itself. */
  readonly own: number;
  /** Standard uncertainty that it shares with all points of the same source: they are wrong together (GUM H.3.6). */
  readonly shared: number;
  readonly source: string;
}

/** Standard uncertainties of b1 and b2 and their correlation. `errors` are those of the points, in their order. */
export function propagate(
  points: readonly LinePoint[],
  x0: number,
  errors: readonly PointErrors[],
): LineUncertainty {
  const parts: Influence[] = [];
  const together = new Map<string, Influence>();
  for (const [i, { onB1, onB2 }] of influences(points, x0).entries()) {
    const error = errors[i];
    if (error === undefined) continue;
    parts.push({ onB1: onB1 * error.own, onB2: onB2 * error.own });
    const sum = together.get(error.source) ?? { onB1: 0, onB2: 0 };
    together.set(error.source, {
      onB1: sum.onB1 + onB1 * error.shared,
      onB2: sum.onB2 + onB2 * error.shared,
    });
  }
  return combined([...parts, ...together.values()]);
}

/** Independent parts, each a joint deviation of both parameters, as standard uncertainties with their correlation. */
function combined(parts: readonly Influence[]): LineUncertainty {
  const u1 = Math.hypot(...parts.map((p) => p.onB1));
  const u2 = Math.hypot(...parts.map((p) => p.onB2));
  const covariance = parts.reduce((sum, p) => sum + p.onB1 * p.onB2, 0);
  const r = u1 > 0 && u2 > 0 ? covariance / (u1 * u2) : 0;
  return { u1, u2, r: Math.min(1, Math.max(-1, r)) };
}
