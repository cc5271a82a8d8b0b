import { fToC } from '../../units/temperature.ts';
import type { ShrinkTable } from '../schedule.ts';

/**
 * How much loose cloth shrinks. It explains a stage; it is claimed for no area and stands on no record, since cloth on a
 * frame is not loose.
 */

/** FAA-H-8083-31 vol. 1 ch. 3: nearly 5 % at 250 degF, 10 % at 350 degF. */
export const handbookShrink: ShrinkTable = {
  points: [
    { plateC: fToC(250), percent: 5 },
    { plateC: fToC(350), percent: 10 },
  ],
  standing: 'FAA-H-8083-31 vol. 1 ch. 3: nearly 5 % at 250 °F, 10 % at 350 °F',
};

/** In percent of its length; under the first point of a table it is less than that, over the last one at least that. */
export interface FreeShrink {
  readonly bound: 'less-than' | 'about' | 'at-least';
  readonly percent: number;
}

/**
 * The free shrinkage of loose cloth at a plate temperature, on straight lines between the points of the table.
 * @param plateC degC
 * @param table of the heat schedule; undefined: the handbook's
 */
export function freeShrink(plateC: number, table: ShrinkTable | undefined): FreeShrink {
  const { points } = table ?? handbookShrink;
  const above = points.findIndex((point) => plateC <= point.plateC);
  const [high, low] = [points[above], points[above - 1]];
  if (high === undefined) return { bound: 'at-least', percent: points.at(-1)?.percent ?? 0 };
  if (plateC === high.plateC) return { bound: 'about', percent: high.percent };
  if (low === undefined) return { bound: 'less-than', percent: high.percent };
  const share = (plateC - low.plateC) / (high.plateC - low.plateC);
  return { bound: 'about', percent: low.percent + share * (high.percent - low.percent) };
}
