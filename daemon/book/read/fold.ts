import type { Reading } from '../../../shared/thermometer/reading.ts';
import type { ProbeId } from '../../../shared/thermometer/sample.ts';
import type { CountingState } from '../../../shared/watch/counted.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Entry } from '../../../shared/watch/input.ts';

/** What reading needs of the watch's fold, so that its tests can do with less of one. */
export interface Fold {
  readonly version: number;
  /** Folds stored entries again; `exact` where they were recorded by this version. May throw `RangeError`. */
  readonly replay: (entries: Iterable<Entry>, untilMs: number, exact: boolean) => Iterable<FoldStep>;
}

export interface FoldStep {
  /** Null for what happened after the last entry. */
  readonly entry: Entry | null;
  readonly found: readonly FoundEntry[];
  readonly state: { readonly readings: Readonly<Record<ProbeId, Reading>> } & CountingState;
}
