import { ABSOLUTE_ZERO_C } from '../units/temperature.ts';
import type { Air } from './air.ts';
import type { Cement, CementKind } from './cement.ts';
import { deficitPa, vapourPa } from './humid-air.ts';

/** How fast a cement dries in an air, against the conditions at which its instructions give their times. */

/** What of a cement its rate goes by. */
export type DriesBy = Pick<Cement, 'kind' | 'atC' | 'atRhPct' | 'energyKJPerMol'>;

/** Seconds at the instructions' conditions that pass in a second: at the least, most likely, and at the most. */
export interface Pace {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/** How far the air may be to either side of what it is taken for. */
export interface AirDoubt {
  readonly airK: number;
  readonly rhPct: number;
}

/** J/(mol K): CODATA 2018, the first ten digits. */
const GAS_CONSTANT = 8.314462618;

/**
 * kJ/mol. Solvent-borne: heat of vaporisation of a usual solvent (ketones, esters and toluene lie between 30 and 38; from
 * memory). Reactive ones: doubles the rate from 25 to 35 degC, which is a rule of thumb (common practice, no source).
 */
const usualKJPerMol: Readonly<Record<Exclude<CementKind, 'water-borne'>, number>> = {
  'solvent-borne': 35,
  'two-part': 52.949,
  'moisture-curing': 52.949,
};

/** Where no humidity is told: so far it may be from the instructions' own. Our own choice. */
const UNTOLD_RH_PCT = 25;
/** Where no air is told at all: so far it may be from the instructions' own. Our own choice. */
const UNTOLD_AIR: AirDoubt = { airK: 8, rhPct: UNTOLD_RH_PCT };
/** Air is not guessed to be nearer to saturation than this, nor drier: nothing would ever dry. Our own choice. */
const HIGHEST_GUESSED_RH_PCT = 95;
const LOWEST_GUESSED_RH_PCT = 10;

/** Whether the air's humidity has a part in how fast it dries. */
export const dryingGoesByHumidity = ({ kind }: Pick<Cement, 'kind'>): boolean =>
  kind === 'water-borne' || kind === 'moisture-curing';

/**
 * How many seconds at the instructions' conditions pass in a second of this air: 1 exactly in the instructions' own, 0
 * where it doesn't dry at all. Humidity that isn't told is taken to be the instructions' own.
 */
export function dryingRate(cement: DriesBy, { airC, rhPct }: Air): number {
  const air = { airC, rhPct: rhPct ?? cement.atRhPct };
  const own = { airC: cement.atC, rhPct: cement.atRhPct };
  switch (cement.kind) {
    case 'water-borne':
      return deficitPa(air) / deficitPa(own);
    case 'solvent-borne':
    case 'two-part':
      return faster(cement, cement.kind, airC);
    case 'moisture-curing':
      return faster(cement, cement.kind, airC) * (vapourPa(air) / vapourPa(own));
  }
}

/** By Arrhenius, and for a solvent's own vapour pressure by Clausius and Clapeyron: both have the same form. */
function faster(cement: DriesBy, kind: keyof typeof usualKJPerMol, airC: number): number {
  const energyJ = (cement.energyKJPerMol ?? usualKJPerMol[kind]) * 1000;
  const inverseK = 1 / (cement.atC - ABSOLUTE_ZERO_C) - 1 / (airC - ABSOLUTE_ZERO_C);
  return Math.exp((energyJ / GAS_CONSTANT) * inverseK);
}

/** Between which rates it dries in air that is known so well; null: nothing is known of the air. */
export function dryingPace(cement: DriesBy, air: Air | null, doubt: AirDoubt): Pace {
  if (air === null) return dryingPace(cement, { airC: cement.atC, rhPct: cement.atRhPct }, UNTOLD_AIR);
  const rhPct = air.rhPct ?? cement.atRhPct;
  const rhDoubtPct = air.rhPct === null ? Math.max(doubt.rhPct, UNTOLD_RH_PCT) : doubt.rhPct;
  const wettest = Math.max(rhPct, Math.min(rhPct + rhDoubtPct, HIGHEST_GUESSED_RH_PCT));
  const driest = Math.min(rhPct, Math.max(rhPct - rhDoubtPct, LOWEST_GUESSED_RH_PCT));
  const [slow, quick] = cement.kind === 'moisture-curing' ? [driest, wettest] : [wettest, driest];
  return {
    least: dryingRate(cement, { airC: air.airC - doubt.airK, rhPct: slow }),
    likely: dryingRate(cement, air),
    most: dryingRate(cement, { airC: air.airC + doubt.airK, rhPct: quick }),
  };
}
