/** What the watch of an iron has to know of coats. */
export interface CoatFacts {
  /** What is wet where this iron works, in the user's names; empty: nothing is. */
  readonly wet: string;
  /** Where no area was named: what is wet somewhere on the side that is up; empty: nothing is. */
  readonly near: string;
  /** Coats whose vapour burns, and that nothing was answered about; empty: none, or another hot iron tells of them. */
  readonly fire: string;
  /** The lowest limit of the cements where this iron works, by their instructions, degC; null: none is told. */
  readonly limitC: number | null;
}

export const noCoats: CoatFacts = { wet: '', near: '', fire: '', limitC: null };

export const isSameFacts = (a: CoatFacts, b: CoatFacts): boolean =>
  a.wet === b.wet && a.near === b.near && a.fire === b.fire && a.limitC === b.limitC;

/** The lower of the schedule's cement limit and that of the cements that are there, degC; null: neither is told. */
export function lowerLimitC(
  scheduleC: number | null | undefined,
  { limitC }: Pick<CoatFacts, 'limitC'>,
): number | null {
  if (scheduleC === null || scheduleC === undefined) return limitC;
  return limitC === null ? scheduleC : Math.min(scheduleC, limitC);
}
