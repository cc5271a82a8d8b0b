import type { MotionRefusal } from '../iron/motion/check.ts';
import type { TrialAsks } from '../iron/motion/trial.ts';

/** What is said of an iron's motion and of the check that it is judged by. */

export const motionWords = {
  title: 'Motion: still or moving',
  notChecked: 'Rest on one spot is not measured: the still/moving check has not been done.',
  notOnLine:
    'Rest on one spot is not measured: no motion value has come on this probe’s line since the program was started.',
  restNotMeasured: 'rest not measured',
  checked: (day: string) => `Checked ${day}.`,
  levels: (still: string, moving: string) => `Still up to ${still}, moving from ${moving}.`,
  gravities: (g: number) => `${g.toFixed(3)} g`,
  checking: 'Checking still and moving',
  begin: 'Check still and moving',
  beginAgain: 'Check again',
  forget: 'Forget the check',
  forgotten: 'Forgotten: rest on one spot is not measured until the check is done again.',
  giveUp: 'Give up',
  left: (s: number) => `${Math.ceil(s)} s left`,
  means:
    'The sensor tells whether the iron moves, not what it stands on: an iron that was put on its rest without a mark looks like one that rests on the work.',
} as const;

export const trialRefusals = {
  already: 'This check is being made already, here or on another page. Go on with it, or give it up first.',
  measuringLag:
    'The lag of this probe is being measured. Finish that first, or give it up: one procedure at a time.',
} as const;

/** What the user is to do. */
export const trialWords: Readonly<Record<TrialAsks, string>> = {
  'let-stand': 'Set the iron on its rest, take your hand away, and touch nothing on the bench.',
  move: 'Now take it up and move it as you do on the work, in your usual strokes. A cold iron does as well.',
  nothing: 'Done.',
};

/** Why a check gives no levels, and what would. */
export const motionRefusalWords: Readonly<Record<MotionRefusal, string>> = {
  'no-value': 'No motion value came on this line. The board must send “g=” with each line.',
  'too-seldom': 'Motion values came too seldom. At least one a second is needed.',
  gravity:
    'Standing still it reads about 1 g: gravity is still in the value. The board must take it out before it sends “g=”.',
  'not-still': 'It was not still while it was to stand. Set it down, take your hand away, and try again.',
  'no-difference':
    'Moving and standing still read nearly the same. Fasten the sensor firmly to the iron’s body, move the iron as you do on the work, and try again.',
};
