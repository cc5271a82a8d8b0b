import { firstFrom, GrowingRows, isGap, type Rows } from './rows.ts';

export interface ThinSpan {
  /** Both ends belong to it. */
  readonly fromMs: number;
  readonly toMs: number;
  /** At most so many rows are given; at least 2. */
  readonly points: number;
}

/**
 * Thins rows out: the span is cut into equal cells, and each gives at most two rows, one with the lowest and highest of
 * its readings and one for a fault in it. No peak and no gap is lost, however short.
 * @param coarse true where the rows themselves hold more than one reading each: the one that reaches into the span
 *   from before it is given too then, since its highest may lie in the span
 */
export function thin(rows: Rows, { fromMs, toMs, points }: ThinSpan, coarse = false): GrowingRows {
  const out = new GrowingRows(points);
  const cells = Math.max(1, Math.floor(points / 2));
  const cellMs = (toMs - fromMs) / cells;
  const first = firstFrom(rows, fromMs);
  let at = beginning(rows, first, coarse);
  while (at < rows.length && timeAt(rows, at, fromMs) <= toMs) {
    const cell = cellOf(timeAt(rows, at, fromMs));
    let end = at + 1;
    while (
      end < rows.length &&
      timeAt(rows, end, fromMs) <= toMs &&
      cellOf(timeAt(rows, end, fromMs)) === cell
    )
      end++;
    putCell(out, rows, { at, end, fromMs });
    at = end;
  }
  return out;

  function cellOf(tMs: number): number {
    return cellMs > 0 ? Math.min(cells - 1, Math.floor((tMs - fromMs) / cellMs)) : 0;
  }
}

/** What holds at the begin of the span: a fault that began before it, or a row that reaches into it. */
const beginning = (rows: Rows, first: number, coarse: boolean): number =>
  first > 0 && (coarse || isGap(rows, first - 1)) ? first - 1 : first;

const timeAt = (rows: Rows, at: number, fromMs: number): number => Math.max(rows.tMs[at] ?? 0, fromMs);

/** Gives the rows from `at` to before `end` as one with the readings and one with a fault, as far as there are any. */
function putCell(
  out: GrowingRows,
  rows: Rows,
  { at, end, fromMs }: { readonly at: number; readonly end: number; readonly fromMs: number },
): void {
  let lowC = Number.POSITIVE_INFINITY;
  let highC = Number.NEGATIVE_INFINITY;
  let firstRead = -1;
  let lastRead = -1;
  let gap = -1;
  for (let i = at; i < end; i++) {
    if (isGap(rows, i)) {
      gap = i;
      continue;
    }
    lowC = Math.min(lowC, rows.lowC[i] ?? lowC);
    highC = Math.max(highC, rows.highC[i] ?? highC);
    if (firstRead < 0) firstRead = i;
    lastRead = i;
  }
  const putGap = (row: number): void => {
    if (gap >= 0) out.push(timeAt(rows, row, fromMs), Number.NaN, rows.highC[gap] ?? 0);
  };
  // The last of a cell holds on into the next, so it stands last; a row's readings never lie before its time.
  const endsInGap = gap > lastRead;
  if (!endsInGap) putGap(Math.min(gap, firstRead));
  if (lastRead >= 0) out.push(timeAt(rows, firstRead, fromMs), lowC, highC);
  if (endsInGap) putGap(gap);
}
