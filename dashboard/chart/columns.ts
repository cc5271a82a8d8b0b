/** Columns of one probe as they are drawn: a row a bucket; one without a reading is a gap that holds until the next row. */
export interface Columns {
  readonly id: string;
  readonly tMs: readonly number[];
  readonly minC: readonly (number | null)[];
  readonly maxC: readonly (number | null)[];
  /** Why there is no reading, by name; null where there is one. */
  readonly fault: readonly (string | null)[];
}

export interface Point {
  readonly x: number;
  /** Not a number where the line breaks. */
  readonly y: number;
}

/** The line through a probe's buckets: up and down in each, in the order that leads on best. */
export function pointsOf({ tMs, minC, maxC }: Columns): Point[] {
  const points: Point[] = [];
  let before = Number.NaN;
  for (const [i, x] of tMs.entries()) {
    const low = minC[i] ?? null;
    const high = maxC[i] ?? null;
    if (low === null || high === null) points.push({ x, y: Number.NaN });
    else if (low === high) points.push({ x, y: low });
    else if (Math.abs(before - high) < Math.abs(before - low)) points.push({ x, y: high }, { x, y: low });
    else points.push({ x, y: low }, { x, y: high });
    before = points.at(-1)?.y ?? Number.NaN;
  }
  return points;
}

export interface Gap {
  readonly fromMs: number;
  readonly toMs: number;
  readonly fault: string;
}

/** The spans without a reading, each with its fault; the last may go on until `untilMs`. */
export function gapsOf({ tMs, fault }: Columns, untilMs: number): readonly Gap[] {
  return tMs.flatMap((fromMs, i) => {
    const name = fault[i] ?? null;
    return name === null ? [] : [{ fromMs, toMs: Math.max(fromMs, tMs[i + 1] ?? untilMs), fault: name }];
  });
}

/** Where none of several probes reads, with the fault of the first. */
export function commonGaps(all: readonly Columns[], untilMs: number): readonly Gap[] {
  const [first, ...others] = all.map((columns) => gapsOf(columns, untilMs));
  return others.reduce<readonly Gap[]>(overlaps, first ?? []);
}

const overlaps = (some: readonly Gap[], others: readonly Gap[]): readonly Gap[] =>
  some.flatMap((one) =>
    others.flatMap((other) => {
      const fromMs = Math.max(one.fromMs, other.fromMs);
      const toMs = Math.min(one.toMs, other.toMs);
      return fromMs < toMs ? [{ fromMs, toMs, fault: one.fault }] : [];
    }),
  );

interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

const everything: Span = { fromMs: Number.NEGATIVE_INFINITY, toMs: Number.POSITIVE_INFINITY };

/** The lowest and highest reading of all columns, or of a span of them, degC; null where there is none. */
export function extentOf(
  all: readonly Columns[],
  { fromMs, toMs }: Span = everything,
): { readonly lowC: number; readonly highC: number } | null {
  let lowC = Number.POSITIVE_INFINITY;
  let highC = Number.NEGATIVE_INFINITY;
  for (const { tMs, minC, maxC } of all) {
    for (const [i, at] of tMs.entries()) {
      if (at < fromMs || at > toMs) continue;
      lowC = Math.min(lowC, minC[i] ?? lowC);
      highC = Math.max(highC, maxC[i] ?? highC);
    }
  }
  return lowC > highC ? null : { lowC, highC };
}

/** When the highest reading was, as far as the columns tell. */
export function peakMs(all: readonly Columns[]): number | null {
  let best: { readonly c: number; readonly tMs: number } | null = null;
  for (const { tMs, maxC } of all)
    for (const [i, c] of maxC.entries())
      if (c !== null && (best === null || c > best.c)) best = { c, tMs: tMs[i] ?? 0 };
  return best?.tMs ?? null;
}
