/**
 * The straight line y = b1 + b2 (x - x0) through points of equal weight, by least squares: JCGM 100:2008 (GUM), H.3.2,
 * with its sums over x - x0. They are exact for data in whole numbers, and lose nothing worth speaking of where x0 lies
 * among the points.
 */
export interface LinePoint {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly x0: number;
  readonly b1: number;
  readonly b2: number;
  /** What the scatter of three or more points tells; null for two, which a line always meets. */
  readonly scatter: Scatter | null;
}

export interface Scatter {
  /** Residual standard deviation s. */
  readonly s: number;
  readonly degreesOfFreedom: number;
  /** Standard uncertainties of b1 and b2, and how they are correlated. */
  readonly u1: number;
  readonly u2: number;
  readonly r: number;
}

/** How much b1 and b2 change with the y of one point. */
export interface Influence {
  readonly onB1: number;
  readonly onB2: number;
}

interface Sums {
  readonly n: number;
  /** Sums of x - x0 and of its square. */
  readonly t: number;
  readonly tt: number;
  /** n tt - t^2; zero where all x are the same. */
  readonly d: number;
}

/** The line; null for fewer than two points, or where all lie at the same x. */
export function leastSquares(points: readonly LinePoint[], x0: number): Line | null {
  const sums = sumsOf(points, x0);
  const { n, t, tt, d } = sums;
  if (n < 2 || !(d > 0)) return null;
  const y = points.reduce((sum, p) => sum + p.y, 0);
  const ty = points.reduce((sum, p) => sum + (p.x - x0) * p.y, 0);
  // Divided last, so that whole numbers stay whole until then.
  const d1 = y * tt - ty * t;
  const d2 = n * ty - y * t;
  const residual = (p: LinePoint): number => (p.y * d - d1 - d2 * (p.x - x0)) / d;
  const squares = points.reduce((sum, p) => sum + residual(p) ** 2, 0);
  return { x0, b1: d1 / d, b2: d2 / d, scatter: n === 2 ? null : scatterOf(sums, squares) };
}

function scatterOf({ n, t, tt, d }: Sums, squares: number): Scatter {
  const degreesOfFreedom = n - 2;
  const s = Math.sqrt(squares / degreesOfFreedom);
  return {
    s,
    degreesOfFreedom,
    u1: s * Math.sqrt(tt / d),
    u2: s * Math.sqrt(n / d),
    r: -t / Math.sqrt(n * tt),
  };
}

/** What each point's y does to the line, in the order given. One point alone shifts the line and tilts nothing. */
export function influences(points: readonly LinePoint[], x0: number): readonly Influence[] {
  const { n, t, tt, d } = sumsOf(points, x0);
  if (n === 1) return [{ onB1: 1, onB2: 0 }];
  return points.map(({ x }) => ({
    onB1: (tt - (x - x0) * t) / d,
    onB2: (n * (x - x0) - t) / d,
  }));
}

function sumsOf(points: readonly LinePoint[], x0: number): Sums {
  const n = points.length;
  const t = points.reduce((sum, p) => sum + (p.x - x0), 0);
  const tt = points.reduce((sum, p) => sum + (p.x - x0) ** 2, 0);
  return { n, t, tt, d: n * tt - t * t };
}

export interface LineUncertainty {
  readonly u1: number;
  readonly u2: number;
  readonly r: number;
}

/** Standard uncertainty of the line at `offX` = x - x0, with the covariance of its parameters (GUM H.3.4). */
export function lineU({ u1, u2, r }: LineUncertainty, offX: number): number {
  const square = u1 * u1 + offX * offX * u2 * u2 + 2 * offX * u1 * u2 * r;
  return Math.sqrt(Math.max(0, square));
}
