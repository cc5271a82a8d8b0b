import { countsAs, isCounted } from '../../shared/watch/counted.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { Entry } from '../../shared/watch/input.ts';
import type { WatchStep } from './watcher.ts';

/** What the book keeps of a step; not its states, which are much larger and come out of a replay. */
export interface KeptStep {
  /** Null for ticks alone. */
  readonly entry: Entry | null;
  readonly found: readonly FoundEntry[];
  /** The valid plate temperature that its sample gave, degC; else null. */
  readonly plateC: number | null;
}

/** Null where there is nothing to keep: ticks that found nothing. */
export function keptOf({ entry, found, after }: WatchStep): KeptStep | null {
  if (entry === null && found.length === 0) return null;
  const probe = entry?.input.kind === 'sample' ? entry.input.sample.probe : null;
  const reading = probe === null || !isCounted(countsAs(after, probe)) ? undefined : after.readings[probe];
  return { entry, found, plateC: reading?.quality === 'ok' ? reading.plateC : null };
}

/** The highest valid plate temperature of these steps, degC. */
export function peakOf(steps: readonly KeptStep[]): number | null {
  let peakC: number | null = null;
  for (const { plateC } of steps) peakC = higher(peakC, plateC);
  return peakC;
}

export const higher = (a: number | null, b: number | null): number | null =>
  a === null || (b !== null && b > a) ? b : a;
