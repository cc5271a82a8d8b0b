import { Refusal } from '../refusal.ts';

/** What is said where a version can't be added. */
export interface VersionWords {
  readonly none: string;
  readonly changed: (newest: number) => string;
}

/**
 * The number of the version that comes after `basedOn`, the one that the writer saw (0: there was none). Throws `Refusal`
 * where that isn't the newest any more.
 */
export function nextVersion(
  known: readonly { readonly id: string; readonly version: number }[],
  { id, basedOn }: { readonly id: string; readonly basedOn: number },
  words: VersionWords,
): number {
  const newest = Math.max(0, ...known.filter((one) => one.id === id).map(({ version }) => version));
  if (newest === 0 && basedOn !== 0) throw new Refusal('unknown', words.none);
  if (newest !== basedOn) throw new Refusal('conflict', words.changed(newest), 'basedOn');
  return newest + 1;
}
