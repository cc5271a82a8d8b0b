import { computed, effect, signal } from '@preact/signals';
import { type Item, itemListSchema } from '../../shared/messages/items.ts';
import { type Session, sessionListSchema } from '../../shared/messages/sessions.ts';
import { detail, part, view } from '../frame/nav-view.ts';
import { alarms, isLive, live, situation } from '../link/daemon.ts';
import { getJson } from '../link/get.ts';
import { pageMs } from '../parts/now.ts';

/** What the page knows of the book: its sessions and items, read again whenever they may have changed. */

export type Loaded<T> =
  | { readonly kind: 'loading' }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'there'; readonly value: T };

export const sessions = signal<Loaded<readonly Session[]>>({ kind: 'loading' });
export const items = signal<Loaded<readonly Item[]>>({ kind: 'loading' });

/** Items that nobody has closed yet; empty while they aren't known. */
export const openItems = computed(() =>
  items.value.kind === 'there' ? items.value.value.filter((item) => item.closing === null) : [],
);

/** The session that is looked at; null: the list of all. */
export const chosenSession = computed(() =>
  view.value === 'records' && part.value !== '' ? part.value : null,
);

/** The moment in it to begin with, session ms; null: the whole of it. */
export const chosenMoment = computed(() => (/^\d+$/.test(detail.value) ? Number(detail.value) : null));

/** The address at which a session is looked at, from a moment of it on. */
export const sessionAddress = (session: string, atMs: number | null = null): string =>
  `#records/${session}${atMs === null ? '' : `/${Math.round(Math.max(0, atMs))}`}`;

export async function readSessions(): Promise<void> {
  const got = await getJson('/api/sessions', sessionListSchema);
  sessions.value = got.ok ? { kind: 'there', value: got.value.sessions } : kept(sessions.peek(), got.why);
}

export async function readItems(): Promise<void> {
  const got = await getJson('/api/items', itemListSchema);
  items.value = got.ok ? { kind: 'there', value: got.value.items } : kept(items.peek(), got.why);
}

/** What was read before is still true of the past. */
const kept = <T>(before: Loaded<T>, why: string): Loaded<T> =>
  before.kind === 'there' ? before : { kind: 'failed', why };

/** An item of a session that is replaced by how it stands now. */
export function putItem(item: Item): void {
  if (items.value.kind !== 'there') return;
  items.value = { kind: 'there', value: items.value.value.map((one) => (one.id === item.id ? item : one)) };
}

/** What was just found is in the book a moment later, ms. */
const SETTLED_MS = 1500;

/** Follows the items from the page's start on: they are counted on every view. */
export function followItems(): void {
  let key = '';
  let timer: ReturnType<typeof setTimeout> | undefined;
  let readAtMs = Number.NEGATIVE_INFINITY;
  effect(() => {
    if (!isLive.value) return;
    const now = overLimitKey();
    if (now === key) return;
    key = now;
    clearTimeout(timer);
    const waitMs = readAtMs === Number.NEGATIVE_INFINITY ? 0 : SETTLED_MS;
    timer = setTimeout(() => {
      readAtMs = pageMs();
      void readItems();
    }, waitMs);
  });
}

/** Changes whenever a crossing of the limit begins, ends or is carried into another session. */
function overLimitKey(): string {
  const overLimit = alarms.value.filter((alarm) => alarm.kind === 'over-limit');
  const running = (situation.value?.irons ?? []).map((iron) => iron.session ?? '');
  return JSON.stringify([
    live.value?.program.epoch,
    running,
    overLimit.map(({ iron, probe, since, state }) => [iron, probe, since, state]),
  ]);
}
