import psychrolib from 'psychrolib';
import type { Air } from './air.ts';

/**
 * Humid air, by a psychrometrics library: ASHRAE Handbook Fundamentals 2017, ch. 1. Over water above 0.01 degC, over ice
 * below. All of it holds at the pressures that people work at: the vapour's own pressure hardly depends on the air's.
 */
psychrolib.SetUnitSystem(psychrolib.SI);

/** Air whose humidity is known. */
export type HumidAir = Air & { readonly rhPct: number };

/** The pressure of water vapour, Pa, at which air of `airC`, degC, is saturated: from -100 to 200 degC. */
export const saturationPa = (airC: number): number => psychrolib.GetSatVapPres(airC);

/** The pressure of the water vapour in the air, Pa. */
export const vapourPa = ({ airC, rhPct }: HumidAir): number => (rhPct / 100) * saturationPa(airC);

/** How much more water vapour the air could take up, Pa; 0 for saturated air, never less. */
export const deficitPa = ({ airC, rhPct }: HumidAir): number =>
  Math.max(0, 1 - rhPct / 100) * saturationPa(airC);

/** What the air would have to be cooled to for its water to condense, degC; null where that can't be said. */
export function dewPointC({ airC, rhPct }: Air): number | null {
  if (rhPct === null) return null;
  const vapour = vapourPa({ airC, rhPct });
  return vapour < DRIEST_PA ? null : psychrolib.GetTDewPointFromVapPres(airC, vapour);
}

/** How far the air is over its dew point, K; null where that can't be said. */
export function marginK(air: Air): number | null {
  const dewC = dewPointC(air);
  return dewC === null ? null : air.airC - dewC;
}

/** The formulas end at -100 degC. */
const DRIEST_PA = saturationPa(-100);
