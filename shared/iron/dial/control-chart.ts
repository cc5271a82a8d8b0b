/** A control chart that finds a small lasting shift among scatter. */

/** One side's sum of what goes beyond the slack, and over how many observations it has been above 0. */
export interface CusumSide {
  readonly sum: number;
  readonly run: number;
}

export interface Cusum {
  readonly above: CusumSide;
  readonly below: CusumSide;
}

const noSide: CusumSide = { sum: 0, run: 0 };
export const noCusum: Cusum = { above: noSide, below: noSide };

/**
 * Takes one more observation into a tabular CUSUM. A shift is found once a side's sum passes the decision interval; it
 * began `run` observations ago, and is by about slack + sum / run.
 * Source: Montgomery and Runger, Applied Statistics and Probability for Engineers, chapter 16.
 * @param offTarget the observation less the target
 * @param slack what is let pass each time (K), usually half of the shift to be found
 */
export const addToCusum = ({ above, below }: Cusum, offTarget: number, slack: number): Cusum => ({
  above: addToSide(above, offTarget - slack),
  below: addToSide(below, -offTarget - slack),
});

function addToSide({ sum, run }: CusumSide, more: number): CusumSide {
  const after = sum + more;
  return after > 0 ? { sum: after, run: run + 1 } : noSide;
}
