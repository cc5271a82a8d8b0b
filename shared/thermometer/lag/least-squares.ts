/** Least squares of a curve that is not linear in what is sought: Levenberg and Marquardt's method. */

/** The curve at the i-th point: writes its derivatives by each parameter into `slopes` and returns its residual. */
export type Residual = (parameters: readonly number[], i: number, slopes: number[]) => number;

export interface Fitted {
  readonly parameters: readonly number[];
  /** Sum of the squares of the residuals. */
  readonly squares: number;
  /** Diagonal of the inverse of the normal matrix: times the variance of a point, the variance of each parameter. */
  readonly inverseDiagonal: readonly number[];
}

const MOST_ROUNDS = 80;
const SETTLED = 1e-10;
const MOST_DAMPED = 1e12;

/**
 * Fits from a first guess. Null where the points don't determine the parameters.
 * @param count how many points
 */
export function fitCurve(residual: Residual, count: number, guess: readonly number[]): Fitted | null {
  let here = normal(residual, count, guess);
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS && damping < MOST_DAMPED; round++) {
    const step = solve(damped(here.matrix, damping), here.pull);
    if (step === null) return null;
    const next = normal(
      residual,
      count,
      here.parameters.map((p, k) => p + (step[k] ?? 0)),
    );
    if (!(next.squares <= here.squares)) {
      damping *= 8;
      continue;
    }
    const settled = here.squares - next.squares <= SETTLED * here.squares;
    here = next;
    damping = Math.max(damping / 5, 1e-9);
    if (settled) break;
  }
  const inverseDiagonal = here.parameters.map((_, k) => {
    const unit = here.parameters.map((_, l) => (l === k ? 1 : 0));
    return solve(here.matrix, unit)?.[k] ?? Number.NaN;
  });
  if (!inverseDiagonal.every((v) => Number.isFinite(v) && v >= 0)) return null;
  return { parameters: here.parameters, squares: here.squares, inverseDiagonal };
}

interface Normal {
  readonly parameters: readonly number[];
  readonly squares: number;
  readonly matrix: readonly (readonly number[])[];
  readonly pull: readonly number[];
}

function normal(residual: Residual, count: number, parameters: readonly number[]): Normal {
  const size = parameters.length;
  const zeros = (): number[] => parameters.map(() => 0);
  const matrix = parameters.map(zeros);
  const pull = zeros();
  const slopes = zeros();
  let squares = 0;
  for (let i = 0; i < count; i++) {
    const off = residual(parameters, i, slopes);
    squares += off * off;
    for (const [k, row] of matrix.entries()) {
      const slope = slopes[k] ?? 0;
      pull[k] = (pull[k] ?? 0) + slope * off;
      for (let l = 0; l < size; l++) row[l] = (row[l] ?? 0) + slope * (slopes[l] ?? 0);
    }
  }
  return { parameters, squares, matrix, pull };
}

const damped = (matrix: Normal['matrix'], damping: number): number[][] =>
  matrix.map((row, k) => row.map((v, l) => (k === l ? v * (1 + damping) + 1e-12 : v)));

/** Solves a small system by elimination with the largest pivot; null where it is singular. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, k) => [...row, right[k] ?? 0]);
  const size = rows.length;
  for (let k = 0; k < size; k++) {
    const at = largestFrom(rows, k);
    const pivot = rows[at];
    const above = rows[k];
    if (pivot === undefined || above === undefined) return null;
    rows[at] = above;
    rows[k] = pivot;
    const head = pivot[k] ?? 0;
    if (!(Math.abs(head) > 0) || !Number.isFinite(head)) return null;
    for (const [r, row] of rows.entries()) {
      if (r === k) continue;
      const times = (row[k] ?? 0) / head;
      for (let l = k; l <= size; l++) row[l] = (row[l] ?? 0) - times * (pivot[l] ?? 0);
    }
  }
  return rows.map((row, k) => (row[size] ?? 0) / (row[k] ?? 1));
}

function largestFrom(rows: readonly (readonly number[])[], k: number): number {
  let at = k;
  for (let r = k + 1; r < rows.length; r++)
    if (Math.abs(rows[r]?.[k] ?? 0) > Math.abs(rows[at]?.[k] ?? 0)) at = r;
  return at;
}
