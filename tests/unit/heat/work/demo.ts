import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import { type AreaHeat, untouched } from '../../../../shared/heat/work/area-heat.ts';
import type { KeptVisit, ReachedStage } from '../../../../shared/heat/work/visit.ts';
import { withGrid } from '../../../../shared/piece/edit.ts';
import type { Area, Piece, SideId } from '../../../../shared/piece/piece.ts';
import { startingPiece } from '../../../../shared/piece/starting.ts';

/** Demo data: pieces of an invented aeroplane, and what they have had. */

export const pieceOf = (
  rows: number,
  columns: number,
  sides: readonly string[] = ['Upper', 'Lower'],
): Piece => {
  const edited = withGrid(startingPiece('Left wing panel', 'spruce', sides), rows, columns);
  if (edited.kind === 'refused') throw new Error(edited.why);
  return { ...edited.draft, id: 'panel', version: 1, madeAt: '2026-11-28T00:00:00Z' };
};

export const { stages } = shippedSchedule;

export const stageOf = (id: string) => {
  const found = stages.find((stage) => stage.id === id);
  if (found === undefined) throw new Error(`no stage ${id}`);
  return found;
};

export const reachedAs = (id: string): ReachedStage => {
  const { name, lowC, targetC } = stageOf(id);
  return { id, name, lowC, targetC };
};

export const areaOf = (piece: Piece, name: string, side: SideId = 1): Area => {
  const found = piece.areas.find((a) => a.name === name && a.side === side);
  if (found === undefined) throw new Error(`no area ${name}`);
  return found;
};

/** A visit of ten seconds that reached the initial shrink, at 1,000 s. */
export const visitTo = (piece: Piece, area: Area | null, more: Partial<KeptVisit> = {}): KeptVisit => {
  const fromUtcMs = more.fromUtcMs ?? 1_000_000;
  return {
    session: 'one',
    n: fromUtcMs,
    fromUtcMs,
    toUtcMs: fromUtcMs + 10_000,
    ironId: 'big',
    ironName: 'Big iron',
    simulated: false,
    spot: { piece: piece.id, version: 1, side: area?.side ?? 1, area: area?.id ?? null },
    placeName: area?.name ?? '',
    presumed: false,
    contactBy: 'marks',
    contactMs: 10_000,
    peakC: 125,
    guardBandK: 3,
    fabricC: 124,
    reached: reachedAs('initial'),
    inBandMs: 8_000,
    lapDone: false,
    takenBack: false,
    ...more,
  };
};

export const heatAt = (stage: string, laps: number): AreaHeat => ({
  ...untouched,
  reached: reachedAs(stage),
  lapsAtStage: laps,
  laps,
});
