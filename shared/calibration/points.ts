import { standardPressureHpa } from './atmosphere.ts';
import { boilingPointC } from './boiling.ts';
import { type Mounting, type PointKind, pointKinds } from './calibration.ts';
import { rectangularU } from './rectangular.ts';
import type { CalibrationRefusal } from './refusals.ts';

/** The reference points: what temperature each has, and how well it is known at a bench. */

/** How a user says how good a thermometer is. */
export interface Stated {
  readonly k: number;
  /** Plus or minus so many K; an expanded uncertainty from a certificate (k = 2); or a standard uncertainty. */
  readonly as: 'limits' | 'expanded' | 'standard';
}

export type ReferenceFacts =
  | { readonly kind: 'ice' }
  | { readonly kind: 'boiling'; readonly pressureHpa: number | null; readonly altitudeM: number | null }
  | { readonly kind: 'contact'; readonly plateC: number; readonly stated: Stated | null };

export interface ReferencePart {
  readonly name: 'bath' | 'pressure' | 'weather' | 'instrument' | 'joint';
  readonly uK: number;
  /** `own-choice`: our figure, nobody's measurement. `stated`: the user's. */
  readonly standing: 'own-choice' | 'stated';
}

export interface Reference {
  readonly referenceC: number;
  readonly referenceUK: number;
  readonly parts: readonly ReferencePart[];
}

/**
 * Melting ice under air: 0 degC, the ice point (ITS-90 puts the triple point at 0.01 degC). A well-made bath of clean
 * ice keeps it to a few mK (ASTM E563; from memory); tap-water ice in a cup, badly stirred, may be 0.2 K off: our own
 * choice, as limits.
 */
const ICE_C = 0;
const ICE_LIMIT_K = 0.2;
/**
 * Boiling water in a kitchen pot: superheat, salts, and 10 hPa (0.3 K) for every 10 cm of depth leave 0.3 K either way:
 * our own choice, as limits.
 */
const POT_LIMIT_K = 0.3;
/** A pressure read from a barometer or a phone where the water stands, hPa either way: our own choice. */
const BAROMETER_LIMIT_HPA = 2;
/**
 * Without a barometer the weather moves the pressure by 10 to 20 hPa about the standard atmosphere's (common practice,
 * no source); the wider is taken, as limits.
 */
const WEATHER_LIMIT_HPA = 20;
/**
 * A hand-held contact thermometer cools the spot that it touches and rarely lies flat: 2 K either way, over what its
 * maker states. Our own choice.
 */
const JOINT_LIMIT_K = 2;

/** Air pressures where people are, hPa: from the highest towns' to over the highest ever seen (some 1085; from memory). */
export const PRESSURE_RANGE_HPA = { min: 450, max: 1100 } as const;
export const ALTITUDE_RANGE_M = { min: -500, max: 6000 } as const;
/**
 * Weather takes the pressure hardly further than this from the standard one of the altitude, hPa (our own choice). A
 * weather report's pressure, reduced to sea level, is further off from some 450 m up.
 */
const WEATHER_MOST_HPA = 50;

/** The points that a probe may be taken to: a mains iron never meets water. */
export const kindsFor = (mounting: Mounting): readonly PointKind[] =>
  mounting === 'fitted' ? ['contact'] : pointKinds;

/** The reference temperature of a point and its standard uncertainty, or why there is none. */
export function referenceOf(facts: ReferenceFacts): Reference | CalibrationRefusal {
  if (facts.kind === 'ice') return reference(ICE_C, [limits('bath', ICE_LIMIT_K)]);
  if (facts.kind === 'boiling') return boilingReference(facts.pressureHpa, facts.altitudeM);
  const { plateC, stated } = facts;
  if (!Number.isFinite(plateC)) return { reason: 'not-a-number', point: 0 };
  if (stated === null || !(stated.k > 0)) return { reason: 'uncertainty-missing' };
  const instrument: ReferencePart = { name: 'instrument', uK: standardUK(stated), standing: 'stated' };
  return reference(plateC, [instrument, limits('joint', JOINT_LIMIT_K)]);
}

/** A statement of how good a thermometer is as a standard uncertainty, K (GUM 4.3.3 and 4.3.7). */
export function standardUK({ k, as }: Stated): number {
  if (as === 'limits') return rectangularU(k);
  return as === 'expanded' ? k / 2 : k;
}

function boilingReference(
  pressureHpa: number | null,
  altitudeM: number | null,
): Reference | CalibrationRefusal {
  const standardHpa = altitudeM === null ? null : standardAt(altitudeM);
  if (standardHpa !== null && typeof standardHpa !== 'number') return standardHpa;
  if (pressureHpa === null) {
    if (standardHpa === null) return { reason: 'pressure-missing' };
    return boilingAt(standardHpa, 'weather', WEATHER_LIMIT_HPA);
  }
  if (!(pressureHpa >= PRESSURE_RANGE_HPA.min && pressureHpa <= PRESSURE_RANGE_HPA.max))
    return { reason: 'pressure-range', pressureHpa };
  if (altitudeM !== null && standardHpa !== null && Math.abs(pressureHpa - standardHpa) > WEATHER_MOST_HPA)
    return { reason: 'pressure-not-of-altitude', pressureHpa, altitudeM, standardHpa };
  return boilingAt(pressureHpa, 'pressure', BAROMETER_LIMIT_HPA);
}

function standardAt(altitudeM: number): number | CalibrationRefusal {
  const { min, max } = ALTITUDE_RANGE_M;
  const standardHpa = altitudeM >= min && altitudeM <= max ? standardPressureHpa(altitudeM) : null;
  return standardHpa ?? { reason: 'altitude-range', altitudeM };
}

/** The boiling point, and the half of what it moves by over the limits of the pressure. */
function boilingAt(
  hPa: number,
  name: 'pressure' | 'weather',
  limitHpa: number,
): Reference | CalibrationRefusal {
  const [referenceC, lowC, highC] = [hPa, hPa - limitHpa, hPa + limitHpa].map(boilingPointC);
  if (typeof referenceC !== 'number' || typeof lowC !== 'number' || typeof highC !== 'number')
    return { reason: 'pressure-range', pressureHpa: hPa };
  return reference(referenceC, [limits(name, (highC - lowC) / 2), limits('bath', POT_LIMIT_K)]);
}

const limits = (name: ReferencePart['name'], limitK: number): ReferencePart => ({
  name,
  uK: rectangularU(limitK),
  standing: 'own-choice',
});

const reference = (referenceC: number, parts: readonly ReferencePart[]): Reference => ({
  referenceC,
  referenceUK: Math.hypot(...parts.map(({ uK }) => uK)),
  parts,
});
