import type { WorkAct } from '../../shared/messages/piece.ts';
import type { PieceNoteDraft } from '../../shared/shop/note.ts';
import { workCommandWords as words } from '../../shared/words/pieces.ts';
import { ask } from '../link/commands.ts';
import { handIron, inHand, shownPiece } from './bench.ts';
import { heats } from './pieces.ts';

/** What the user says of the work: each goes to the iron that is in hand as it is said. */

const say = (act: WorkAct, what: string, takesBack?: string): string =>
  ask({ what: 'work', iron: inHand.peek(), act }, what, takesBack);

export const pieceNow = (id: string, name: string): void =>
  void say({ kind: 'piece', piece: id }, words.piece(name));

export const onArea = (id: string, name: string): void =>
  void say({ kind: 'area', area: id }, words.area(name));

/** @returns the id that it is sent under */
export const next = (): string => say({ kind: 'next' }, nextWords());

/** The area that is proposed as the page knows it; the daemon goes by the one that it proposes then. */
function nextWords(): string {
  const heat = heats.peek()[handIron.peek()?.at?.piece ?? shownPiece.peek() ?? ''];
  const area = heat?.piece.areas.find((one) => one.id === heat.next?.area);
  return area === undefined ? words.nextUnnamed : words.next(area.name);
}

export const turned = (): void => void say({ kind: 'turned' }, words.turned);
export const lapDone = (): void => void say({ kind: 'lap-done' }, words.lapDone);
export const onRest = (): void => void say({ kind: 'on-rest' }, words.onRest);
export const onWork = (): void => void say({ kind: 'on-work' }, words.onWork);
export const offWork = (): void => void say({ kind: 'off-work' }, words.offWork);
export const stage = (stageId: string | null, name: string): void =>
  void say({ kind: 'stage', stageId }, words.stage(name));
export const undo = (): void => void say({ kind: 'undo' }, words.undo);
/** Takes back a "next" that is on its way; where that came to nothing, so does this. */
export const undoNext = (commandId: string): void => void say({ kind: 'undo' }, words.undoNext, commandId);

export const takeUp = (iron: string, name: string): void =>
  void ask({ what: 'work', iron, act: { kind: 'in-hand' } }, words.inHand(name));

export const note = (piece: string, said: PieceNoteDraft, what: string): void =>
  void ask({ what: 'piece-note', piece, note: said }, what);
