import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { z } from 'zod';
import { isLive, live } from './daemon.ts';
import { getJson } from './get.ts';

/** Something that the daemon tells of each iron: read where it is shown, and again whenever settings have changed. */
export interface ByIron<T> {
  readonly path: (iron: string) => string;
  /** Puts an answer in the place of what was read before. */
  readonly take: (value: T) => void;
  /** Kept fresh for as long as it is shown; null before it was read. */
  readonly use: (iron: string) => T | null;
}

/** What the stream says of the settings: when it changes, something has been charted or settled. */
const told: ReadonlySignal<string> = computed(() => {
  const now = live.value;
  return now === null ? '' : `${now.program.epoch} ${now.situation.settingsRevision}`;
});

export function byIron<T extends { readonly iron: string }>(
  path: ByIron<T>['path'],
  schema: z.ZodType<T>,
): ByIron<T> {
  const known = signal<Readonly<Record<string, T>>>({});
  const take = (value: T): void => {
    known.value = { ...known.peek(), [value.iron]: value };
  };
  /** What could not be read stays as it was: it is read again at the next change. */
  const read = async (iron: string): Promise<void> => {
    const got = await getJson(path(iron), schema);
    if (got.ok) take(got.value);
  };
  const follow = (iron: string): (() => void) =>
    effect(() => {
      if (told.value !== '' && isLive.value) void read(iron);
    });
  const use = (iron: string): T | null => {
    useEffect(() => follow(iron), [iron]);
    return known.value[iron] ?? null;
  };
  return { path, take, use };
}
