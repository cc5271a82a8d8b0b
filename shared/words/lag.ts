import type { StepRefusal } from '../thermometer/lag/time-constant.ts';

/** What is said of a probe's lag and of the step that it is measured by. */

export const lagWords = {
  title: 'How far the probe trails the plate',
  unknown: (allowance: string) =>
    `Not measured. While the plate moves, up to ${allowance} of lag is allowed for: an allowance, not a measurement.`,
  known: (tau: string, standard: string) => `Time constant ${tau} ± ${standard}, from a step.`,
  means:
    'After a sudden change the probe has covered 63.2 % of it after one time constant, 95 % after three. Formula: 1 − exp(−t/τ), a first-order lag.',
  plunge:
    'A loose probe: let it come to rest in the air, then plunge it into hot or icy water and hold it still there. Not an iron: a mains iron never meets water.',
  clip: 'A spring-clipped probe: let the iron’s plate come to a steady heat on its rest, let the probe come to rest in the air, then clip it on and leave it. A hot plate burns.',
} as const;

export interface RefusalWords {
  readonly seen: string;
  readonly action: string;
}

/**
 * Why a record gave no time constant: what was seen, and what to do.
 * @param difference a difference of temperatures in the user's unit, from kelvins
 */
export function stepRefusalWords(refusal: StepRefusal, difference: (k: number) => string): RefusalWords {
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
