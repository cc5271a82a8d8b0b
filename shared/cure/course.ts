import type { Air, AirHow, AirPoint } from './air.ts';
import { LONGEST_DRYING_S } from './cement.ts';
import type { RangeWhy } from './range.ts';
import type { AirDoubt } from './rate.ts';

/** The air as it was told, and as it is expected to go on. */

/** Air that is taken for one for a while. */
export interface AirSegment {
  readonly fromMs: number;
  readonly toMs: number;
  /** Null: nothing is known of it. */
  readonly air: Air | null;
  readonly doubt: AirDoubt;
  /** Why it isn't known better; null: it is known well. */
  readonly why: RangeWhy | null;
}

/** What is known of the air: as it was told, and as it is forecast. Both in any order. */
export interface KnownAir {
  readonly points: readonly AirPoint[];
  readonly forecast: readonly (Air & { readonly atUtcMs: number })[];
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/**
 * So long air counts as it was told; until what was told last is older, a forecast stands back. All of these are our own
 * choices: what the air of a shop does in a quarter of an hour, in a morning, in a night.
 */
export const AIR_HOLDS_MS: Readonly<Record<AirHow, number>> = {
  probe: 15 * MINUTE_MS,
  typed: 4 * HOUR_MS,
  forecast: 3 * HOUR_MS,
};
const firstDoubt: Readonly<Record<AirHow, AirDoubt>> = {
  probe: { airK: 0, rhPct: 0 },
  typed: { airK: 1.5, rhPct: 5 },
  forecast: { airK: 2.5, rhPct: 10 },
};
const firstWhy: Readonly<Record<AirHow, RangeWhy | null>> = {
  probe: null,
  typed: 'typed',
  forecast: 'forecast',
};
/** So much more it may have changed with each hour after that, up to the most that it may be off by. */
const HOURLY_DOUBT: AirDoubt = { airK: 0.5, rhPct: 2 };
const MOST_DOUBT: AirDoubt = { airK: 6, rhPct: 20 };
const HOURS_TO_MOST = Math.max(MOST_DOUBT.airK / HOURLY_DOUBT.airK, MOST_DOUBT.rhPct / HOURLY_DOUBT.rhPct);

/** So far ahead is looked: nothing dries longer. */
const HORIZON_MS = LONGEST_DRYING_S * 1000;

/**
 * Segments without gaps from the first point to sixty days from now. Points may come in any order; of those at one moment
 * the last counts. What a segment has doesn't depend on when it is asked, so that no clock jumps as time goes on.
 */
export function airCourse({
  nowUtcMs,
  ...known
}: KnownAir & { readonly nowUtcMs: number }): readonly AirSegment[] {
  const horizonMs = nowUtcMs + HORIZON_MS;
  const starts = startsOf(known);
  const segments = starts.flatMap((start, i) =>
    segmentsOf(start, Math.min(starts[i + 1]?.fromMs ?? horizonMs, horizonMs)),
  );
  if (segments.length > 0) return segments;
  return [{ fromMs: nowUtcMs, toMs: horizonMs, air: null, doubt: MOST_DOUBT, why: 'no-air' }];
}

interface Start {
  readonly fromMs: number;
  readonly point: AirPoint;
}

/** Which air counts at a moment: the very point that was told, or one of the forecast; null: none counts yet. */
export const airAt = (known: KnownAir, atMs: number): AirPoint | null =>
  startsOf(known).findLast(({ fromMs }) => fromMs <= atMs)?.point ?? null;

/** What counts from when on, in the order of time; of several from one moment on the last. */
function startsOf({ points, forecast }: KnownAir): readonly Start[] {
  const all = [...points, ...forecast.map((point): AirPoint => ({ ...point, how: 'forecast' }))];
  const starts: Start[] = [];
  let standsBackMs = Number.NEGATIVE_INFINITY;
  for (const point of all.sort((a, b) => a.atUtcMs - b.atUtcMs)) {
    const told = point.how !== 'forecast';
    const fromMs = told ? point.atUtcMs : Math.max(point.atUtcMs, standsBackMs);
    if (told) standsBackMs = point.atUtcMs + AIR_HOLDS_MS[point.how];
    // A forecast that stood back until now never came to count.
    while ((starts.at(-1)?.fromMs ?? Number.NEGATIVE_INFINITY) >= fromMs) starts.pop();
    starts.push({ fromMs, point });
  }
  return starts;
}

/** What was told holds, and is known less well with each hour from then on. */
function segmentsOf({ fromMs, point }: Start, toMs: number): readonly AirSegment[] {
  const { atUtcMs, how, airC, rhPct } = point;
  const air = { airC, rhPct };
  const oldMs = atUtcMs + AIR_HOLDS_MS[how];
  const segments: AirSegment[] = [];
  const add = (startMs: number, endMs: number, hours: number): void => {
    const [from, to] = [Math.max(startMs, fromMs), Math.min(endMs, toMs)];
    if (from >= to) return;
    const why = hours === 0 ? firstWhy[how] : 'old-air';
    segments.push({ fromMs: from, toMs: to, air, doubt: doubtAfter(how, hours), why });
  };
  add(fromMs, oldMs, 0);
  for (let hour = 1; hour < HOURS_TO_MOST; hour += 1)
    add(oldMs + (hour - 1) * HOUR_MS, oldMs + hour * HOUR_MS, hour);
  add(oldMs + (HOURS_TO_MOST - 1) * HOUR_MS, toMs, HOURS_TO_MOST);
  return segments;
}

function doubtAfter(how: AirHow, hours: number): AirDoubt {
  const first = firstDoubt[how];
  return {
    airK: Math.min(first.airK + hours * HOURLY_DOUBT.airK, MOST_DOUBT.airK),
    rhPct: Math.min(first.rhPct + hours * HOURLY_DOUBT.rhPct, MOST_DOUBT.rhPct),
  };
}
