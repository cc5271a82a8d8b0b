import { type TraceGap, traceGaps } from '../../../../shared/messages/trace.ts';

/**
 * Rows of one probe in columns, in the order of time. A row holds the lowest and the highest of some readings, from its
 * time up to the next row's; or no reading, and the fault that began then.
 */
export interface Rows {
  readonly length: number;
  readonly tMs: Float64Array;
  /** Not a number in a row without a reading. */
  readonly lowC: Float64Array;
  /** In a row without a reading: the place of its gap in `traceGaps`. */
  readonly highC: Float64Array;
}

/** Rows that grow. Every value is kept as it was read, so that a peak is exact. */
export class GrowingRows implements Rows {
  length = 0;
  tMs: Float64Array;
  lowC: Float64Array;
  highC: Float64Array;

  constructor(room: number) {
    this.tMs = new Float64Array(room);
    this.lowC = new Float64Array(room);
    this.highC = new Float64Array(room);
  }

  /** A time before the last row's counts as that. */
  push(tMs: number, lowC: number, highC: number): void {
    const at = this.length;
    if (at === this.tMs.length) this.#grow();
    this.tMs[at] = Math.max(tMs, at === 0 ? tMs : (this.tMs[at - 1] ?? tMs));
    this.lowC[at] = lowC;
    this.highC[at] = highC;
    this.length = at + 1;
  }

  pushFault(tMs: number, fault: TraceGap): void {
    this.push(tMs, Number.NaN, traceGaps.indexOf(fault));
  }

  #grow(): void {
    const room = Math.ceil(this.tMs.length * 1.5) + 16;
    const larger = (column: Float64Array): Float64Array => {
      const grown = new Float64Array(room);
      grown.set(column);
      return grown;
    };
    this.tMs = larger(this.tMs);
    this.lowC = larger(this.lowC);
    this.highC = larger(this.highC);
  }
}

export const isGap = (rows: Rows, at: number): boolean => Number.isNaN(rows.lowC[at]);

/** The fault of a row without a reading; null for any other row. */
export const faultAt = (rows: Rows, at: number): TraceGap | null =>
  isGap(rows, at) ? (traceGaps[rows.highC[at] ?? 0] ?? null) : null;

/** The first row at or after a time; the number of rows where there is none. */
export function firstFrom(rows: Rows, tMs: number): number {
  let low = 0;
  let high = rows.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((rows.tMs[middle] ?? 0) < tMs) low = middle + 1;
    else high = middle;
  }
  return low;
}
