import { computed, effect, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type IronDial, ironDialSchema } from '../../shared/messages/dial.ts';
import { isLive, live } from '../link/daemon.ts';
import { getJson } from '../link/get.ts';

/** What is charted of irons' dials, by iron: read where it is shown, and again whenever settings have changed. */

const dials = signal<Readonly<Record<string, IronDial>>>({});

export const dialPath = (iron: string): string => `/api/irons/${encodeURIComponent(iron)}/dial`;

export const takeDial = (dial: IronDial): void => {
  dials.value = { ...dials.peek(), [dial.iron]: dial };
};

/** What the stream says of the settings: when it changes, something has been charted or settled. */
const told = computed(() => {
  const now = live.value;
  return now === null ? '' : `${now.program.epoch} ${now.situation.settingsRevision}`;
});

/** What could not be read stays as it was: it is read again at the next change. */
async function read(iron: string): Promise<void> {
  const got = await getJson(dialPath(iron), ironDialSchema);
  if (got.ok) takeDial(got.value);
}

const follow = (iron: string): (() => void) =>
  effect(() => {
    if (told.value !== '' && isLive.value) void read(iron);
  });

/** An iron's dial, kept fresh for as long as it is shown; null before it was read. */
export function useDial(iron: string): IronDial | null {
  useEffect(() => follow(iron), [iron]);
  return dials.value[iron] ?? null;
}
