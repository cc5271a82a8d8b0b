import { settledCycle } from '../../../daemon/probe/simulated/cycle.ts';
import { swingingIron } from '../../../daemon/probe/simulated/irons.ts';
import type { IronBody } from '../../../daemon/probe/simulated/physics.ts';
import { rows } from '../data.ts';

/**
 * A measured household iron, USA about 1986: Schneider (seen), and a simulated iron that does the same. Sources and
 * standing: data/7_irons/SOURCES.md.
 */

/** Its room, on its rest. */
export const room = { ambientC: 21, onWork: false, runaway: false };

/** What it was published with: whole degrees Fahrenheit. */
export const printedK = 5 / 9;

export interface Published {
  readonly mark: number;
  readonly lowC: number;
  readonly midC: number;
  readonly highC: number;
}

export const published: readonly Published[] = rows('7_irons/iron_dial_vs_temperature.csv').map((cells) => {
  // The label of the first column holds a comma.
  const [lowC = Number.NaN, midC = Number.NaN, highC = Number.NaN] = cells.slice(-3).map(Number);
  return { mark: Number(cells.at(-8)), lowC, midC, highC };
});

/** The swinging demo iron with hysteresis and dial such that its settled cycle goes from `lowC` to `highC`, to 0.02 K. */
export function ironAt({ lowC, highC }: Published): { readonly body: IronBody; readonly dialC: number } {
  let dialC = (lowC + highC) / 2;
  let hysteresisK = highC - lowC;
  for (let i = 0; i < 30; i++) {
    const body = { ...swingingIron.body, hysteresisK };
    const { peakC, troughC } = settledCycle(body, { ...room, dialC });
    const offK = (lowC + highC - peakC - troughC) / 2;
    const narrowK = highC - lowC - (peakC - troughC);
    if (Math.abs(offK) < 0.01 && Math.abs(narrowK) < 0.02) return { body, dialC };
    dialC += offK;
    hysteresisK += narrowK;
  }
  throw new Error(`no iron goes from ${lowC} to ${highC}`);
}
