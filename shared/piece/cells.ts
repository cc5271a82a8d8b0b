import type { Area } from './piece.ts';

/** Where an area lies on the grid of its side. */
export type Place = Pick<Area, 'row' | 'column' | 'rows' | 'columns'>;

/** How many cells of the grid an area covers. */
export const cellsOf = ({ rows, columns }: Pick<Place, 'rows' | 'columns'>): number => rows * columns;

/** Whether two areas have a cell in common. */
export const overlap = (a: Place, b: Place): boolean =>
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;
