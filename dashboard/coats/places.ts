import type { CoatAct } from '../../shared/messages/cure.ts';
import type { Piece, SideId } from '../../shared/piece/piece.ts';
import { startCoatWords } from '../../shared/words/coats.ts';
import { whereWords } from '../../shared/words/pieces.ts';
import { listText } from './coat-text.ts';

/** Where cement was put on: whole sides, and areas of the others. */
export interface Chosen {
  readonly sides: ReadonlySet<SideId>;
  readonly areas: ReadonlySet<string>;
}

export const noneChosen: Chosen = { sides: new Set(), areas: new Set() };

const toggled = <T>(set: ReadonlySet<T>, one: T): ReadonlySet<T> => {
  const next = new Set(set);
  if (!next.delete(one)) next.add(one);
  return next;
};

/** A whole side is one coat: single areas of it are none beside it. */
export function toggleSide(chosen: Chosen, side: SideId, piece: Piece): Chosen {
  const onSide = new Set(piece.areas.filter((area) => area.side === side).map(({ id }) => id));
  return {
    sides: toggled(chosen.sides, side),
    areas: new Set([...chosen.areas].filter((id) => !onSide.has(id))),
  };
}

export function toggleArea(chosen: Chosen, area: { readonly id: string; readonly side: SideId }): Chosen {
  return {
    sides: new Set([...chosen.sides].filter((side) => side !== area.side)),
    areas: toggled(chosen.areas, area.id),
  };
}

type Places = Extract<CoatAct, { kind: 'start' }>['places'];

/** What is chosen of a piece, in the order of its map; what its map has no more is left out. */
export function placesOf(piece: Piece, { sides, areas }: Chosen): Places {
  return [
    ...piece.sides.flatMap((_, i): Places => {
      const side: SideId = i === 0 ? 1 : 2;
      return sides.has(side) ? [{ side, area: null }] : [];
    }),
    ...piece.areas.flatMap(({ id, side }): Places => (areas.has(id) ? [{ side, area: id }] : [])),
  ];
}

/** The same in the user's names, for example "Left aileron, upper side: leading edge; root edge". */
export function placesText(piece: Piece, places: Places): string {
  const names = (side: SideId): readonly string[] =>
    places
      .filter((place) => place.side === side)
      .map(({ area }) =>
        area === null ? startCoatWords.wholeSide : (piece.areas.find(({ id }) => id === area)?.name ?? area),
      );
  return piece.sides
    .flatMap((sideName, i) => {
      const named = names(i === 0 ? 1 : 2);
      return named.length === 0
        ? []
        : [startCoatWords.on(whereWords.on(piece.name, sideName, null), listText(named))];
    })
    .join(startCoatWords.and);
}
