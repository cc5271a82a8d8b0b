import type { AlarmRecord } from '../alarm/record.ts';
import type { At } from '../heat/work/at.ts';
import type { Place } from '../iron/place.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import type { FoundEntry } from './finding.ts';

/**
 * Crossings of a limit that leave an area suspect: of the fabric limit every one that was not on the iron's rest
 * throughout, and every one of the cement limit, which holds on bonded edges and tapes only.
 */

export interface PlaceFrom {
  readonly fromMs: number;
  readonly place: Place;
  /** Where on a piece it was, as far as the user said. */
  readonly at: At | null;
}

/** What a session tells of its crossings. Times are ms of the watch's clock. */
export interface CrossingSource {
  readonly firstSeq: number;
  readonly firstMs: number;
  /** Alarms that stood when the session began. */
  readonly carried: readonly AlarmRecord[];
  readonly found: readonly FoundEntry[];
  /** In order; the first holds from the session's begin on. */
  readonly places: readonly PlaceFrom[];
}

export interface Crossing {
  /** Of what raised it; the session's first where it was carried into it. With the session it names the crossing. */
  readonly seq: number;
  readonly fromMs: number;
  /** Null where the session does not hold its end. */
  readonly toMs: number | null;
  /** The highest reading, degC; null where none is known. */
  readonly peakC: number | null;
  readonly probes: readonly ProbeId[];
  readonly limit: 'fabric' | 'cement';
  /** Where on a piece it was as the limit was passed; null: unassigned. */
  readonly at: At | null;
  /** `unknown` where the user never said that it was on the work. */
  readonly place: 'on-work' | 'unknown';
}

type Span = Omit<Crossing, 'place' | 'at'>;

const kinds = { fabric: 'over-limit', cement: 'over-cement-limit' } as const;

/**
 * The crossings of a session, in order. Probes that are over the limit at the same time saw one crossing of one plate.
 */
export function suspectCrossings(source: CrossingSource): readonly Crossing[] {
  return (['fabric', 'cement'] as const)
    .flatMap((limit) => merged(spansOf(source, limit)))
    .sort((a, b) => a.seq - b.seq)
    .flatMap((span) => {
      const place = placeDuring(source.places, span);
      return place === null ? [] : [{ ...span, place, at: atOf(source.places, span) }];
    });
}

/** Where it was as it began; of one that was taken to the work while over, where it came to then. */
function atOf(places: readonly PlaceFrom[], span: Span): At | null {
  const then = during(places, span).filter(({ place }) => place !== 'on-rest');
  return (then.find(({ at }) => at !== null) ?? null)?.at ?? null;
}

function spansOf(
  { firstSeq, firstMs, carried, found }: CrossingSource,
  limit: Crossing['limit'],
): readonly Span[] {
  const open = new Map<ProbeId | null, Span>();
  const closed: Span[] = [];
  const begin = ({ probe, peakC }: AlarmRecord, seq: number, fromMs: number): void => {
    open.set(probe, { seq, fromMs, toMs: null, peakC, probes: probe === null ? [] : [probe], limit });
  };
  for (const alarm of carried)
    if (alarm.kind === kinds[limit] && isStanding(alarm)) begin(alarm, firstSeq, firstMs);
  for (const { seq, tMs, finding } of found) {
    if (finding.kind !== 'alarm' || finding.alarm.kind !== kinds[limit]) continue;
    const { alarm, change } = finding;
    const span = open.get(alarm.probe);
    if (change === 'raised') begin(alarm, seq, tMs);
    else if (span === undefined) continue;
    else if (change === 'cleared') {
      open.delete(alarm.probe);
      closed.push({ ...span, toMs: tMs, peakC: higher(span.peakC, alarm.peakC) });
    } else open.set(alarm.probe, { ...span, peakC: higher(span.peakC, alarm.peakC) });
  }
  return [...closed, ...open.values()].sort((a, b) => a.seq - b.seq);
}

const isStanding = ({ state }: AlarmRecord): boolean =>
  state === 'unacknowledged' || state === 'acknowledged';

function merged(spans: readonly Span[]): readonly Span[] {
  const all: Span[] = [];
  for (const span of spans) {
    const last = all.at(-1);
    if (last === undefined || (last.toMs !== null && last.toMs < span.fromMs)) {
      all.push(span);
      continue;
    }
    all[all.length - 1] = {
      ...last,
      toMs: last.toMs === null || span.toMs === null ? null : Math.max(last.toMs, span.toMs),
      peakC: higher(last.peakC, span.peakC),
      probes: [...new Set([...last.probes, ...span.probes])],
    };
  }
  return all;
}

const higher = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.max(a, b);

/** Where the iron was while over: on the work at any time counts as that; null where it was on its rest throughout. */
function placeDuring(places: readonly PlaceFrom[], span: Span): Crossing['place'] | null {
  const was = during(places, span).map((one) => one.place);
  if (was.includes('on-work')) return 'on-work';
  // In the air it may have been over the work as well.
  return was.some((place) => place !== 'on-rest') || was.length === 0 ? 'unknown' : null;
}

const during = (places: readonly PlaceFrom[], { fromMs, toMs }: Span): readonly PlaceFrom[] =>
  places.filter((one, i) => {
    const untilMs = places[i + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
    return untilMs > fromMs && (toMs === null || one.fromMs <= toMs);
  });
