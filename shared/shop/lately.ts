import type { Coat, Drying, Ended } from './drying.ts';

/** What was said of coats lately and can be taken back from any page: that they were put on, and that one is done with them. */

/** So long the start of a clock can be taken back on the page, ms; our own choice: then its coats are ended one by one. */
const START_MS = 600_000;
/** So long a coat that was ended is shown with the way back, ms; our own choice. */
const ENDED_MS = 3_600_000;

/** The coats that one command put on. */
export interface Started {
  readonly by: string;
  readonly coats: readonly [Coat, ...Coat[]];
}

export type EndedCoat = Coat & { readonly ended: Ended };

/** Whether somebody has found something of it or ended it: with its start that would be gone too, for good. */
export const isTouched = ({ checks, ended }: Coat): boolean => checks.length > 0 || ended !== null;

/** Starts that can be taken back still, the newest first: of the last ten minutes, with none of their coats touched since. */
export function startedLately({ coats }: Drying, nowUtcMs: number): readonly Started[] {
  const starts = new Map<string, [Coat, ...Coat[]]>();
  for (const coat of Object.values(coats)) {
    if (nowUtcMs - coat.saidUtcMs >= START_MS) continue;
    const start = starts.get(coat.by);
    if (start === undefined) starts.set(coat.by, [coat]);
    else start.push(coat);
  }
  return [...starts]
    .map(([by, put]) => ({ by, coats: put }))
    .filter((start) => !start.coats.some(isTouched))
    .toReversed();
}

/** Coats that were ended in the last hour, the newest first. */
export const endedLately = ({ coats }: Drying, nowUtcMs: number): readonly EndedCoat[] =>
  Object.values(coats)
    .filter((coat): coat is EndedCoat => coat.ended !== null && nowUtcMs - coat.ended.atUtcMs < ENDED_MS)
    .toSorted((a, b) => b.ended.atUtcMs - a.ended.atUtcMs);
