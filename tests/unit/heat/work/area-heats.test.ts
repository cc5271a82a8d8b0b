import { describe, expect, test } from 'vitest';
import { untouched } from '../../../../shared/heat/work/area-heat.ts';
import { areaHeatsOf, heatOf } from '../../../../shared/heat/work/area-heats.ts';
import { cellsOf } from '../../../../shared/piece/cells.ts';
import { areaOf, pieceOf, reachedAs, visitTo } from './demo.ts';

const piece = pieceOf(1, 3);
const middle = areaOf(piece, 'Middle');
const end = areaOf(piece, 'First end');

describe('what areas have had', () => {
  test('names every area of the map, untouched ones too', () => {
    const heats = areaHeatsOf(piece, []);
    expect(Object.keys(heats)).toEqual(piece.areas.map((a) => a.id));
    expect(Object.values(heats).every((heat) => heat === untouched)).toBe(true);
    expect(heatOf({}, 'constructor')).toBe(untouched);
  });

  test('is the highest stage, the hottest plate, and the laps at that stage', () => {
    const heats = areaHeatsOf(piece, [
      visitTo(piece, middle, { fromUtcMs: 0, presumed: true }),
      visitTo(piece, middle, { fromUtcMs: 1e6, reached: reachedAs('final'), peakC: 177, guardBandK: 4 }),
      visitTo(piece, middle, { fromUtcMs: 2e6, reached: reachedAs('final'), peakC: 171, presumed: true }),
      visitTo(piece, middle, { fromUtcMs: 3e6, reached: null, peakC: null, contactMs: 500, inBandMs: 0 }),
    ]);
    expect(heatOf(heats, middle.id)).toEqual({
      reached: reachedAs('final'),
      presumed: false,
      peakC: 177,
      guardBandK: 4,
      contactMs: 30_500,
      inBandMs: 24_000,
      lapsAtStage: 2,
      laps: 4,
      lastUtcMs: 3_010_000,
    });
    expect(heatOf(heats, end.id)).toBe(untouched);
  });

  test('is presumed where every visit that reached the stage was', () => {
    const first = visitTo(piece, middle, { fromUtcMs: 0, presumed: true });
    const second = visitTo(piece, middle, { fromUtcMs: 20_000, reached: reachedAs('final'), presumed: true });
    const confirmed = visitTo(piece, middle, { fromUtcMs: 40_000, reached: reachedAs('final') });
    expect(heatOf(areaHeatsOf(piece, [first, second]), middle.id).presumed).toBe(true);
    expect(heatOf(areaHeatsOf(piece, [first, second, confirmed]), middle.id).presumed).toBe(false);
    expect(heatOf(areaHeatsOf(piece, [{ ...first, presumed: false }, second]), middle.id)).toMatchObject({
      presumed: true,
      lapsAtStage: 1,
    });
  });

  test('tack and initial shrink are of one level: laps add up, and the later one names it', () => {
    const heats = areaHeatsOf(piece, [
      visitTo(piece, middle, { fromUtcMs: 0, reached: reachedAs('tack') }),
      visitTo(piece, middle, { fromUtcMs: 1e6, reached: reachedAs('initial') }),
    ]);
    expect(heatOf(heats, middle.id)).toMatchObject({ reached: { id: 'initial' }, lapsAtStage: 2 });
  });

  test.each([
    ['gone on with after a rest is of the same lap', 60_000, null, 1],
    ['taken up again after a long time is a lap of its own', 700_000, null, 2],
    ['come back to from another area is a lap of its own', 60_000, 'elsewhere', 2],
    ['after a lap was done is of the next one', 60_000, 'lap done', 2],
  ] as const)('%s', (_what, fromUtcMs, between, laps) => {
    const heats = areaHeatsOf(piece, [
      visitTo(piece, middle, { fromUtcMs: 0 }),
      ...(between === 'elsewhere' ? [visitTo(piece, end, { fromUtcMs: 30_000 })] : []),
      ...(between === 'lap done'
        ? [visitTo(piece, null, { fromUtcMs: 0, toUtcMs: 40_000, lapDone: true })]
        : []),
      visitTo(piece, middle, { fromUtcMs }),
    ]);
    expect(heatOf(heats, middle.id)).toMatchObject({ laps, lapsAtStage: laps, contactMs: 20_000 });
  });

  test('counts nothing that was taken back, unassigned, elsewhere, without contact or of no area of the map', () => {
    const gone = { piece: piece.id, version: 1, side: 1 as const, area: 'gone' };
    const heats = areaHeatsOf(piece, [
      visitTo(piece, middle, { takenBack: true }),
      visitTo(piece, middle, { spot: null }),
      visitTo(piece, middle, { spot: { ...gone, piece: 'other', area: middle.id } }),
      visitTo(piece, middle, { contactMs: 0 }),
      visitTo(piece, null),
      visitTo(piece, middle, { spot: gone }),
    ]);
    expect(heats).toEqual(areaHeatsOf(piece, []));
  });

  test('counts a visit on another version of the map where the area is there still', () => {
    const old = { piece: piece.id, version: 7, side: 1 as const, area: middle.id };
    expect(heatOf(areaHeatsOf(piece, [visitTo(piece, null, { spot: old })]), middle.id).laps).toBe(1);
  });

  test('counts a corrected visit where it was put, and one put nowhere nowhere', () => {
    const to = { piece: piece.id, version: 1, side: 1 as const, area: end.id };
    const corrected = (spot: typeof to | null) =>
      areaHeatsOf(piece, [visitTo(piece, middle, { corrected: { spot, by: 'A. Worker', atUtcMs: 0 } })]);
    expect(heatOf(corrected(to), end.id).laps).toBe(1);
    expect(heatOf(corrected(to), middle.id).laps).toBe(0);
    expect(corrected(null)).toEqual(areaHeatsOf(piece, []));
  });
});

describe('a lap over a whole side', () => {
  const lap = visitTo(piece, null, {
    fromUtcMs: 100_000,
    toUtcMs: 200_000,
    contactMs: 90_000,
    lapDone: true,
  });

  test('counts over each of its areas, its time shared by their size', () => {
    const heats = areaHeatsOf(piece, [lap]);
    for (const area of piece.areas) expect(heatOf(heats, area.id).laps).toBe(area.side === 1 ? 1 : 0);
    const shared = piece.areas.reduce((sum, { id }) => sum + heatOf(heats, id).contactMs, 0);
    expect(shared).toBeCloseTo(90_000, 6);
    expect(heatOf(heats, middle.id).contactMs).toBeCloseTo((90_000 * cellsOf(middle)) / 200, 6);
    expect(heatOf(heats, middle.id)).toMatchObject({ peakC: 125, reached: { id: 'initial' } });
  });

  test.each([
    [150_000, 160_000, 1],
    [80_000, 100_000, 2],
    [200_000, 210_000, 2],
    [190_000, 200_000, 1],
    [190_000, 200_001, 2],
  ])('leaves out what was visited for itself meanwhile: %d to %d ms', (fromUtcMs, toUtcMs, laps) => {
    const heats = areaHeatsOf(piece, [lap, visitTo(piece, middle, { fromUtcMs, toUtcMs })]);
    expect(heatOf(heats, middle.id).laps).toBe(laps);
    expect(heatOf(heats, end.id).laps).toBe(1);
  });

  test('counts over what was passed without contact or taken back meanwhile', () => {
    const passed = visitTo(piece, middle, { fromUtcMs: 150_000, contactMs: 0 });
    const undone = visitTo(piece, end, { fromUtcMs: 150_000, takenBack: true });
    const heats = areaHeatsOf(piece, [lap, passed, undone]);
    expect([middle, end].map(({ id }) => heatOf(heats, id).laps)).toEqual([1, 1]);
  });
});
