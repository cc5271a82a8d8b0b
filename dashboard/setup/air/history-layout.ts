import type { AirAnswer } from '../../../shared/messages/cure.ts';
import type { Point } from '../../plot/plot.tsx';

/** How the air of the last 24 hours is drawn and listed. Pure. */

type Told = AirAnswer['history'][number];

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
export const DAY_MS = 24 * HOUR_MS;

/** A probe that was silent for longer leaves a gap: what was then is not known. Our own choice. */
const GAP_MS = 30 * MINUTE_MS;

export interface Drawn {
  /** Readings of a probe that came without a gap between. */
  readonly lines: readonly (readonly Point[])[];
  /** What stands by itself: typed in, or a probe's single reading. */
  readonly dots: readonly Point[];
}

/** @param valueOf what is drawn of each; null: it was not told */
export function drawnOf(history: AirAnswer['history'], valueOf: (told: Told) => number | null): Drawn {
  const lines: Point[][] = [];
  const dots: Point[] = [];
  let line: Point[] = [];
  for (const told of history) {
    const y = valueOf(told);
    if (y === null) continue;
    const point = { x: Date.parse(told.at), y };
    if (told.how !== 'probe') {
      dots.push(point);
      continue;
    }
    if (point.x - (line.at(-1)?.x ?? point.x) > GAP_MS) line = [];
    if (line.length === 0) lines.push(line);
    line.push(point);
  }
  return {
    lines: lines.filter(({ length }) => length > 1),
    dots: [...dots, ...lines.filter(({ length }) => length === 1).flat()],
  };
}

export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

/** When nothing was heard of a probe that had told the air before, up to now. */
export function gapsOf(history: AirAnswer['history'], nowMs: number): readonly Span[] {
  const heard = history.filter(({ how }) => how === 'probe').map(({ at }) => Date.parse(at));
  return heard
    .map((fromMs, i) => ({ fromMs, toMs: heard[i + 1] ?? nowMs }))
    .filter(({ fromMs, toMs }) => toMs - fromMs > GAP_MS);
}

export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** The lowest and the highest of what is not null; null where all is. */
export function boundsOf(values: readonly (number | null)[]): Bounds | null {
  const told = values.filter((value) => value !== null);
  return told.length === 0 ? null : { low: Math.min(...told), high: Math.max(...told) };
}

export interface HourTold {
  readonly fromMs: number;
  readonly airC: Bounds | null;
  readonly rhPct: Bounds | null;
}

/** Each hour up to now with what was told in it, the oldest first. `hourOf`: the full hour before a moment. */
export function hoursOf(
  history: AirAnswer['history'],
  nowMs: number,
  hourOf: (utcMs: number) => number,
): readonly HourTold[] {
  const firstMs = hourOf(nowMs - DAY_MS);
  const count = Math.round((hourOf(nowMs) - firstMs) / HOUR_MS) + 1;
  return Array.from({ length: count }, (_, i) => {
    const fromMs = firstMs + i * HOUR_MS;
    const told = history.filter(({ at }) => hourOf(Date.parse(at)) === fromMs);
    return {
      fromMs,
      airC: boundsOf(told.map(({ airC }) => airC)),
      rhPct: boundsOf(told.map(({ rhPct }) => rhPct)),
    };
  });
}
