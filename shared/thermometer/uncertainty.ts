import { type Correction, correctionUK } from '../calibration/correction.ts';
import { rectangularU } from '../calibration/rectangular.ts';
import type { Unevenness } from '../iron/evenness.ts';
import { type ToleranceClass, toleranceK } from '../thermocouple/tolerance.ts';
import type { ThermocoupleType } from '../thermocouple/types.ts';

/**
 * How far a plate temperature can be trusted: its parts as standard uncertainties, their root sum of squares (GUM 5.1.2),
 * and the guard band that it makes under a limit (JCGM 106:2012, guarded acceptance).
 */

export interface BudgetFacts {
  /** The probe's reading, uncorrected. */
  readonly readingC: number;
  readonly thermocouple: ThermocoupleType;
  readonly toleranceClass: ToleranceClass;
  /**
   * The calibration that the reading is corrected with. `inPlace`: made on the plate with the probe fitted as it is now.
   * Null: none.
   */
  readonly calibration: { readonly correction: Correction; readonly inPlace: boolean } | null;
  /** The probe's step; null where none has been seen. */
  readonly resolutionK: number | null;
  /** What mounting may take off a reading, K either way, as the user states it; null: the allowance of this program. */
  readonly mountingK: number | null;
  /** True for a check pad, on which the plate rests only now and then. */
  readonly onPad?: boolean;
  /** Standard uncertainty for lag, K: 0 while the plate is at rest. */
  readonly lagUK: number;
  /** How far the plate's hottest known spot is over the one that the probe sits at; null: none is known to be hotter. */
  readonly unevenness: Unevenness | null;
  readonly confidence: Confidence;
}

export type PartName =
  | 'calibration'
  | 'wire'
  | 'resolution'
  | 'cold-junction'
  | 'mounting'
  | 'lag'
  | 'unevenness';

export interface BudgetPart {
  readonly name: PartName;
  readonly uK: number;
  /** Measured by the user; a tolerance of what was bought; or stated, by the user or by this program. */
  readonly standing: 'measured' | 'tolerance' | 'stated';
  /** Which sentence explains it (words/calibration.ts). */
  readonly note: PartNote;
}

export type PartNote =
  | 'calibrated'
  | 'calibrated-outside'
  | 'class'
  | 'class-outside'
  | 'step'
  | 'step-unknown'
  | 'board'
  | 'board-calibrated'
  | 'mounting-allowed'
  | 'mounting-pad'
  | 'mounting-stated'
  | 'mounting-in-place'
  | 'at-rest'
  | 'moving'
  | 'spots';

export interface Budget {
  readonly parts: readonly BudgetPart[];
  /** Combined standard uncertainty. */
  readonly uK: number;
  readonly confidence: Confidence;
  /** How much under a limit a reading must be for the hottest spot known to be under it at that confidence. */
  readonly guardBandK: number;
  /** What of that is the known excess of the hottest spot over the probe's place, K: no uncertainty, but counted in. */
  readonly overK: number;
  /** True while nothing but resolution and lag was measured: to be marked as an allowance. */
  readonly allowanceOnly: boolean;
}

/** The confidences on offer, one-sided: how surely the plate is under its limit. */
export const confidences = [0.8, 0.9, 0.95, 0.975, 0.99] as const;
export type Confidence = (typeof confidences)[number];
/** Our own choice; the usual one in conformity assessment. */
export const USUAL_CONFIDENCE: Confidence = 0.95;

/** Quantiles of the standard normal distribution: mathematical. */
const quantiles: Readonly<Record<Confidence, number>> = {
  0.8: 0.8416212335729143,
  0.9: 1.2815515655446004,
  0.95: 1.6448536269514722,
  0.975: 1.959963984540054,
  0.99: 2.3263478740408408,
};

/** Guard band of an upper limit, K: a reading so far under it is over it with no more than the remaining probability. */
export const guardBandK = (uK: number, confidence: Confidence): number => quantiles[confidence] * uK;

const SQRT12 = Math.sqrt(12);

/**
 * The board's error in measuring its own terminals and the emf, K either way, while nobody has compared it: our own
 * choice, from what such boards commonly promise (common practice, no source). It matters alike for a board that
 * linearises by itself.
 */
export const BOARD_LIMIT_K = 1;
/** What is left of it where a calibration has it: the board is warmer or colder on another day. Our own choice. */
export const BOARD_LEFT_K = 0.5;
/** What mounting may take off a reading while it was never compared in place, K either way: our own choice. */
export const MOUNTING_LIMIT_K = 3;
/**
 * The same of a check pad, that the plate only rests on: a film of air, a fleck of glue. Our own choice, as much as 0.05 mm
 * of air takes off at 150 degC for a disc of 1 cm2 on 4 mm of glass cloth (firmware-notes/check-pad.md works it out).
 */
export const PAD_LIMIT_K = 5;
/** Where a class gives no tolerance: the widest of the usual ones, type K by IEC 60584-1 class 2. */
const WIDEST_K = 2.5;
const WIDEST_SHARE = 0.0075;

/** The uncertainty budget of one plate temperature. Every figure is finite and not negative for finite facts. */
export function budget(facts: BudgetFacts): Budget {
  const parts = [
    facts.calibration === null
      ? wirePart(facts)
      : calibrationPart(facts.readingC, facts.calibration.correction),
    resolutionPart(facts.resolutionK),
    boardPart(facts.calibration !== null),
    mountingPart(facts),
    lagPart(facts.lagUK),
    ...(facts.unevenness === null ? [] : [unevennessPart(facts.unevenness)]),
  ];
  const uK = Math.hypot(...parts.map((part) => part.uK));
  const { confidence } = facts;
  const overK = facts.unevenness?.overK ?? 0;
  return {
    parts,
    uK,
    confidence,
    guardBandK: guardBandK(uK, confidence) + overK,
    overK,
    allowanceOnly: facts.calibration === null,
  };
}

/**
 * Guard band of what is read from a hand thermometer, K: as of a type K probe of standard class that nothing is known of,
 * since nobody has said more of it.
 */
export const handGuardBandK = (plateC: number, confidence: Confidence): number =>
  budget({
    readingC: plateC,
    thermocouple: 'K',
    toleranceClass: 'astm-standard',
    calibration: null,
    resolutionK: null,
    mountingK: null,
    lagUK: 0,
    unevenness: null,
    confidence,
  }).guardBandK;

function calibrationPart(readingC: number, correction: Correction): BudgetPart {
  const inside = readingC >= correction.fromC && readingC <= correction.toC;
  return {
    name: 'calibration',
    uK: correctionUK(correction, readingC),
    standing: 'measured',
    note: inside ? 'calibrated' : 'calibrated-outside',
  };
}

function wirePart({ thermocouple, toleranceClass, readingC }: BudgetFacts): BudgetPart {
  const limitK = toleranceK(thermocouple, toleranceClass, readingC);
  const widestK = Math.max(WIDEST_K, WIDEST_SHARE * Math.abs(readingC));
  return {
    name: 'wire',
    uK: rectangularU(limitK ?? widestK),
    standing: 'tolerance',
    note: limitK === null ? 'class-outside' : 'class',
  };
}

/** A step hides where in it the value lies (GUM F.2.2.1). */
const resolutionPart = (resolutionK: number | null): BudgetPart => ({
  name: 'resolution',
  uK: (resolutionK ?? 0) / SQRT12,
  standing: 'measured',
  note: resolutionK === null ? 'step-unknown' : 'step',
});

const boardPart = (calibrated: boolean): BudgetPart => ({
  name: 'cold-junction',
  uK: rectangularU(calibrated ? BOARD_LEFT_K : BOARD_LIMIT_K),
  standing: 'stated',
  note: calibrated ? 'board-calibrated' : 'board',
});

/** Compared in place with the plate itself, the mounting is in the correction. */
function mountingPart({ calibration, mountingK, onPad = false }: BudgetFacts): BudgetPart {
  if (calibration?.inPlace === true)
    return { name: 'mounting', uK: 0, standing: 'measured', note: 'mounting-in-place' };
  return {
    name: 'mounting',
    uK: rectangularU(mountingK ?? (onPad ? PAD_LIMIT_K : MOUNTING_LIMIT_K)),
    standing: 'stated',
    note: mountingK !== null ? 'mounting-stated' : onPad ? 'mounting-pad' : 'mounting-allowed',
  };
}

const lagPart = (lagUK: number): BudgetPart => ({
  name: 'lag',
  uK: lagUK,
  standing: 'stated',
  note: lagUK === 0 ? 'at-rest' : 'moving',
});

/** Stated by the user of a hand thermometer: what its limits leave open of the difference of two places. */
const unevennessPart = ({ uK }: Unevenness): BudgetPart => ({
  name: 'unevenness',
  uK,
  standing: 'stated',
  note: 'spots',
});
