import type { Mounting, PointKind } from '../calibration/calibration.ts';
import { LEAST_SPAN_K } from '../calibration/check-points.ts';
import type { CorrectionMethod } from '../calibration/correction.ts';
import { ALTITUDE_RANGE_M, PRESSURE_RANGE_HPA, type Stated } from '../calibration/points.ts';
import type { CalibrationRefusal } from '../calibration/refusals.ts';
import { WINDOW_S } from '../calibration/steadiness.ts';
import type { BudgetPart, PartName, PartNote } from '../thermometer/uncertainty.ts';
import { HPA_PER_INHG, M_PER_FT } from '../units/air.ts';
import {
  formatTemperature,
  formatTemperatureDifference,
  type TemperatureUnit,
} from '../units/temperature.ts';

/** What is said of calibrations, their points and how far a temperature can be trusted. */

export const mountingWords: Readonly<Record<Mounting, string>> = {
  loose: 'loose: it can be dipped',
  fitted: 'fitted to an iron or a check pad',
};

/** Stands before every procedure, whatever the mounting. */
export const waterCaution =
  'A mains iron and water never meet. Only a loose probe, off every iron, goes into ice or boiling water; a fitted one is compared with a contact thermometer on the plate.';

export interface PointWords {
  readonly name: string;
  readonly steps: readonly string[];
  readonly caution: string;
}

/** How each point is taken: common practice, no source. */
export const pointWords: Readonly<Record<PointKind, PointWords>> = {
  ice: {
    name: 'Melting ice',
    steps: [
      'Fill a cup with crushed ice, and with just so much cold water that the gaps are full. Ice must reach the bottom.',
      'Put the probe into the middle, a good 5 cm deep, clear of the walls.',
      'Stir every now and then until the reading holds.',
    ],
    caution: waterCaution,
  },
  boiling: {
    name: 'Boiling water',
    steps: [
      'Bring clean water to a full boil in an open pot.',
      'Hang the probe a few centimetres under the surface, clear of the bottom and the walls.',
      'Keep it boiling until the reading holds.',
    ],
    caution: `Steam and boiling water scald. ${waterCaution}`,
  },
  contact: {
    name: 'Contact thermometer on the plate',
    steps: [
      'Bring the iron to a temperature that you work at, on its rest.',
      'Press the trusted thermometer flat on the plate, close to the probe, until both hold. A plate swings with its thermostat: the top of a swing holds longest.',
      'Type what the thermometer shows at the moment when you keep the point.',
    ],
    caution: 'The plate burns. Work at its edge, and keep cloth, cement and solvent away.',
  },
};

export const statedWords: Readonly<Record<Stated['as'], string>> = {
  limits: 'plus or minus, as makers give it',
  expanded: 'expanded uncertainty from a certificate (k = 2)',
  standard: 'standard uncertainty',
};

export const methodWords: Readonly<Record<CorrectionMethod, string>> = {
  offset: 'an offset, from one point',
  line: 'a straight line through two points',
  'least-squares': 'a least-squares line',
};

export const waitingWords = {
  waiting: 'Waiting for the first reading …',
  settling: 'Not steady yet: leave it as it is.',
  steady: 'Steady: this point can be kept.',
  spread: (spread: string) => `spread ${spread}`,
  drift: (drift: string) => `drift ${drift} a minute`,
} as const;

export const calibrationWords = {
  none: 'Not calibrated: its tolerance class and an allowance for its mounting stand in.',
  version: (version: number, madeAt: string) => `Calibration ${version}, made ${madeAt}.`,
  due: (date: string) =>
    `This calibration was due on ${date}. It still counts; make a new one when you can, and before work that must be shown.`,
  superseded: 'A calibration is never changed: a new one takes its place, and old records keep theirs.',
} as const;

export const budgetWords: Readonly<Record<PartName, string>> = {
  calibration: 'Calibration',
  wire: 'Thermocouple wire',
  resolution: 'Step of the reading',
  'cold-junction': 'The board and its cold junction',
  mounting: 'Mounting',
  lag: 'Lag',
  unevenness: 'Evenness of the plate',
};

export const budgetStandingWords: Readonly<Record<BudgetPart['standing'], string>> = {
  measured: 'measured',
  tolerance: 'tolerance',
  stated: 'stated, not measured',
};

export const budgetNoteWords: Readonly<Record<PartNote, string>> = {
  calibrated: 'From its calibration, between the points that were taken.',
  'calibrated-outside':
    'From its calibration, beyond the points that were taken: it grows by 0.43 % of the distance (0.75 % over √3).',
  class: 'Not calibrated: the tolerance of its wire’s class over √3.',
  'class-outside':
    'Not calibrated, and its wire’s class gives no tolerance at this temperature: the widest usual one stands in, 2.5 K or 0.75 %, over √3.',
  step: 'Its step over √12: where in a step the value lies can’t be seen.',
  'step-unknown': 'No step has been seen yet.',
  board: 'What such boards commonly promise, over √3: an allowance of this program’s own.',
  'board-calibrated': 'What is left on a warmer or colder day: an allowance of this program’s own.',
  'mounting-pad':
    'How far a check pad may be from the plate that rests on it, over √3: a film of air or a fleck of glue makes it read too low. An allowance of this program’s own.',
  'mounting-allowed':
    'How far the probe may be from the plate that it sits on, over √3: an allowance of this program’s own, until it is compared in place.',
  'mounting-stated': 'As you stated it, over √3.',
  'mounting-in-place': 'None: it was compared in place, so its mounting is in the correction.',
  'at-rest': 'None: the plate is not moving.',
  moving: 'The probe trails the plate while that moves.',
  spots:
    'How well the hottest of the typed spots is known against the probe’s place: the hand thermometer’s limits over √3, for both places.',
};

export interface RefusalText {
  readonly seen: string;
  readonly action: string;
}

const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;
const pressure = (hPa: number): string => `${hPa.toFixed(1)} hPa (${(hPa / HPA_PER_INHG).toFixed(2)} inHg)`;
const altitude = (m: number): string => `${m.toFixed(0)} m (${(m / M_PER_FT).toFixed(0)} ft)`;
const water: Readonly<Record<PointKind, string>> = {
  ice: 'ice melts',
  boiling: 'water boils',
  contact: 'the plate stands',
};

/** Why a point or a calibration was not taken: what was seen, and what to do. Points are counted from one. */
export function refusalText(refusal: CalibrationRefusal, unit: TemperatureUnit): RefusalText {
  const at = (c: number): string => formatTemperature(c, unit, 1);
  const by = (k: number): string => formatTemperatureDifference(k, unit, 1);
  switch (refusal.reason) {
    case 'no-points':
      return { seen: 'No point has been taken yet.', action: 'Take one point at least.' };
    case 'too-many-points':
      return {
        seen: `${refusal.count} points were taken.`,
        action: `Keep ${refusal.most} at most: leave out those that lie close together.`,
      };
    case 'not-a-number':
      return { seen: `A figure of ${nth(refusal.point)} is no number.`, action: 'Enter it again.' };
    case 'water-on-fitted':
      return {
        seen: 'This probe is fitted, and a mains iron and water never meet.',
        action: 'Compare it with a trusted contact thermometer on the plate at working temperature.',
      };
    case 'pressure-missing':
      return {
        seen: 'Where water boils depends on the air pressure.',
        action: 'Enter the pressure where the water stands, or your altitude.',
      };
    case 'pressure-range':
      return {
        seen: `${pressure(refusal.pressureHpa)} is no air pressure that people live in.`,
        action: `Enter the pressure where the water stands, from ${PRESSURE_RANGE_HPA.min} to ${PRESSURE_RANGE_HPA.max} hPa, or your altitude.`,
      };
    case 'pressure-not-of-altitude':
      return {
        seen: `${pressure(refusal.pressureHpa)} can’t be the air pressure at ${altitude(refusal.altitudeM)}: there it is about ${pressure(refusal.standardHpa)}.`,
        action:
          'A weather report gives the pressure reduced to sea level. Enter the one where the water stands, or leave it out and give the altitude alone.',
      };
    case 'altitude-range':
      return {
        seen: `${altitude(refusal.altitudeM)} is no altitude that people work at.`,
        action: `Enter one from ${altitude(ALTITUDE_RANGE_M.min)} to ${altitude(ALTITUDE_RANGE_M.max)}.`,
      };
    case 'uncertainty-missing':
      return {
        seen: 'How good the trusted thermometer is has not been said.',
        action: 'Enter its accuracy as its maker or its certificate gives it.',
      };
    case 'water-temperature':
      return {
        seen: `For ${nth(refusal.point)} ${at(refusal.givenC)} was given, but ${water[refusal.kind]} at ${at(refusal.possibleC)} there.`,
        action: 'Check the pressure or the altitude, or take the point again.',
      };
    case 'water-reading':
      return {
        seen: `At ${nth(refusal.point)} the probe read ${at(refusal.readingC)}, but ${water[refusal.kind]} at ${at(refusal.referenceC)}.`,
        action: `Wait until ${refusal.kind === 'ice' ? 'ice and water fill the cup together' : 'it boils fully'} and the probe is well in. If it was, check the kind of thermocouple and its polarity.`,
      };
    case 'unsteady':
      return {
        seen: `At ${nth(refusal.point)} the reading spread by ${by(refusal.spreadK)}; up to ${by(refusal.boundK)} counts as steady.`,
        action: 'Wait until it is shown as steady, then take the point again.',
      };
    case 'not-steady':
      return {
        seen: `The reading for ${nth(refusal.point)} has held for ${(refusal.progress * WINDOW_S).toFixed(0)} of ${WINDOW_S} seconds${refusal.driftKPerMin === null ? '' : `, and drifts by ${by(Math.abs(refusal.driftKPerMin))} a minute`}.`,
        action: 'Leave everything as it is until it is shown as steady, then keep the point.',
      };
    case 'few-readings':
      return {
        seen: `${capital(nth(refusal.point))} rests on ${readingsWords(refusal.readings)}.`,
        action: 'Take it again and wait until it is shown as steady.',
      };
    case 'out-of-range':
      return {
        seen: `${at(refusal.tC)} at ${nth(refusal.point)} is outside what this kind of thermocouple reads: ${at(refusal.minC)} to ${at(refusal.maxC)}.`,
        action: 'Check the figure and its unit, and the kind of thermocouple.',
      };
    case 'duplicate':
      return {
        seen: `${capital(nth(refusal.point))} and ${nth(refusal.other)} are only ${by(refusal.apartK)} apart: they say the same thing twice.`,
        action: 'Leave one of them out, or take it again at another temperature.',
      };
    case 'reversed':
      return {
        seen: `From ${at(refusal.otherReferenceC)} to ${at(refusal.referenceC)} the reading went from ${at(refusal.otherReadingC)} to ${at(refusal.readingC)}: it doesn’t rise with the temperature.`,
        action:
          'See whether two points were exchanged. If they weren’t, the thermocouple’s two wires may be.',
      };
    case 'too-close':
      return {
        seen: `The points lie within ${by(refusal.spanK)}: a line through them would tell more of their own errors than of the probe.`,
        action: `Take points at least ${by(LEAST_SPAN_K)} apart, or keep one for an offset.`,
      };
    case 'correction-too-large':
      return {
        seen: `At ${nth(refusal.point)} the probe is ${by(Math.abs(refusal.correctionK))} off; over ${by(refusal.boundK)} is more than a sound probe can be.`,
        action:
          'Check the kind of thermocouple, its polarity, whether it lies firmly on the plate, and the point’s own temperature.',
      };
    case 'slope-too-large':
      return {
        seen: `The correction changes by ${percent(Math.abs(refusal.slope))} of the temperature, more than a sound probe’s can.`,
        action: 'Check the kind of thermocouple and the points, above all the one that is furthest off.',
      };
  }
}

function readingsWords(count: number): string {
  if (count === 0) return 'no reading';
  return count === 1 ? 'a single reading' : `${count} readings`;
}

const nth = (point: number): string => `point ${point + 1}`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
