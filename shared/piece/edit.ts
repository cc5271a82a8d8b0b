import { areaNames, pieceEditWords as words } from '../words/piece-checks.ts';
import { cellsOf, type Place } from './cells.ts';
import { checkPiece } from './check.ts';
import { type Area, areaSchema, type PieceDraft, pieceDraftSchema, type SideId, sideIds } from './piece.ts';
import { idFor, layout, MOST_BAY_COLUMNS, MOST_BAY_ROWS } from './starting.ts';

/**
 * Changes to the map of a piece, each from a draft to the next. Areas that stay keep their ids, and with them what they
 * have had; what is new gets a new one.
 */

/** The changed draft, or in a sentence why that can't be done and what would be right. */
export type Edited =
  | { readonly kind: 'done'; readonly draft: PieceDraft }
  | { readonly kind: 'refused'; readonly why: string };

const LONGEST_NAME = 60;
const MOST_AREAS = 400;

const refused = (why: string): Edited => ({ kind: 'refused', why });

/** The draft with other areas, if they make sense together. */
function done(draft: PieceDraft, areas: readonly Area[]): Edited {
  const next = { ...draft, areas };
  if (areas.length > MOST_AREAS) return refused(words.tooMany(MOST_AREAS));
  const fault = checkPiece(next)[0];
  return fault === undefined ? { kind: 'done', draft: next } : refused(fault.message);
}

/**
 * Each side divided into bays between its edge strips. Edge strips that were left out stay out; tapes stay where they
 * were, as nearly as the new grid has it; a bay that takes up the same place as an area of cloth before is that area
 * still. Other areas of cloth go.
 * @param rows bays across, 1 to 8
 * @param columns bays from end to end, 1 to 18
 */
export function withGrid(draft: PieceDraft, rows: number, columns: number): Edited {
  if (!fits(rows, MOST_BAY_ROWS) || !fits(columns, MOST_BAY_COLUMNS))
    return refused(words.grid(MOST_BAY_ROWS, MOST_BAY_COLUMNS));
  const across = draft.areas.find((a) => a.kind === 'edge' && stripOf(a, draft) === null);
  if (across !== undefined) return refused(words.edgeAcross(across.name));
  const grid = layout(rows, columns);
  const next: PieceDraft = { ...draft, rows: grid.rows, columns: grid.columns };
  const areas: Area[] = draft.areas.flatMap((area): readonly Area[] => {
    if (area.kind === 'tape') return [{ ...area, ...moved(area, draft, next) }];
    const strip = area.kind === 'edge' ? stripOf(area, draft) : null;
    const place = strip === null ? undefined : grid.edges[strip];
    return place === undefined ? [] : [{ ...place, id: area.id, side: area.side, name: area.name }];
  });
  const cloth = draft.areas.filter((a) => a.kind === 'cloth');
  for (const side of sidesOf(draft))
    for (const bay of grid.bays) {
      const same = cloth.find((a) => a.side === side && samePlace(a, draft, bay, next));
      // A name that was given stays; one that a grid gave is that of the new grid.
      const name = same === undefined || isGridName(same.name) ? bay.name : same.name;
      areas.push({ ...bay, side, name, id: same?.id ?? idFor(bay, side, next, [...areas, ...cloth]) });
    }
  return done(next, areas);
}

/** Whether a number of bays is one that there can be. */
const fits = (n: number, most: number): boolean => Number.isInteger(n) && n >= 1 && n <= most;

const sidesOf = ({ sides }: PieceDraft): readonly SideId[] => sideIds.slice(0, sides.length);

/** Which strip of a layout an edge is, by its place; null for one that lies elsewhere. */
function stripOf(edge: Place, { rows, columns }: PieceDraft): number | null {
  const strips: readonly Place[] = [
    { row: 0, column: 0, rows: 1, columns },
    { row: 1, column: 0, rows: rows - 2, columns: 1 },
    { row: 1, column: columns - 1, rows: rows - 2, columns: 1 },
    { row: rows - 1, column: 0, rows: 1, columns },
  ];
  const found = strips.findIndex(
    (s) =>
      s.row === edge.row && s.column === edge.column && s.rows === edge.rows && s.columns === edge.columns,
  );
  return found < 0 ? null : found;
}

/** A place brought to another grid, to the nearest cells. */
function moved(place: Place, from: PieceDraft, to: PieceDraft): Place {
  const [row, rows] = movedSpan(place.row, place.rows, from.rows, to.rows);
  const [column, columns] = movedSpan(place.column, place.columns, from.columns, to.columns);
  return { row, column, rows, columns };
}

function movedSpan(at: number, length: number, from: number, to: number): readonly [number, number] {
  const first = Math.min(to - 1, Math.round((at * to) / from));
  return [first, Math.max(1, Math.min(to, Math.round(((at + length) * to) / from)) - first)];
}

/** Whether `x` of `ofX` cells is the same part of what lies within the edge strips as `y` of `ofY`. */
const same = (x: number, ofX: number, y: number, ofY: number): boolean => x * (ofY - 2) === y * (ofX - 2);

/** Whether two places take up the same part of what lies within the edge strips. */
function samePlace(a: Place, inA: PieceDraft, b: Place, inB: PieceDraft): boolean {
  return (
    same(a.row - 1, inA.rows, b.row - 1, inB.rows) &&
    same(a.column - 1, inA.columns, b.column - 1, inB.columns) &&
    same(a.rows, inA.rows, b.rows, inB.rows) &&
    same(a.columns, inA.columns, b.columns, inB.columns)
  );
}

const endNames: readonly string[] = [areaNames.firstEnd, areaNames.middle, areaNames.lastEnd];
const bayNamed = /^Bay [A-J]?\d+$/;
/** Whether a name is one that a grid gives. */
const isGridName = (name: string): boolean => endNames.includes(name) || bayNamed.test(name);

/** Areas of one side and kind made into one. They must fill a rectangle. It has the name of the first of them. */
export function merged(draft: PieceDraft, ids: readonly string[]): Edited {
  const unknown = ids.find((id) => draft.areas.every((a) => a.id !== id));
  if (unknown !== undefined) return refused(words.noSuchArea(unknown));
  const chosen = draft.areas.filter(({ id }) => ids.includes(id));
  const [first, ...others] = chosen;
  if (first === undefined || others.length === 0) return refused(words.fewToMerge);
  if (others.some(({ side }) => side !== first.side)) return refused(words.mergeSides);
  if (others.some(({ kind }) => kind !== first.kind)) return refused(words.mergeKinds);
  const place = around(chosen);
  if (cellsIn(chosen).size !== cellsOf(place)) return refused(words.mergeShape);
  const whole = { ...first, ...place };
  const area = { ...whole, id: idFor(whole, first.side, draft, draft.areas) };
  return done(
    draft,
    draft.areas.flatMap((a) => (a === first ? [area] : others.includes(a) ? [] : [a])),
  );
}

/** The smallest place that holds all of them. */
function around(places: readonly Place[]): Place {
  const row = Math.min(...places.map((p) => p.row));
  const column = Math.min(...places.map((p) => p.column));
  const rows = Math.max(...places.map((p) => p.row + p.rows)) - row;
  return { row, column, rows, columns: Math.max(...places.map((p) => p.column + p.columns)) - column };
}

/** The cells that they cover, each once. */
const cellsIn = (places: readonly Place[]): ReadonlySet<string> =>
  new Set(
    places.flatMap((p) =>
      Array.from(
        { length: cellsOf(p) },
        (_, i) => `${p.row + Math.floor(i / p.columns)} ${p.column + (i % p.columns)}`,
      ),
    ),
  );

/** Without one area: a place that has no fabric, or is not ironed. What it has had stays in the records. */
export function leftOut(draft: PieceDraft, id: string): Edited {
  const area = draft.areas.find((a) => a.id === id);
  if (area === undefined) return refused(words.noSuchArea(id));
  const left = draft.areas.filter((a) => a !== area);
  if (area.kind === 'cloth' && left.every((a) => a.side !== area.side || a.kind !== 'cloth'))
    return refused(words.lastCloth(draft.sides[area.side - 1] ?? ''));
  return done(draft, left);
}

/** With an area under another name. */
export function renamed(draft: PieceDraft, id: string, name: string): Edited {
  if (draft.areas.every((a) => a.id !== id)) return refused(words.noSuchArea(id));
  const read = areaSchema.unwrap().shape.name.safeParse(name);
  if (!read.success) return refused(words.name(LONGEST_NAME));
  return done(
    draft,
    draft.areas.map((a) => (a.id === id ? { ...a, name: read.data } : a)),
  );
}

/** With a tape more. It may lie over anything. */
export function withTape(draft: PieceDraft, side: SideId, name: string, place: Place): Edited {
  const read = areaSchema.safeParse({
    ...place,
    kind: 'tape',
    side,
    name,
    id: idFor({ ...place, kind: 'tape' }, side, draft, draft.areas),
  });
  if (!read.success)
    return refused(
      read.error.issues.some(({ path }) => path[0] === 'name')
        ? words.name(LONGEST_NAME)
        : words.tapePlace(draft.rows, draft.columns),
    );
  return done(draft, [...draft.areas, read.data]);
}

const mirroredNames: Readonly<Record<string, string>> = {
  [areaNames.firstEnd]: areaNames.lastEnd,
  [areaNames.lastEnd]: areaNames.firstEnd,
  [areaNames.firstEdge]: areaNames.lastEdge,
  [areaNames.lastEdge]: areaNames.firstEdge,
};

/**
 * A new piece for the opposite hand: the same, with its ends changed over. Areas that the user named keep their names;
 * those called by the end that they lie at are called by the other.
 */
export function mirrored(draft: PieceDraft, name: string): Edited {
  const read = pieceDraftSchema.shape.name.safeParse(name);
  if (!read.success) return refused(words.name(LONGEST_NAME));
  const areas: Area[] = [];
  for (const area of draft.areas) {
    const turned = { ...area, column: draft.columns - area.column - area.columns };
    const id = idFor(turned, area.side, draft, areas);
    areas.push({ ...turned, id, name: mirroredNames[area.name] ?? area.name });
  }
  return done({ ...draft, name: read.data, archived: false }, areas);
}
