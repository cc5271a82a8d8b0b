import { areaNames } from '../words/piece-checks.ts';
import type { Place } from './cells.ts';
import { type Area, MOST_COLUMNS, MOST_ROWS, type PieceDraft, type SideId, sideIds } from './piece.ts';

/** The map that a piece starts with, and how a side is laid out: bays, with a strip of edge all round. */

/** The most bays that leave a strip at either edge. */
export const MOST_BAY_ROWS = MOST_ROWS - 2;
export const MOST_BAY_COLUMNS = MOST_COLUMNS - 2;

/** An area before it has its id and its side. */
export type Laid = Pick<Area, 'name' | 'kind'> & Place;

export interface Layout {
  readonly rows: number;
  readonly columns: number;
  readonly edges: readonly Laid[];
  readonly bays: readonly Laid[];
}

/**
 * A side as bays between edge strips. A strip is one cell wide and a bay as many cells as fit, so that strips are as
 * narrow as the grid allows.
 * @param bayRows 1 to `MOST_BAY_ROWS`
 * @param bayColumns 1 to `MOST_BAY_COLUMNS`
 */
export function layout(bayRows: number, bayColumns: number): Layout {
  const high = Math.floor(MOST_BAY_ROWS / bayRows);
  const wide = Math.floor(MOST_BAY_COLUMNS / bayColumns);
  const inner = { rows: bayRows * high, columns: bayColumns * wide };
  const bays = Array.from({ length: bayRows * bayColumns }, (_, i): Laid => {
    const r = Math.floor(i / bayColumns);
    const c = i % bayColumns;
    const place = { row: 1 + r * high, column: 1 + c * wide, rows: high, columns: wide };
    return { name: bayName(bayRows, bayColumns, r, c), kind: 'cloth', ...place };
  });
  const edges = [
    edge(areaNames.upperEdge, 0, 0, 1, inner.columns + 2),
    edge(areaNames.firstEdge, 1, 0, inner.rows, 1),
    edge(areaNames.lastEdge, 1, inner.columns + 1, inner.rows, 1),
    edge(areaNames.lowerEdge, inner.rows + 1, 0, 1, inner.columns + 2),
  ];
  return { rows: inner.rows + 2, columns: inner.columns + 2, edges, bays };
}

const edge = (name: string, row: number, column: number, rows: number, columns: number): Laid => ({
  name,
  kind: 'edge',
  row,
  column,
  rows,
  columns,
});

function bayName(bayRows: number, bayColumns: number, r: number, c: number): string {
  if (bayRows > 1) return areaNames.bayInRow(r + 1, c + 1);
  if (bayColumns !== 3) return areaNames.bay(c + 1);
  return [areaNames.firstEnd, areaNames.middle, areaNames.lastEnd][c] ?? areaNames.bay(c + 1);
}

/**
 * An id for a new area, by its place: areas that ever had one id lay in one place, so that what an earlier version of
 * the map says of an id is true of it now.
 */
export function idFor(
  { kind, row, column, rows, columns }: Pick<Area, 'kind'> & Place,
  side: SideId,
  grid: Pick<PieceDraft, 'rows' | 'columns'>,
  taken: readonly Pick<Area, 'id'>[],
): string {
  const id = `${side}-${kind}-r${row}c${column}-${rows}x${columns}-of-${grid.rows}x${grid.columns}`;
  for (let n = 1; ; n += 1) {
    const tried = n === 1 ? id : `${id}-${n}`;
    if (!taken.some((area) => area.id === tried)) return tried;
  }
}

/**
 * A new piece: each side has two ends, a middle, and edge strips all round.
 * @param frame what its frame is made of, in the user's words
 * @param sides what the user calls its sides, one or two
 */
export function startingPiece(name: string, frame: string, sides: readonly string[]): PieceDraft {
  const grid = layout(1, 3);
  const areas = sideIds
    .slice(0, sides.length)
    .flatMap((side) =>
      [...grid.bays, ...grid.edges].map((laid): Area => ({ id: idFor(laid, side, grid, []), side, ...laid })),
    );
  const size = { lengthCm: null, widthCm: null };
  return { name, frame, sides, rows: grid.rows, columns: grid.columns, ...size, areas, archived: false };
}
