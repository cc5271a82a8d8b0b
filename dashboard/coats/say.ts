import { effect } from '@preact/signals';
import type { Cement, DryingStageKind } from '../../shared/cure/cement.ts';
import type { CoatAct, CoatAnswer } from '../../shared/messages/cure.ts';
import type { Piece } from '../../shared/piece/piece.ts';
import type { CoatFound, FireAnswer } from '../../shared/shop/entry.ts';
import {
  coatFoundWords,
  coatCommandWords as commands,
  dryingStageWords,
  fireWords,
  startCoatWords,
} from '../../shared/words/coats.ts';
import { coatsNowMs } from '../cure/clock.ts';
import { ask, outbox } from '../link/commands.ts';
import { clockTime } from '../parts/clock-time.ts';
import { noteUsed } from './cements-by-use.ts';
import { coats } from './coats.ts';
import { placesText } from './places.ts';
import { isSamePlace, type PutOn, putOnOf, startedTwice } from './taps.ts';

/** What the user says of coats. */

/** The starts of this page: its own are known before the daemon tells of their coats. */
const starts = new Map<string, readonly PutOn[]>();

/** Forgets starts that came to nothing, from now on: they may be said again. */
export function forgetRefused(): void {
  effect(() => {
    for (const { commandId, kind } of outbox.value.notices) if (kind !== 'not-kept') starts.delete(commandId);
  });
}

const say = (act: CoatAct, words: string): string => ask({ what: 'coat', act }, words);

interface Start {
  readonly cement: Cement;
  readonly piece: Piece;
  readonly places: Extract<CoatAct, { kind: 'start' }>['places'];
  readonly agoS: number;
}

/** Starts their clocks. @returns why it didn't, in a sentence; empty where it did */
export function startCoats({ cement, piece, places, agoS }: Start): string {
  const nowMs = coatsNowMs.peek();
  const atMs = nowMs === null ? null : nowMs - agoS * 1000;
  const start = atMs === null ? [] : places.map((place) => putOn(place, cement, piece, atMs));
  const twice = startedTwice(start, [...coats.peek().map(putOnOf), ...[...starts.values()].flat()]);
  if (twice.length > 0) return startCoatWords.twice(cement.name, placesText(piece, twice));
  noteUsed(cement.id);
  const time = atMs === null || nowMs === null ? '' : clockTime(atMs, nowMs);
  const commandId = say(
    { kind: 'start', cement: cement.id, piece: piece.id, places, agoS },
    commands.start(cement.name, placesText(piece, places), time),
  );
  starts.set(commandId, start);
  return '';
}

const putOn = (
  { side, area }: Start['places'][number],
  cement: Cement,
  piece: Piece,
  atMs: number,
): PutOn => ({
  cement: cement.id,
  piece: piece.id,
  side,
  area,
  atMs,
});

export const checkCoat = (coat: CoatAnswer, stage: DryingStageKind, found: CoatFound): void =>
  void ask(
    { what: 'coat', act: { kind: 'check', coat: coat.id, stage, found } },
    commands.check(coatFoundWords[found], dryingStageWords[stage], coat.placeName),
  );

export function endCoat(coat: CoatAnswer, why: 'done' | 'mistake'): void {
  for (const [commandId, start] of starts)
    starts.set(
      commandId,
      start.filter((one) => !isSamePlace(one, putOnOf(coat))),
    );
  say({ kind: 'end', coat: coat.id, why }, commands[why](coat.placeName));
}

/** One that has no card. @param text what the daemon says of it */
export const endAmiss = (coat: string, text: string): void =>
  void say({ kind: 'end', coat, why: 'done' }, commands.doneAmiss(text));

/** It is no tap to be taken back: what was answered of a fire is answered anew. */
export const answerFire = (coat: CoatAnswer, answer: FireAnswer): void =>
  void ask(
    { what: 'coat', act: { kind: 'fire-answer', coat: coat.id, answer } },
    commands.fire(fireWords.answers[answer], coat.placeName),
  );

/** Where what it takes back came to nothing, so does this. */
const askBack = (commandId: string, words: string): void =>
  void ask({ what: 'coat', act: { kind: 'take-back', of: commandId } }, words, commandId);

/** @param of id of the command that said it @param words what that was */
export function takeBackSaid(of: string, words: string): void {
  askBack(of, commands.takeBack(words));
  starts.delete(of);
}

/** @param tap id of the command of the tap */
export const takeBackTap = (coat: CoatAnswer, tap: string): void =>
  askBack(tap, commands.takeBackLast(coat.placeName));
