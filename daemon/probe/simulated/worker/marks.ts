import type { WorkAct } from '../../../../shared/messages/piece.ts';
import type { Area } from '../../../../shared/piece/piece.ts';
import type { Draw } from '../draw.ts';
import type { Mistakes, WorkIronId } from './worker.ts';

/** What the worker says, and when: an act of the work on a piece, or the stage that is being worked. */
export interface SaidMark {
  readonly atS: number;
  readonly iron: WorkIronId;
  readonly act: WorkAct;
}

/** How long after the deed the mark comes, s: one finger is free at most. Invented. */
const delaysS: Readonly<Record<SaidMark['act']['kind'], readonly [number, number]>> = {
  stage: [0, 2],
  piece: [0.5, 3],
  area: [0.3, 3],
  next: [0.3, 3],
  turned: [0.5, 4],
  'lap-done': [0.5, 3],
  'in-hand': [0, 1.5],
  'on-work': [0.3, 2],
  'off-work': [0.3, 2],
  'on-rest': [0.3, 4],
  undo: [2, 10],
};

/** The marks for one deed at `atS`: usually one, none where it is forgotten, up to three where it went wrong. */
export function sayOf(
  deed: SaidMark,
  sameSide: readonly Pick<Area, 'id'>[],
  mistakes: Mistakes,
  draw: Draw,
): readonly SaidMark[] {
  const { act, iron } = deed;
  const first = { ...deed, atS: deed.atS + draw.between(...delaysS[act.kind]) };
  // A stage that was never chosen is another matter than a mark that was forgotten.
  if (act.kind !== 'stage' && draw.chance(mistakes.forgottenMarks)) return [];
  const others = act.kind === 'area' ? sameSide.filter((a) => a.id !== act.area) : [];
  if (others.length === 0 || !draw.chance(mistakes.wrongMarks)) return [first];
  const wrong: SaidMark = { ...first, act: { kind: 'area', area: draw.oneOf(others).id } };
  if (draw.chance(0.5)) return [wrong];
  const undoneS = wrong.atS + draw.between(...delaysS.undo);
  return [
    wrong,
    { atS: undoneS, iron, act: { kind: 'undo' } },
    { atS: undoneS + draw.between(0.5, 2), iron, act },
  ];
}
