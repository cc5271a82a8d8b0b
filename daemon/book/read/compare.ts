import { type FoundEntry, findingSubject } from '../../../shared/watch/finding.ts';
import type { FindingDifference } from '../book.ts';

/** Another version of the fold, or another processor, may differ by so much and still agree, degC. */
const TEMPERATURE_TOLERANCE_C = 0.01;

/**
 * Compares stored with replayed findings, by identity: sequence number and subject. With `exact` their content must be
 * the same; else only what both have, and temperatures (names that end in `C`) to 0.01 degC.
 */
export function compareFindings(
  stored: readonly FoundEntry[],
  replayed: readonly FoundEntry[],
  exact: boolean,
): FindingDifference[] {
  const unmatched = new Map<string, FoundEntry[]>();
  for (const entry of stored)
    unmatched.set(identity(entry), [...(unmatched.get(identity(entry)) ?? []), entry]);
  const differences: FindingDifference[] = [];
  for (const entry of replayed) {
    const twin = unmatched.get(identity(entry))?.shift() ?? null;
    if (twin === null || !sameFound(twin, entry, exact)) differences.push(difference(twin, entry));
  }
  for (const left of unmatched.values()) for (const entry of left) differences.push(difference(entry, null));
  return differences.sort((a, b) => a.seq - b.seq);
}

const identity = ({ seq, finding }: FoundEntry): string => `${seq} ${findingSubject(finding)}`;

function difference(stored: FoundEntry, replayed: FoundEntry | null): FindingDifference;
function difference(stored: FoundEntry | null, replayed: FoundEntry): FindingDifference;
function difference(stored: FoundEntry | null, replayed: FoundEntry | null): FindingDifference {
  const entry = stored ?? replayed;
  return {
    seq: entry?.seq ?? 0,
    subject: entry === null ? '' : findingSubject(entry.finding),
    stored,
    replayed,
  };
}

/** What is replayed goes through JSON too, as what is stored has: it loses the sign of a zero, say. */
function sameFound(stored: FoundEntry, replayed: FoundEntry, exact: boolean): boolean {
  const again: unknown = JSON.parse(JSON.stringify(replayed));
  return same(stored, again, { exact, name: '' });
}

interface How {
  readonly exact: boolean;
  /** Of the property that is compared. */
  readonly name: string;
}

function same(a: unknown, b: unknown, how: How): boolean {
  if (typeof a === 'number' && typeof b === 'number') return sameNumber(a, b, how);
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  const names = new Set([...left.keys(), ...right.keys()]);
  return [...names].every((name) =>
    left.has(name) && right.has(name) ? same(left.get(name), right.get(name), { ...how, name }) : !how.exact,
  );
}

function sameNumber(a: number, b: number, { exact, name }: How): boolean {
  if (exact || !name.endsWith('C')) return a === b;
  return Math.abs(a - b) <= TEMPERATURE_TOLERANCE_C;
}
