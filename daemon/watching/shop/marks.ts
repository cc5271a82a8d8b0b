import type { At } from '../../../shared/heat/work/at.ts';
import type { KeptVisit } from '../../../shared/heat/work/visit.ts';
import type { Iron } from '../../../shared/iron/iron.ts';
import type { Place } from '../../../shared/iron/place.ts';
import type { Next, WorkAct } from '../../../shared/messages/piece.ts';
import { type Area, otherSide, type Piece, type SideId } from '../../../shared/piece/piece.ts';
import type { AtSaid, Mark } from '../../../shared/watch/input.ts';
import { workRefusals } from '../../../shared/words/work.ts';
import { Refusal } from '../../refusal.ts';
import { atOf } from './places.ts';

/** What is said of the work as a mark for the watch of the iron that is meant. */

/** The iron that is meant, and where it works. */
export interface Meant {
  readonly iron: Iron;
  readonly at: At | null;
}

/** What a mark is made with, besides. */
export interface Known {
  /** A piece with its map as it is now. Throws `Refusal` where there is none of this id. */
  readonly pieceOf: (id: string) => Piece;
  /** What all pieces have had. */
  readonly visits: () => readonly KeptVisit[];
  /** The area that is proposed next; null: none is. */
  readonly next: (piece: Piece) => Pick<Next, 'area'> | null;
}

/** The mark that an act makes. Throws `Refusal` where it can't be taken. */
export function markOf(act: Exclude<WorkAct, { kind: 'in-hand' }>, meant: Meant, known: Known): Mark {
  switch (act.kind) {
    case 'piece':
      return pieceMark(act.piece, act.side, meant, known);
    case 'area':
      return areaMark(act.area, 'area', meant, known);
    case 'next':
      return nextMark(meant, known);
    case 'turned':
      return turnedMark(meant, known);
    case 'stage':
      return act;
    case 'lap-done':
    case 'undo':
      return { kind: act.kind };
    case 'on-work':
    case 'off-work':
    case 'on-rest':
      return placeMark(act.kind);
  }
}

/**
 * The mark of an iron that is taken up: it goes on where the one in hand before was, on the side that is up, but on no
 * area. It was taken up to go elsewhere, and a brush past is no lap.
 * @param before the iron that was in hand; null: none was
 */
export function takenUpMark(meant: Meant, before: Meant | null, known: Pick<Known, 'pieceOf'>): Mark {
  const other = before === null || before.iron.id === meant.iron.id ? null : before.at;
  if (other !== null) return atMark(known.pieceOf(other.piece), other.side, null, 'in-hand', meant);
  return meant.at === null ? placeMark('on-work') : { kind: 'at', said: 'in-hand', at: meant.at };
}

export const placeMark = (place: Place): Mark => ({ kind: 'place', place });

function pieceMark(id: string, side: SideId | undefined, meant: Meant, known: Known): Mark {
  const piece = known.pieceOf(id);
  if (piece.archived) throw new Refusal('conflict', workRefusals.archived(piece.name), 'act.piece');
  if (side !== undefined && side > piece.sides.length)
    throw new Refusal('conflict', workRefusals.noSide(piece.name), 'act.side');
  return atMark(piece, side ?? lastSide(piece, meant, known), null, 'piece', meant);
}

/** The side that was worked last, else the first. */
function lastSide(piece: Piece, { at }: Meant, known: Known): SideId {
  if (at?.piece === piece.id) return at.side;
  const here = known
    .visits()
    .flatMap(({ spot, toUtcMs }) => (spot?.piece === piece.id ? [{ ...spot, toUtcMs }] : []));
  return here.toSorted((a, b) => b.toUtcMs - a.toUtcMs)[0]?.side ?? 1;
}

function areaMark(id: string, said: 'area' | 'next', meant: Meant, known: Known): Mark {
  const piece = pieceInHand(meant, known);
  const area = piece.areas.find((one) => one.id === id);
  if (area === undefined) throw new Refusal('conflict', workRefusals.noArea(id, piece.name), 'act.area');
  return atMark(piece, area.side, area, said, meant);
}

function nextMark(meant: Meant, known: Known): Mark {
  const piece = pieceInHand(meant, known);
  const next = known.next(piece);
  if (next === null) throw new Refusal('conflict', workRefusals.nothingNext(piece.name), 'act');
  return areaMark(next.area, 'next', meant, known);
}

function turnedMark(meant: Meant, known: Known): Mark {
  const piece = pieceInHand(meant, known);
  const side = otherSide(piece, meant.at?.side ?? 1);
  if (side === null) throw new Refusal('conflict', workRefusals.noSide(piece.name), 'act');
  return atMark(piece, side, null, 'turned', meant);
}

/** The map of the piece in hand as it is now. */
function pieceInHand({ at }: Meant, known: Known): Piece {
  if (at === null) throw new Refusal('conflict', workRefusals.noPiece, 'act');
  return known.pieceOf(at.piece);
}

function atMark(piece: Piece, side: SideId, area: Area | null, said: AtSaid, { iron }: Meant): Mark {
  return { kind: 'at', said, at: atOf(piece, side, area, { iron, presumed: said === 'next' }) };
}
