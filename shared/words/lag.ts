import type { LagRefusal, StepKind } from '../thermometer/lag/step-watch.ts';

/** What is said of a probe's lag and of the step that it is measured by. */

export const lagWords = {
  title: 'Lag: how far the probe trails the plate',
  measuring: 'Measuring the lag',
  unknown: (allowance: string) =>
    `Not measured. While the plate moves, up to ${allowance} of lag is allowed for: an allowance, not a measurement.`,
  known: (tau: string, standard: string) => `Time constant ${tau} ± ${standard}`,
  knownFrom: (day: string) => `measured ${day}, from a step`,
  why: 'What that means',
  means:
    'After a sudden change the probe has covered 63.2 % of it after one time constant, 95 % after three. A plate that rises by 1 degree a second is ahead of the probe by as many degrees as the time constant has seconds.',
  formula:
    'Formula of a first-order lag: 1 − exp(−t/τ), which is 63.2 % at t = τ. That is the definition by which sensors are tested (ASTM E839 and IEC 60751, recalled). The curve is fitted to all readings around the step; the ± is the standard uncertainty of that fit.',
  counts: 'While the plate moves, the limits are judged with where the plate is, ahead of the probe.',
  begin: 'Measure the lag',
  beginAgain: 'Measure the lag again',
  forget: 'Forget it',
  forgotten: 'Forgotten: the allowance stands in again.',
  how: 'How is it given a step?',
  fixed:
    'A probe that is screwed, soldered or cemented to its plate can’t be measured this way: leave it unmeasured, and the allowance stands in.',
  reading: 'Reading, uncorrected',
  noReading: 'none yet',
  progress: 'How long it has been at rest',
  stop: 'End the step here',
  again: 'Try again',
  since: (s: string) => `${s} s since the step.`,
  keep: 'Keep this time constant',
  kept: (tau: string) => `Kept: ${tau}. It counts from now on.`,
  giveUp: 'Give up',
  result: (tau: string, standard: string) => `The time constant is ${tau} ± ${standard}.`,
  from: (start: string, end: string, readings: number) =>
    `From a step from ${start} to ${end}, ${readings} readings.`,
  seconds: (s: number) => `${s.toFixed(1)} s`,
  /** Of an uncertainty: one more digit, and never nothing. */
  secondsExactly: (s: number) => `${Math.max(s, 0.01).toFixed(2)} s`,
} as const;

/** Where a step stands. */
export const stepStates = {
  resting: 'Not at rest yet: leave the probe in the air, and keep hands off it.',
  settling: 'The step was seen. Settling: keep the probe still.',
  found: 'Done.',
  refused: 'This gives no time constant.',
} as const;

interface StepWords {
  readonly name: string;
  readonly means: string;
  readonly caution: string;
  readonly steps: readonly string[];
  /** Said once it is at rest. */
  readonly now: string;
}

/** Stands before the measuring, whatever the mounting. */
export const lagCaution =
  'A mains iron and water never meet. Only a loose probe, off every iron, goes into water; one that belongs on an iron is put on its hot plate.';

const unwatched =
  'While the probe is off its iron nothing watches that plate: stay with it, or switch it off.';

/** How each step is made: common practice, no source. */
export const stepWords: Readonly<Record<StepKind, StepWords>> = {
  plunge: {
    name: 'Plunge it into water',
    means: 'a loose probe, off every iron',
    caution: `A mains iron and water never meet: only a loose probe, off every iron, is plunged. Hot water scalds. ${unwatched}`,
    steps: [
      'Fill a cup with ice and water, or with hot water, and put it within reach.',
      'Let the probe hang in the air of the room until it is shown as at rest.',
      'Plunge it in at once, a good 5 cm deep, and hold it still until it is done.',
    ],
    now: 'At rest. Plunge it in now, in one go.',
  },
  clip: {
    name: 'Put it on the plate',
    means: 'a probe held by a spring clip',
    caution: `A hot plate burns. ${unwatched}`,
    steps: [
      'Take the probe off the plate, and let the iron come to a steady heat on its rest, under the limit.',
      'Let the probe hang in the air, away from the iron, until it is shown as at rest.',
      'Clip it onto the plate in one go, and leave it alone until it is done.',
    ],
    now: 'At rest. Clip it onto the plate now, in one go.',
  },
};

export const lagRefusals = {
  none: 'The lag of this probe is not being measured. Begin that first.',
  already:
    'The lag of this probe is being measured already, here or on another page. Go on with it, or give it up first.',
  calibrating: 'This probe is being calibrated. Finish that first, or give it up: one procedure at a time.',
  waterOnFitted:
    'This probe belongs on an iron, and a mains iron and water never meet. Clip it onto its plate at steady heat instead.',
  noStep: 'No step is being waited for. Choose how the probe is given one.',
  nothingToKeep: 'There is no time constant to keep yet. Wait until the step is done.',
} as const;

export interface RefusalWords {
  readonly seen: string;
  readonly action: string;
}

/**
 * Why a record gave no time constant: what was seen, and what to do.
 * @param difference a difference of temperatures in the user's unit, from kelvins
 */
export function stepRefusalWords(refusal: LagRefusal, difference: (k: number) => string): RefusalWords {
  switch (refusal.reason) {
    case 'no-step':
      return {
        seen: `There is no step in this record: from its beginning to its end the reading changed by ${difference(refusal.changeK)}, and it scatters by ${difference(refusal.noiseK)}.`,
        action: 'Start the record with the probe at rest in the air, then plunge it or clip it on.',
      };
    case 'step-too-small':
      return {
        seen: `The step is too small: ${difference(refusal.changeK)}, where this probe’s numbers need ${difference(refusal.neededK)} at least.`,
        action: 'Take a hotter plate or hotter water, or begin with a colder probe.',
      };
    case 'start-not-steady':
      return {
        seen: `The probe was not at rest when the step came: the reading changed by ${difference(refusal.changeK)} before that was shown.`,
        action: 'Let it hang in the air until it is shown as at rest, then plunge it or clip it on.',
      };
    case 'start-not-seen':
      return {
        seen: `The record begins in the middle of the step: ${count(refusal.readings)} before it, where ${refusal.needed} are needed.`,
        action: 'Start the record first, wait a few seconds, then plunge the probe or clip it on.',
      };
    case 'too-few-in-rise':
      return {
        seen: `The device sends too seldom for this step: ${count(refusal.readings)} in it, where ${refusal.needed} are needed.`,
        action: 'Let the device send more often, ten lines a second if it can, and do it again.',
      };
    case 'end-not-reached':
      return {
        seen: `The reading had not come to rest: ${refusal.recordedS.toFixed(0)} s after the step it still moved by ${difference(refusal.movingKPerS)} a second.`,
        action:
          'Leave the probe where it is until the reading stands still, and use water or a plate at steady heat.',
      };
    case 'not-first-order':
      return {
        seen: `The reading did not go as one step does: it was off the curve by ${difference(refusal.offK)} in a step of ${difference(refusal.changeK)}.`,
        action: 'Move the probe once, quickly, and keep it still and in full contact afterwards.',
      };
  }
}

const count = (readings: number): string => (readings === 1 ? '1 reading' : `${readings} readings`);
