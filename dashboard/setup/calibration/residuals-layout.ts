/** Where the parts of a residuals drawing stand, in shares of its width and height. */
export interface ResidualsLayout {
  /** From the middle to the upper edge, K. */
  readonly tallK: number;
  /** At the left and at the right edge, degC. */
  readonly fromC: number;
  readonly toC: number;
  readonly points: readonly Place[];
  /** The edges of the band, from left to right. */
  readonly upper: readonly Place[];
  readonly lower: readonly Place[];
}

interface Place {
  readonly x: number;
  readonly y: number;
}

export interface ResidualsShown {
  readonly readingsC: readonly number[];
  readonly residualsK: readonly number[];
  readonly along: readonly { readonly readC: number; readonly bandK: number }[];
}

/** Above the highest thing drawn: the labels stand there. */
const ROOM = 1.5;

/** The middle is where nothing is left over. */
export function residualsLayout({ readingsC, residualsK, along }: ResidualsShown): ResidualsLayout {
  const fromC = along[0]?.readC ?? 0;
  const toC = along.at(-1)?.readC ?? fromC + 1;
  const tallK = ROOM * Math.max(...along.map((a) => a.bandK), ...residualsK.map(Math.abs), Number.EPSILON);
  const at = (readC: number, k: number): Place => ({
    x: (readC - fromC) / (toC - fromC),
    y: 0.5 - k / (2 * tallK),
  });
  return {
    tallK,
    fromC,
    toC,
    points: readingsC.map((readC, i) => at(readC, residualsK[i] ?? 0)),
    upper: along.map(({ readC, bandK }) => at(readC, bandK)),
    lower: along.map(({ readC, bandK }) => at(readC, -bandK)),
  };
}
