import { coatsNowMs } from '../cure/clock.ts';
import { signal } from '@preact/signals';
import { z } from 'zod';
import type { Cement, DryingStageKind } from '../../shared/cure/cement.ts';
import type { CoatAct, CoatAnswer } from '../../shared/messages/cure.ts';
import type { CoatFound, FireAnswer } from '../../shared/shop/entry.ts';
import {
  coatFoundWords,
  coatCommandWords as commands,
  dryingStageWords,
  fireWords,
} from '../../shared/words/coats.ts';
import { ask } from '../link/commands.ts';
import { tabKeep } from '../parts/browser.ts';
import { noteUsed } from './cements-by-use.ts';
import { clockTime } from './range-text.ts';

/** What the user says of coats. The last of it can be taken back. */

const tapSchema = z.object({
  commandId: z.string(),
  /** The coat that it is about; null: coats that began with it, or one that is gone. */
  coat: z.string().nullable(),
  words: z.string(),
});
type Tap = z.infer<typeof tapSchema>;

const NAME = 'coat-tap';

function readTap(): Tap | null {
  try {
    return tapSchema.nullable().parse(JSON.parse(tabKeep.read(NAME) ?? 'null'));
  } catch {
    return null;
  }
}

/** What was said last in this tab; null: nothing, or it was taken back. */
export const lastTap = signal(readTap());

function remember(tap: Tap | null): void {
  lastTap.value = tap;
  tabKeep.write(NAME, JSON.stringify(tap));
}

function say(act: CoatAct, coat: string | null, words: string): void {
  remember({ commandId: ask({ what: 'coat', act }, words), coat, words });
}

export interface Start {
  readonly cement: Cement;
  readonly piece: string;
  readonly places: Extract<CoatAct, { kind: 'start' }>['places'];
  /** The places in the user's names. */
  readonly where: string;
  readonly agoS: number;
}

export function startCoats({ cement, piece, places, where, agoS }: Start): void {
  const nowMs = coatsNowMs.peek();
  const time = nowMs === null ? '' : clockTime(nowMs - agoS * 1000, nowMs);
  noteUsed(cement.id);
  say(
    { kind: 'start', cement: cement.id, piece, places, agoS },
    null,
    commands.start(cement.name, where, time),
  );
}

export const checkCoat = (coat: CoatAnswer, stage: DryingStageKind, found: CoatFound): void =>
  say(
    { kind: 'check', coat: coat.id, stage, found },
    coat.id,
    commands.check(coatFoundWords[found], dryingStageWords[stage], coat.placeName),
  );

export const endCoat = (coat: CoatAnswer, why: 'done' | 'mistake'): void =>
  say({ kind: 'end', coat: coat.id, why }, null, commands[why](coat.placeName));

/** It is no tap to be taken back: what was answered of a fire is answered anew. */
export const answerFire = (coat: CoatAnswer, answer: FireAnswer): void =>
  void ask(
    { what: 'coat', act: { kind: 'fire-answer', coat: coat.id, answer } },
    commands.fire(fireWords.answers[answer], coat.placeName),
  );

/** Where what it takes back came to nothing, so does this. */
export function takeBack({ commandId, words }: Tap): void {
  ask({ what: 'coat', act: { kind: 'take-back', of: commandId } }, commands.takeBack(words), commandId);
  remember(null);
}
