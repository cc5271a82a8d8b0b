/** What is said of visits: stays of an iron on the work. */

export interface VisitFigures {
  /** Empty where unassigned. */
  readonly place: string;
  readonly lapDone: boolean;
  readonly presumed: boolean;
  readonly peak: string | null;
  readonly reached: string | null;
  readonly time: string;
}

export const visitFoundWords = {
  unassigned: 'unassigned',
  presumed: 'presumed',
  found: ({ place, lapDone, presumed, peak, reached, time }: VisitFigures): string => {
    const where = place === '' ? visitFoundWords.unassigned : place;
    const head = lapDone ? `Lap done: ${where}` : `On the work: ${where}`;
    const parts = [
      presumed ? `${head} (${visitFoundWords.presumed})` : head,
      time,
      peak === null ? 'nothing read' : `peak ${peak}`,
      reached === null ? 'no stage reached' : `covered at ${reached}`,
    ];
    return parts.join(', ');
  },
} as const;
