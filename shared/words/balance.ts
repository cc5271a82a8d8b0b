/** How even the heat on a piece is: which side or end is ahead, and what would even it. */
export const balanceWords = {
  'one-side': 'Balance: this piece has one side, and its ends are not apart.',
  'no-heat': 'Balance: compared once both sides have had heat.',
  'stages-differ': 'Balance: compared once both sides stand at the same stage.',
  even: 'Balance: both sides and both ends are even.',
  ahead: (sentence: string) => `Balance: ${sentence}`,
  sideAhead: (side: string, laps: string, other: string) =>
    `${side} is ahead by ${laps}. Iron ${other} to even it out.`,
  endAhead: (end: string, side: string, laps: string, other: string) =>
    `on ${side}, ${end} is ahead by ${laps}. Iron ${other} to even it out.`,
  /** To a tenth of a lap: "1 lap", "1.5 laps". */
  laps: (laps: number): string => {
    const shown = String(Math.round(laps * 10) / 10);
    return shown === '1' ? '1 lap' : `${shown} laps`;
  },
  firstEnd: 'the end drawn left',
  lastEnd: 'the end drawn right',
  otherSide: 'the other side',
} as const;
