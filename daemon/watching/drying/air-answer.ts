import type { AirPoint } from '../../../shared/cure/air.ts';
import type { Cement } from '../../../shared/cure/cement.ts';
import { airConcerns, type Concern } from '../../../shared/cure/concerns.ts';
import { AIR_HOLDS_MS, airAt } from '../../../shared/cure/course.ts';
import { dewPointC, marginK } from '../../../shared/cure/humid-air.ts';
import type { AirAnswer, AirConcern, AirProbeAnswer } from '../../../shared/messages/cure.ts';
import type { Drying, ToldAir } from '../../../shared/shop/drying.ts';
import type { AirProbe } from './air-hearing.ts';

/** What is told of the shop's air. */

/** So long back, and so many points at most. */
const HISTORY_MS = 24 * 3_600_000;
const MOST_POINTS = 300;

/** @param cements those that dry, and those that may be put on next */
export function airAnswer(
  { air, forecast }: Drying,
  cements: readonly Cement[],
  nowUtcMs: number,
): Omit<AirAnswer, 'chosen' | 'probes'> {
  const now = airNow({ air, forecast }, nowUtcMs);
  const past = air.filter(({ atUtcMs }) => atUtcMs <= nowUtcMs && atUtcMs > nowUtcMs - HISTORY_MS);
  return {
    now:
      now === null
        ? null
        : {
            ...pointAnswer(now),
            probe: now.probe,
            dewPointC: dewPointC(now),
            marginK: marginK(now),
            old: nowUtcMs - now.atUtcMs > AIR_HOLDS_MS[now.how],
          },
    concerns: now === null ? [] : concernsOf(now, cements),
    history: thinned(past, nowUtcMs).map(pointAnswer),
    forecast: forecast.filter(({ atUtcMs }) => atUtcMs > nowUtcMs).map(pointAnswer),
  };
}

/** @param utcOf UTC of a time of the watches' clock, ms */
export function airProbeAnswer(
  { probe, told, isSilent, isHeard, refused }: AirProbe,
  utcOf: (atMs: number) => number,
): AirProbeAnswer {
  const at = (atMs: number): string => new Date(utcOf(atMs)).toISOString();
  return {
    probe,
    told: told === null ? null : { at: at(told.atMs), airC: told.airC, rhPct: told.rhPct },
    silent: isSilent,
    heard: isHeard,
    refused: refused.map(({ atMs, ...part }) => ({ ...part, at: at(atMs) })),
  };
}

/**
 * The newest of each slot of time. Thinned out by their number instead, a quiet night beside a busy day would have gaps
 * that look like a probe's silence.
 */
function thinned(past: readonly ToldAir[], nowUtcMs: number): readonly ToldAir[] {
  const slotOf = ({ atUtcMs }: ToldAir): number =>
    Math.floor(((nowUtcMs - atUtcMs) * MOST_POINTS) / HISTORY_MS);
  return past.filter((told, i) => {
    const next = past[i + 1];
    return next === undefined || slotOf(next) !== slotOf(told);
  });
}

const pointAnswer = ({ atUtcMs, airC, rhPct, how }: AirPoint): AirAnswer['history'][number] => ({
  at: new Date(atUtcMs).toISOString(),
  airC,
  rhPct,
  how,
});

/** The air that the clocks go by now. Of what was told only the last can count, and has been told, whatever the time. */
function airNow({ air, forecast }: Pick<Drying, 'air' | 'forecast'>, nowUtcMs: number): ToldAir | null {
  const told = air.at(-1);
  const points = told === undefined ? [] : [told];
  const counts = airAt({ points, forecast }, Math.max(nowUtcMs, told?.atUtcMs ?? nowUtcMs));
  if (told !== undefined && counts === told) return told;
  return counts === null ? null : { ...counts, probe: '' };
}

/** One line for what is amiss by the same limit, with the cements that it holds for; none named: for all of them. */
function concernsOf(air: ToldAir, cements: readonly Cement[]): readonly AirConcern[] {
  const all = cements.length > 0 ? cements : [null];
  const found = new Map<string, { readonly concern: Concern; readonly of: (Cement | null)[] }>();
  for (const cement of all) {
    for (const concern of airConcerns(cement, air)) {
      const { kind, by, limit } = concern;
      const key = `${kind} ${by} ${limit}`;
      found.set(key, { concern, of: [...(found.get(key)?.of ?? []), cement] });
    }
  }
  return [...found.values()].map(({ concern, of }) => {
    // Of one cement two versions may be there: one that dries, and the newest.
    const names = new Set(of.map((cement) => cement?.name ?? ''));
    return { ...concern, cements: of.length === all.length ? [] : [...names] };
  });
}
