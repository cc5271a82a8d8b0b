import type { WorkPiece } from '../../daemon/probe/simulated/worker/worker.ts';
import type { Area, Piece } from '../../shared/piece/piece.ts';
import { type Laid, layout } from '../../shared/piece/starting.ts';

/** Real maps for the worker's pieces, so that what is worked out of areas can be. DEMO DATA, all of it invented. */

/** The worker gives every bay the same time: so the few bays of the flap are as large as those of the panel, cm. */
const PANEL_CM = { length: 352, width: 130 };
const FLAP_CM = { length: 250, width: 80 };

/** @param turn counts how often the worker has begun such a piece: each is one of its own */
export function mapOf(work: WorkPiece, turn: number): Piece {
  const bays = work.areas.filter(({ kind, side }) => kind === 'cloth' && side === 1).length;
  const grid = layout(1, bays);
  const size = bays > 6 ? PANEL_CM : FLAP_CM;
  const placeOf = (id: string): Laid | undefined => {
    const edge = ['front-edge', 'root-edge', 'tip-edge', 'rear-edge'].findIndex((name) =>
      id.startsWith(name),
    );
    return edge >= 0 ? grid.edges[edge] : grid.bays[Number(/-(\d+)-/.exec(id)?.[1])];
  };
  const areas = work.areas.map(({ id, side, kind }): Area => {
    const place = placeOf(id);
    if (place === undefined) throw new Error(`no place for ${id}`);
    return { ...place, id, side, kind, name: id };
  });
  return {
    id: `${work.id}-${turn}`,
    version: 1,
    madeAt: '2026-03-01T08:00:00Z',
    name: work.id,
    frame: 'spruce',
    sides: ['Upper', 'Lower'],
    rows: grid.rows,
    columns: grid.columns,
    lengthCm: size.length,
    widthCm: size.width,
    areas,
    archived: false,
  };
}
