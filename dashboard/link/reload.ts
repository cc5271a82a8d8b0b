/** A page that is older (or newer) than its daemon reloads itself, once for each version, and loses no unsent mark. */

export interface PageAge {
  readonly ownVersion: string;
  readonly programVersion: string;
  /** The version that a reload was last tried for; null where none was, `undefined` where that can't be known. */
  readonly triedFor: string | null | undefined;
  /** Whether commands wait that a reload would lose. */
  readonly wouldLose: boolean;
}

/** `stale`: another version, and a reload has not helped, or might go round in circles: the user is told. */
export type ReloadStep = 'stay' | 'reload' | 'wait' | 'stale';

export function reloadStep(age: PageAge): ReloadStep {
  if (age.ownVersion === age.programVersion) return 'stay';
  if (age.triedFor === undefined || age.triedFor === age.programVersion) return 'stale';
  return age.wouldLose ? 'wait' : 'reload';
}

/** The program's version in a message that this page's schemas may not know; null where there is none. */
export function versionIn(message: unknown): string | null {
  const program = field(field(message, 'live'), 'program');
  const version = field(program, 'version');
  return typeof version === 'string' ? version : null;
}

const field = (value: unknown, name: string): unknown =>
  typeof value === 'object' && value !== null && name in value
    ? (value as Readonly<Record<string, unknown>>)[name]
    : null;
