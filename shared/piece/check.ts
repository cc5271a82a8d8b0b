import { pieceCheckWords as words } from '../words/piece-checks.ts';
import { overlap } from './cells.ts';
import type { Area, PieceDraft } from './piece.ts';

/** What is wrong with a map: where (`areas.3.column`), and in a sentence that says what would be right. */
export interface PieceFault {
  readonly path: string;
  readonly message: string;
}

/**
 * Whether the areas of a piece make sense together; the schema has looked at each by itself. Cloth and edges of a side
 * share no cell, since heat on it would count for both; tapes lie over anything.
 * @returns every fault, in the order of the areas; empty where there is none
 */
export function checkPiece(draft: PieceDraft): readonly PieceFault[] {
  return [
    ...draft.areas.flatMap((area, i) => faultsOf(draft, area, i)),
    ...draft.sides.flatMap((name, i) =>
      draft.areas.some((a) => a.side === i + 1 && a.kind === 'cloth')
        ? []
        : [{ path: `sides.${i}`, message: words.noCloth(name) }],
    ),
  ];
}

function faultsOf(draft: PieceDraft, area: Area, i: number): readonly PieceFault[] {
  const faults: PieceFault[] = [];
  const add = (field: string, message: string) => faults.push({ path: `areas.${i}.${field}`, message });
  if (area.side > draft.sides.length) add('side', words.sideMissing(area.name, area.side));
  const outside = words.outside(area.name, draft.rows, draft.columns);
  if (area.row + area.rows > draft.rows) add('row', outside);
  else if (area.column + area.columns > draft.columns) add('column', outside);
  const before = draft.areas.slice(0, i);
  if (before.some(({ id }) => id === area.id)) add('id', words.idTwice(area.id));
  const under = before.find((other) => shareCloth(other, area) && overlap(other, area));
  if (under !== undefined) add('row', words.overlap(area.name, under.name));
  return faults;
}

const shareCloth = (a: Area, b: Area): boolean => a.side === b.side && a.kind !== 'tape' && b.kind !== 'tape';
