/** What is said of a piece that is not even: which side or end is ahead, and what would even it. */

export interface AheadNames {
  readonly ahead: string;
  readonly behind: string;
  /** Whole laps that the one behind would need. */
  readonly laps: number;
}

const lapsText = (laps: number): string => (laps === 1 ? 'one light lap' : `${laps} light laps`);

export const imbalanceWords = {
  end: (side: string, end: 'first' | 'last') =>
    `the ${end === 'first' ? 'left' : 'right'} end${side === '' ? '' : ` of ${side}`}, as drawn`,
  ahead: ({ ahead, behind, laps }: AheadNames) =>
    `${capital(ahead)} has had more than ${behind}: ${lapsText(laps)} over ${behind} would even it.`,
} as const;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
