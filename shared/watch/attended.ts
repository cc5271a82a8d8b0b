import { z } from 'zod';
import type { Condition } from '../alarm/machine.ts';
import type { WatchInput } from './input.ts';

/** The slice of whether anybody is there: a hot iron that is left alone has to be told of. */
export interface Attended {
  /** The last sign of somebody: a mark, a press, a touch, the iron's motion. */
  readonly seenMs: number;
}

const minutes = z.number().min(1).max(120);

/** Minutes without a sign of anybody: a reminder, then an alarm. */
export const unattendedSchema = z
  .strictObject({ reminderMin: minutes, alarmMin: minutes })
  .refine((after) => after.reminderMin < after.alarmMin, {
    message: 'the reminder must come before the alarm',
    path: ['reminderMin'],
  })
  .readonly();
export type UnattendedAfter = z.infer<typeof unattendedSchema>;

/** Our own starting values; the user settles others. */
export const usualUnattended: UnattendedAfter = { reminderMin: 10, alarmMin: 15 };

/** Folds one input into the slice; `moving`: the iron's motion says that somebody has it in hand. */
export function stepAttended(before: Attended, input: WatchInput, tMs: number, moving: boolean): Attended {
  return moving || isSign(input) ? { seenMs: tMs } : before;
}

function isSign(input: WatchInput): boolean {
  switch (input.kind) {
    case 'mark':
    case 'acknowledge':
    case 'silence':
    case 'presence':
      return true;
    case 'start':
    case 'stop':
      return input.why === 'by-hand';
    case 'sample':
      return input.sample.button !== null;
    default:
      return false;
  }
}

/** @param powered the plate is hot and is not simply losing its heat */
export function unattended(
  { seenMs }: Attended,
  after: UnattendedAfter,
  tMs: number,
  powered: boolean,
): Readonly<Record<'reminder' | 'alarm', Condition>> {
  const since = (min: number): Condition => (powered && tMs - seenMs >= min * 60_000 ? 'beyond' : 'inside');
  return { reminder: since(after.reminderMin), alarm: since(after.alarmMin) };
}
