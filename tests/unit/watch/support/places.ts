import type { At } from '../../../../shared/heat/work/at.ts';
import type { Mark } from '../../../../shared/watch/input.ts';

/** Demo data: places on a left flap that doesn't exist. */
export const at = (area: string | null, more: Partial<At> = {}): At => ({
  piece: 'flap',
  version: 1,
  side: 1,
  area,
  presumed: false,
  pieceName: 'Left flap',
  sideName: 'Upper',
  areaName: area,
  bonded: false,
  limitMs: null,
  ...more,
});

export const onArea = (area: string, more: Partial<At> = {}): Mark => ({
  kind: 'at',
  said: 'area',
  at: at(area, more),
});

export const piece: Mark = { kind: 'at', said: 'piece', at: at(null) };
export const turned: Mark = { kind: 'at', said: 'turned', at: at(null, { side: 2, sideName: 'Lower' }) };
export const lapDone: Mark = { kind: 'lap-done' };
export const undo: Mark = { kind: 'undo' };
