/** What the watch of an iron has to know of coats that dry. */
export interface CoatFacts {
  /** What is wet where this iron works, in the user's names; empty: nothing is. */
  readonly wet: string;
  /** Coats whose vapour burns, and that nothing was answered about; empty: none, or another hot iron tells of them. */
  readonly fire: string;
}

export const noCoats: CoatFacts = { wet: '', fire: '' };
