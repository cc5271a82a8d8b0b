import { describe, expect, test } from 'vitest';
import type { AreaHeats } from '../../../../shared/heat/work/area-heat.ts';
import { type NextInput, proposeNext } from '../../../../shared/heat/work/next.ts';
import { capC } from '../../../../shared/heat/work/order.ts';
import type { SideId } from '../../../../shared/piece/piece.ts';
import { fToC } from '../../../../shared/units/temperature.ts';
import { areaOf, heatAt, pieceOf, stageOf, stages } from './demo.ts';

const piece = pieceOf(1, 5);
const bay = (n: number, side: SideId = 1) => areaOf(piece, `Bay ${n}`, side);
/** Laps of a stage on bays of a side; the later a bay stands, the later it was ironed. */
const had = (side: SideId, stage: string, laps: Readonly<Record<number, number>>, fromMs = 0): AreaHeats =>
  Object.fromEntries(
    Object.entries(laps).map(([n, count]) => [
      bay(Number(n), side).id,
      { ...heatAt(stage, count), lastUtcMs: fromMs + Number(n) },
    ]),
  );
const all = (count: number) => ({ 1: count, 2: count, 3: count, 4: count, 5: count });

const next = (heats: AreaHeats, more: Partial<NextInput> = {}) => {
  const stage = stageOf('intermediate');
  const here = { piece, heats, stages, stage, at: { side: 1, area: null } } as const;
  const told: NextInput = { ...here, capC: null, cementLimitC: null, ...more };
  const found = proposeNext(told);
  if (found === null) return null;
  const area = told.piece.areas.find((a) => a.id === found.area);
  expect(area?.side).toBe(found.side);
  return [found.side, area?.name, found.why];
};

describe('the area to iron next', () => {
  test('is none without a stage, or where all has had it', () => {
    expect(next({}, { stage: null })).toBeNull();
    const done = { ...had(1, 'intermediate', all(1)), ...had(2, 'final', all(1)) };
    expect(next(done)).toBeNull();
    expect(next(done, { laps: 2 })).not.toBeNull();
  });

  test('skips from end to end and middle, and ends the lap', () => {
    expect(next({})).toEqual([1, 'Bay 1', 'skip-about']);
    expect(next(had(1, 'intermediate', { 1: 1 }))).toEqual([1, 'Bay 5', 'skip-about']);
    expect(next(had(1, 'intermediate', { 1: 1, 5: 1 }))).toEqual([1, 'Bay 3', 'skip-about']);
    expect(next(had(1, 'intermediate', { 1: 1, 5: 1, 3: 1, 2: 1 }))).toEqual([1, 'Bay 4', 'finish-lap']);
  });

  test('is never the one that the iron is on, whether its visit is counted already or not', () => {
    const on = { at: { side: 1 as const, area: bay(5).id } };
    expect(next(had(1, 'intermediate', { 1: 1 }), on)).toEqual([1, 'Bay 3', 'skip-about']);
    expect(next(had(1, 'intermediate', { 1: 1, 5: 1 }), on)).toEqual([1, 'Bay 3', 'skip-about']);
    expect(next(had(1, 'intermediate', { 1: 1, 2: 1, 3: 1, 4: 1 }), on)).toEqual([
      2,
      'Bay 1',
      'change-sides',
    ]);
    expect(next(had(1, 'intermediate', all(1)), on)).toEqual([2, 'Bay 1', 'change-sides']);
  });

  test('takes another choice: what was left out comes later', () => {
    expect(next(had(1, 'intermediate', { 2: 1 }))).toEqual([1, 'Bay 5', 'even-out']);
    expect(next(had(1, 'intermediate', { 2: 1, 5: 1 }))).toEqual([1, 'Bay 1', 'skip-about']);
    expect(next(had(2, 'intermediate', { 4: 1 }), { at: { side: 2, area: bay(4, 2).id } })?.[0]).toBe(2);
  });

  test('a second time over an area begins the next lap, after this one', () => {
    const twice = had(1, 'intermediate', { 1: 2, 2: 1, 3: 1, 4: 1 });
    expect(next(twice)).toEqual([1, 'Bay 5', 'finish-lap']);
    const rest = { ...had(1, 'intermediate', { ...all(1), 1: 2 }), ...had(2, 'intermediate', all(1)) };
    expect(next(rest)).toEqual([1, 'Bay 5', 'skip-about']);
  });

  test('changes sides after a lap, and goes back to the side that it began on only when needed', () => {
    const one = had(1, 'intermediate', all(1));
    expect(next(one)).toEqual([2, 'Bay 1', 'change-sides']);
    const both = { ...one, ...had(2, 'intermediate', all(1), 100) };
    // On the way up the next lap begins on the side that is up; the last stage changes sides after each lap.
    const up = { at: { side: 2 as const, area: null }, laps: 2 };
    expect(next(both, up)).toEqual([2, 'Bay 1', 'skip-about']);
    const last = { ...had(1, 'final', all(1)), ...had(2, 'final', all(1), 100) };
    const final = { ...up, stage: stageOf('final') };
    expect(next(last, final)).toEqual([1, 'Bay 1', 'change-sides']);
    expect(next(last, { ...final, at: { side: 1, area: null } })).toEqual([1, 'Bay 1', 'skip-about']);
    // Where it is not known where the iron is, the side that was worked last is up.
    expect(next(both, { laps: 2, at: null })).toEqual([2, 'Bay 1', 'skip-about']);
  });

  test('asks for a turn amid a lap only where this side is ahead by more than one lap', () => {
    const behind = had(2, 'intermediate', all(1));
    const uneven = (n: number) => ({ ...behind, ...had(1, 'intermediate', { ...all(n), 5: 1 }) });
    expect(next(uneven(2))).toEqual([1, 'Bay 5', 'finish-lap']);
    expect(next(uneven(3))).toEqual([2, 'Bay 1', 'even-out']);
  });

  test('goes to the end that is behind', () => {
    expect(next(had(1, 'intermediate', { 1: 1, 5: 1, 4: 1 }))).toEqual([1, 'Bay 2', 'even-out']);
    const ahead = had(1, 'intermediate', { 1: 1, 2: 1, 3: 0, 4: 0, 5: 0 });
    expect(next({ ...ahead, ...had(2, 'intermediate', all(1)) })).toEqual([1, 'Bay 5', 'skip-about']);
    const skipped = had(1, 'intermediate', { 1: 0, 2: 1, 3: 0, 4: 0, 5: 0 });
    expect(next(skipped)).toEqual([1, 'Bay 5', 'even-out']);
  });

  test('of a piece with one side stays on it', () => {
    const single = pieceOf(1, 3, ['Outside']);
    expect(next({}, { piece: single })).toEqual([1, 'First end', 'skip-about']);
    const shrunk = Object.fromEntries(single.areas.map((a) => [a.id, heatAt('intermediate', 1)]));
    expect(next(shrunk, { piece: single })).toBeNull();
  });
});

describe('the first shrink', () => {
  const final = { stage: stageOf('final') };
  const capped = (heats: AreaHeats, side: SideId) =>
    next(heats, { ...final, at: { side, area: null }, capC: capC(piece, heats, stages, side) });

  test('of the other side comes before a higher stage on this one', () => {
    const one = had(1, 'initial', all(1));
    expect(capped(one, 1)).toEqual([2, 'Bay 1', 'first-shrink']);
    expect(capped({ ...one, ...had(2, 'initial', { 1: 1, 2: 1, 3: 1, 4: 1 }) }, 1)).toEqual([
      2,
      'Bay 5',
      'first-shrink',
    ]);
    expect(capped({ ...one, ...had(2, 'initial', all(1)) }, 1)).toEqual([1, 'Bay 1', 'skip-about']);
    expect(capped({}, 1)).toEqual([1, 'Bay 1', 'first-shrink']);
  });

  test('does not hold the lowest stage back, nor what was overruled', () => {
    expect(next({}, { stage: stageOf('initial'), capC: capC(piece, {}, stages, 1) })?.[2]).toBe('skip-about');
    expect(next(had(1, 'initial', all(1)), final)).toEqual([1, 'Bay 1', 'skip-about']);
  });
});

describe('edges and tapes', () => {
  const tack = { stage: stageOf('tack') };
  const cloth = had(1, 'tack', all(1));

  test('follow the cloth of their side at the lowest level, before the piece is turned over', () => {
    expect(next(cloth, tack)).toEqual([1, 'Edge at first end', 'skip-about']);
    const edges = Object.fromEntries(
      piece.areas.filter((a) => a.kind === 'edge' && a.side === 1).map((a) => [a.id, heatAt('tack', 1)]),
    );
    expect(next({ ...cloth, ...edges }, tack)).toEqual([2, 'Bay 1', 'change-sides']);
  });

  test('are proposed above it only up to the cement limit', () => {
    const done: AreaHeats = { ...had(1, 'intermediate', all(1)), ...had(2, 'intermediate', all(1)) };
    const proposed = (cementLimitC: number | null) => next(done, { cementLimitC })?.[1] ?? null;
    expect(proposed(null)).toBeNull();
    expect(proposed(fToC(299))).toBeNull();
    expect(proposed(fToC(300))).toBe('Edge at first end');
    expect(next(cloth, { ...tack, cementLimitC: fToC(200) })).toEqual([2, 'Bay 1', 'change-sides']);
  });

  test('cells count for nothing else: bonded areas alone never begin a lap', () => {
    const done: AreaHeats = { ...had(1, 'tack', all(1)), ...had(2, 'tack', all(1)) };
    const edges = Object.fromEntries(
      piece.areas.filter((a) => a.kind === 'edge').map((a) => [a.id, heatAt('tack', 3)]),
    );
    expect(next({ ...done, ...edges }, tack)).toBeNull();
  });
});
