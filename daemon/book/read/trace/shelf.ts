import type { TraceColumns } from '../../../../shared/messages/trace.ts';
import type { FoundEntry } from '../../../../shared/watch/finding.ts';
import type { SessionHead, TraceAsked, TraceRead } from '../../book.ts';
import type { BookRows } from '../../store/rows.ts';
import type { Fold } from '../fold.ts';
import { faultAt, type GrowingRows, isGap } from './rows.ts';
import { inForce, SessionTrace } from './session-trace.ts';
import { thin } from './thin.ts';

/** More findings than these are never given at once. */
const FINDINGS_AT_MOST = 1000;
/** Readings kept of all sessions together; the session looked at last is kept whatever its size. */
const ROWS_AT_MOST = 3_000_000;
const SESSIONS_AT_MOST = 8;

/** The sessions that were looked at last, with their readings. */
export class TraceShelf {
  readonly #fold: Fold;
  /** The one looked at last stands last. */
  readonly #traces = new Map<string, SessionTrace>();

  constructor(fold: Fold) {
    this.#fold = fold;
  }

  /**
   * Reads on in a session until all of it is read or `enough` says so, yielding between commits, and gives what was
   * asked for as far as it has been read.
   */
  *read(
    rows: BookRows,
    session: number,
    head: SessionHead,
    { asked, enough }: { readonly asked: TraceAsked; readonly enough: () => boolean },
  ): Generator<undefined, TraceRead> {
    const trace = this.#take(head);
    let complete = !trace.readNext(rows, session);
    while (!complete && !enough()) {
      yield;
      complete = !trace.readNext(rows, session);
    }
    this.#makeRoom();
    const untilMs = (rows.tail(session)?.untilMs ?? head.firstMs) - head.firstMs;
    return answer(trace, asked, { untilMs, complete, firstMs: head.firstMs });
  }

  #take(head: SessionHead): SessionTrace {
    const trace = this.#traces.get(head.id) ?? new SessionTrace(head, this.#fold);
    this.#traces.delete(head.id);
    this.#traces.set(head.id, trace);
    return trace;
  }

  #makeRoom(): void {
    let kept = 0;
    for (const [i, [id, trace]] of [...this.#traces].toReversed().entries()) {
      kept += trace.rowCount;
      if (i > 0 && (kept > ROWS_AT_MOST || i >= SESSIONS_AT_MOST)) this.#traces.delete(id);
    }
  }
}

interface Reach {
  readonly untilMs: number;
  readonly complete: boolean;
  readonly firstMs: number;
}

function answer(trace: SessionTrace, asked: TraceAsked, { untilMs, complete, firstMs }: Reach): TraceRead {
  const fromMs = asked.fromMs ?? 0;
  const toMs = Math.max(fromMs, asked.toMs ?? untilMs);
  const within = (atMs: number): boolean => atMs >= fromMs && atMs <= toMs;
  const found = trace.found.filter(({ tMs }) => within(tMs - firstMs));
  return {
    fromMs,
    toMs,
    untilMs,
    readUntilMs: Math.min(untilMs, trace.readUntilMs),
    complete,
    broken: trace.broken,
    probes: [...trace.probes].map(([id, rows]) =>
      columnsOf(id, thin(rows, { fromMs, toMs, points: asked.points }, trace.coarse)),
    ),
    settings: inForce(trace.settings, fromMs, toMs),
    work: inForce(trace.work, fromMs, toMs),
    notes: trace.notes.filter(({ atMs }) => within(atMs)),
    found: mostTelling(found),
    foundLeftOut: Math.max(0, found.length - FINDINGS_AT_MOST),
    cycles: trace.cyclesMs.filter(within).length,
  };
}

/** Alarms come before everything else where there are too many. */
function mostTelling(found: readonly FoundEntry[]): readonly FoundEntry[] {
  if (found.length <= FINDINGS_AT_MOST) return found;
  const alarms = found.filter(({ finding }) => finding.kind === 'alarm');
  const others = found.filter(({ finding }) => finding.kind !== 'alarm');
  return [...alarms, ...others].slice(0, FINDINGS_AT_MOST).sort((a, b) => a.seq - b.seq);
}

function columnsOf(id: string, rows: GrowingRows): TraceColumns {
  const places = Array.from({ length: rows.length }, (_, i) => i);
  const value = (column: Float64Array, at: number): number | null =>
    isGap(rows, at) ? null : (column[at] ?? null);
  return {
    id,
    tMs: places.map((i) => rows.tMs[i] ?? 0),
    minC: places.map((i) => value(rows.lowC, i)),
    maxC: places.map((i) => value(rows.highC, i)),
    fault: places.map((i) => faultAt(rows, i)),
  };
}
