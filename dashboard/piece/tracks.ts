import { cellsOf, overlap, type Place } from '../../shared/piece/cells.ts';

/** How the grid of a side is drawn: lines where no area begins or ends are left out, so that narrow strips stay wide enough. */

/** Where on the drawing's grid. */
export type Drawn = Readonly<Record<'gridRow' | 'gridColumn', string>>;

export interface Tracks {
  /** How many cells each row and column of the drawing stands for. */
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  readonly place: (area: Place) => Drawn;
}

/** Along one side of the grid: its lines, each once. */
const linesOf = (size: number, spans: readonly (readonly [from: number, length: number])[]): number[] =>
  [...new Set([0, size, ...spans.flatMap(([from, length]) => [from, from + length])])].toSorted(
    (a, b) => a - b,
  );

const lengths = (lines: readonly number[]): number[] =>
  lines.slice(1).map((line, i) => line - (lines[i] ?? 0));

const spanText = (lines: readonly number[], from: number, length: number): string =>
  `${lines.indexOf(from) + 1} / ${lines.indexOf(from + length) + 1}`;

/** A track this much narrower than the widest is a strip. */
const STRIP = 1 / 3;

/** A strip is as narrow as can be touched, however long the piece; the others share what is left by their cells. */
export function template(tracks: readonly number[]): string {
  const widest = Math.max(...tracks);
  return tracks
    .map((cells) => (cells < widest * STRIP ? 'var(--cell)' : `minmax(var(--cell), ${cells}fr)`))
    .join(' ');
}

export function tracksOf(
  grid: { readonly rows: number; readonly columns: number },
  areas: readonly Place[],
): Tracks {
  const rowLines = linesOf(
    grid.rows,
    areas.map((area) => [area.row, area.rows]),
  );
  const columnLines = linesOf(
    grid.columns,
    areas.map((area) => [area.column, area.columns]),
  );
  return {
    rows: lengths(rowLines),
    columns: lengths(columnLines),
    place: (area) => ({
      gridRow: spanText(rowLines, area.row, area.rows),
      gridColumn: spanText(columnLines, area.column, area.columns),
    }),
  };
}

/**
 * The part of an area where its words are not covered: beside the tapes that lie over it, where most is left.
 * @returns the area itself where none lies over it or nothing is left
 */
export function uncovered(area: Place, tapes: readonly Place[]): Place {
  return tapes.reduce<Place>((free, tape) => {
    if (!overlap(free, tape)) return free;
    const best = besides(free, tape).reduce((a, b) => (cellsOf(b) > cellsOf(a) ? b : a));
    return cellsOf(best) > 0 ? best : free;
  }, area);
}

type Four<T> = readonly [T, T, T, T];

/** What is left of `of` before, behind, above and below `tape`; none of it where that is no cell or less. */
const besides = (of: Place, tape: Place): Four<Place> => {
  const endRow = tape.row + tape.rows;
  const endColumn = tape.column + tape.columns;
  return [
    { ...of, columns: Math.max(0, tape.column - of.column) },
    { ...of, column: endColumn, columns: Math.max(0, of.column + of.columns - endColumn) },
    { ...of, rows: Math.max(0, tape.row - of.row) },
    { ...of, row: endRow, rows: Math.max(0, of.row + of.rows - endRow) },
  ];
};

/**
 * The area that lies next in a direction: of those further on, the one that is nearest, what lies aside counting double.
 * Null: none lies there.
 */
export function neighbour<T extends Place>(
  from: T,
  areas: readonly T[],
  along: 'row' | 'column',
  step: 1 | -1,
): T | null {
  const across = along === 'row' ? 'column' : 'row';
  const far = (area: T): number => (centre(area, along) - centre(from, along)) * step;
  const cost = (area: T): number => far(area) + 2 * Math.abs(centre(area, across) - centre(from, across));
  const ahead = areas.filter((area) => far(area) > 0);
  return ahead.reduce<T | null>(
    (best, area) => (best === null || cost(area) < cost(best) ? area : best),
    null,
  );
}

const centre = (area: Place, along: 'row' | 'column'): number =>
  along === 'row' ? area.row + area.rows / 2 : area.column + area.columns / 2;
