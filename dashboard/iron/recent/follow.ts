import { effect, signal, untracked } from '@preact/signals';
import type { Live } from '../../../shared/messages/live.ts';
import { sessionSchema } from '../../../shared/messages/sessions.ts';
import { type Trace, traceSchema } from '../../../shared/messages/trace.ts';
import { LOST } from '../../chart/gap-text.ts';
import { link, stream } from '../../link/daemon.ts';
import { type Got, getJson } from '../../link/get.ts';
import { daemonUtcMs, type StreamState } from '../../link/stream.ts';
import { pageMs } from '../../parts/now.ts';
import { CELL_MS, RECENT_MS, Recent } from './recent.ts';

/** Fills the last minutes from the stream, and from the running sessions once, for the time before the page was open. */

export const recent = new Recent();
/** Rises whenever something was added. */
export const recentChanged = signal(0);

/** When each probe's latest was heard that has been taken in. */
const heardAtMs = new Map<string, number>();

const ASK_AGAIN_MS = 500;
/** A session that begins is in the book a moment after the stream tells of it; one that isn't there by then isn't kept, ms. */
const IN_BOOK_AFTER_MS = 1500;
const IN_BOOK_AT_MOST_MS = 15_000;
/** A history that takes longer to be worked out than this is gone without, ms. */
const HISTORY_AT_MOST_MS = 120_000;

/** Takes in what has just been heard, whether or not it is shown: between two frames there may be a peak. */
export function hearRecent({ live, readAtMs }: StreamState): void {
  if (live === null) return;
  recent.keepOnly(new Set(live.probes.map((probe) => probe.id)));
  for (const { id, quality, seat, plateC } of live.probes) {
    const atMs = readAtMs[id];
    if (atMs === undefined || heardAtMs.get(id) === atMs) continue;
    heardAtMs.set(id, atMs);
    if (quality !== 'ok') recent.add(id, atMs, { fault: quality });
    else if (plateC !== null) recent.add(id, atMs, { plateC });
    else recent.add(id, atMs, { fault: seat === 'check-pad' ? 'bare' : seat });
  }
  for (const id of heardAtMs.keys()) if (readAtMs[id] === undefined) heardAtMs.delete(id);
}

export function followRecent(): void {
  const fetched = new Set<string>();
  let isFirst = true;
  effect(() => {
    const { live } = stream.value;
    if (live === null) return;
    untracked(() => fetchHistory(live, fetched, isFirst ? 0 : IN_BOOK_AFTER_MS));
    isFirst = false;
    changed();
  });
  effect(() => {
    if (link.value !== 'lost') return;
    untracked(() => recent.lose(stream.value.heardAtMs ?? pageMs(), LOST));
    changed();
  });
}

const changed = (): void => {
  recentChanged.value = recentChanged.peek() + 1;
};

/** Each session's is put once: of those that ran as the page came at once, of one that begins after `waitMs`. */
function fetchHistory(live: Live, fetched: Set<string>, waitMs: number): void {
  for (const { session, probes } of live.situation.irons) {
    if (session === null || fetched.has(session)) continue;
    fetched.add(session);
    const known = Math.max(...probes.map((id) => pageMs() - (recent.firstMs(id) ?? pageMs())));
    if (known < RECENT_MS / 2) void putHistory(session, waitMs);
  }
}

/** Whether it is worth asking again for what has been asked for so long. */
const isToCome = (asked: Got<Trace>, forMs: number): boolean =>
  asked.ok
    ? !asked.value.complete && forMs < HISTORY_AT_MOST_MS
    : asked.status === 404 && forMs < IN_BOOK_AT_MOST_MS;

const later = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

async function putHistory(session: string, waitMs: number): Promise<void> {
  await later(waitMs);
  const path = `/api/sessions/${encodeURIComponent(session)}/trace`;
  const beganMs = pageMs();
  let asked = await getJson(`${path}?points=2`, traceSchema);
  while (isToCome(asked, pageMs() - beganMs)) {
    await later(asked.ok ? ASK_AGAIN_MS : IN_BOOK_AFTER_MS);
    asked = await getJson(`${path}?points=2`, traceSchema);
  }
  if (!asked.ok || !asked.value.complete) return;
  const { untilMs } = asked.value;
  const span = `from=${Math.max(0, Math.floor(untilMs - RECENT_MS))}&to=${untilMs}`;
  const got = await getJson(`${path}?${span}&points=${(2 * RECENT_MS) / CELL_MS}`, traceSchema);
  const begun = await getJson(`/api/sessions/${encodeURIComponent(session)}`, sessionSchema);
  const nowUtcMs = daemonUtcMs(stream.peek(), pageMs());
  if (!got.ok || !begun.ok || nowUtcMs === null) return;
  const toPage = Date.parse(begun.value.startedAt) - nowUtcMs + pageMs();
  for (const columns of got.value.probes)
    recent.putBefore({ ...columns, tMs: columns.tMs.map((tMs) => tMs + toPage) });
  changed();
}
