/**
 * Shape-preserving interpolation: piecewise cubics that go through every point, rise only where the points rise, and
 * pass neither over nor under their neighbours. Slopes by Brodlie's formula (Fritsch and Butland, SIAM J. Sci. Stat.
 * Comput. 5 (1984) 300-304), which keeps to the region of Fritsch and Carlson (SIAM J. Numer. Anal. 17 (1980) 238-246).
 */
export interface Curve {
  /** Strictly rising. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly slopes: readonly number[];
}

interface Piece {
  readonly x: number;
  readonly widthX: number;
  readonly y0: number;
  readonly y1: number;
  readonly slope0: number;
  readonly slope1: number;
}

/** Halvings of a piece that leave nothing to halve of a double. */
const HALVINGS = 60;

/**
 * The curve through points whose x rise strictly.
 * @throws RangeError where they don't, or where there are none.
 */
export function curveThrough(points: readonly { readonly x: number; readonly y: number }[]): Curve {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  if (points.length === 0) throw new RangeError('a curve needs at least one point');
  const widths = xs.slice(1).map((x, i) => x - at(xs, i));
  if (!widths.every((w) => w > 0)) throw new RangeError('the points of a curve must rise in x');
  const rises = widths.map((w, i) => (at(ys, i + 1) - at(ys, i)) / w);
  return { xs, ys, slopes: slopesOf(widths, rises) };
}

function slopesOf(widths: readonly number[], rises: readonly number[]): readonly number[] {
  const [first] = rises;
  if (first === undefined) return [0];
  if (rises.length === 1) return [first, first];
  const inner = rises
    .slice(1)
    .map((rise, i) => innerSlope([at(widths, i), at(widths, i + 1)], at(rises, i), rise));
  const end = rises.length - 1;
  return [
    endSlope([at(widths, 0), at(widths, 1)], first, at(rises, 1)),
    ...inner,
    endSlope([at(widths, end), at(widths, end - 1)], at(rises, end), at(rises, end - 1)),
  ];
}

/** The weighted harmonic mean of the rises on both sides; none where the points turn. */
function innerSlope(
  [before, after]: readonly [number, number],
  riseBefore: number,
  riseAfter: number,
): number {
  if (riseBefore * riseAfter <= 0) return 0;
  const weightBefore = 2 * after + before;
  const weightAfter = after + 2 * before;
  return (weightBefore + weightAfter) / (weightBefore / riseBefore + weightAfter / riseAfter);
}

/** The three-point formula, held to the outermost rise so that the shape is kept. */
function endSlope([outer, next]: readonly [number, number], riseOuter: number, riseNext: number): number {
  const slope = ((2 * outer + next) * riseOuter - outer * riseNext) / (outer + next);
  if (slope * riseOuter <= 0) return 0;
  const turns = riseOuter * riseNext <= 0;
  return turns && Math.abs(slope) > 3 * Math.abs(riseOuter) ? 3 * riseOuter : slope;
}

/** The curve's value; null outside its points: it is never carried on beyond them. */
export function valueAt(curve: Curve, x: number): number | null {
  const { xs, ys } = curve;
  if (!(x >= at(xs, 0) && x <= at(xs, xs.length - 1))) return null;
  const exact = xs.indexOf(x);
  if (exact !== -1) return at(ys, exact);
  return inPiece(pieceOf(curve, xs.findIndex((next) => next > x) - 1), x);
}

function pieceOf({ xs, ys, slopes }: Curve, i: number): Piece {
  return {
    x: at(xs, i),
    widthX: at(xs, i + 1) - at(xs, i),
    y0: at(ys, i),
    y1: at(ys, i + 1),
    slope0: at(slopes, i),
    slope1: at(slopes, i + 1),
  };
}

/** Hermite's cubic; rounding must not carry it past its ends. */
function inPiece({ x: from, widthX, y0, y1, slope0, slope1 }: Piece, x: number): number {
  const t = (x - from) / widthX;
  const s = 1 - t;
  const y = y0 * (1 + 2 * t) * s * s + y1 * (3 - 2 * t) * t * t + widthX * t * s * (slope0 * s - slope1 * t);
  return Math.min(Math.max(y, Math.min(y0, y1)), Math.max(y0, y1));
}

/** Every x at which the curve has the value `y`, ascending: one a piece, by halving, since a piece is monotone. */
export function placesOf(curve: Curve, y: number): readonly number[] {
  const { xs, ys } = curve;
  const found = xs.filter((_, i) => at(ys, i) === y);
  for (let i = 0; i + 1 < xs.length; i += 1) {
    const [y0, y1] = [at(ys, i), at(ys, i + 1)];
    if ((y0 < y && y < y1) || (y1 < y && y < y0)) found.push(crossing(curve, i, y));
  }
  return found.sort((a, b) => a - b);
}

/** Where a piece whose ends lie on both sides of `y` crosses it. */
function crossing(curve: Curve, i: number, y: number): number {
  const piece = pieceOf(curve, i);
  const rises = piece.y1 > piece.y0;
  let low = piece.x;
  let high = piece.x + piece.widthX;
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (low + high) / 2;
    if (inPiece(piece, middle) <= y === rises) low = middle;
    else high = middle;
  }
  // The side that is not over `y`.
  return rises ? low : high;
}

/**
 * How far from the first point on the curve keeps at or under `y`.
 * @returns null where the first point is over it already; `atEnd` where the last point is still under it
 */
export function lastUnder(curve: Curve, y: number): { readonly x: number; readonly atEnd: boolean } | null {
  const { xs, ys } = curve;
  if (at(ys, 0) > y) return null;
  const over = ys.findIndex((value) => value > y);
  if (over === -1) return { x: at(xs, xs.length - 1), atEnd: true };
  return { x: crossing(curve, over - 1, y), atEnd: false };
}

function at(values: readonly number[], i: number): number {
  const value = values[i];
  if (value === undefined) throw new RangeError(`no value at ${i}`);
  return value;
}
