import { describe, expect, test } from 'vitest';
import {
  type BandWatch,
  doubtfulBand,
  judgeBand,
  pauseBand,
  sameStage,
  startBand,
} from '../../../shared/heat/band.ts';
import type { Cycle } from '../../../shared/iron/cycle.ts';

const stage = { lowC: 140, highC: 160 };

/** Cycles one after the other that end at `toS`, the newest last. */
function cyclesTo(toS: number, lengthS: number, meansC: readonly number[]): Cycle[] {
  return meansC.map((meanC, i) => {
    const endS = toS - (meansC.length - 1 - i) * lengthS;
    const span = { fromMs: (endS - lengthS) * 1000, toMs: endS * 1000 };
    return { ...span, meanC, peakC: meanC + 14, troughC: meanC - 14 };
  });
}

const at = (tS: number, plateC = 150) => ({ tMs: tS * 1000, plateC });

describe('over whole cycles', () => {
  test('by their mean: 5 K above the band', () => {
    const band = judgeBand(startBand(stage, 0), at(1), []);
    const { seen } = judgeBand(band, at(400), cyclesTo(390, 130, [165, 165]));
    expect(seen).toEqual({ kind: 'judged', aboveByK: 5, belowByK: -25 });
  });

  test('several short ones count together until they span two minutes', () => {
    const band = judgeBand(startBand(stage, 0), at(1), []);
    expect(judgeBand(band, at(100), cyclesTo(95, 30, [130, 130, 130])).seen.kind).toBe('undecided');
    const four = judgeBand(band, at(130), cyclesTo(125, 30, [120, 130, 130, 140]));
    expect(four.seen).toEqual({ kind: 'judged', aboveByK: -30, belowByK: 10 });
  });

  test('and until they span the longest of them: a quick dip doesn’t stand for a cycle', () => {
    const band = judgeBand(startBand(stage, 0), at(1), []);
    const long = cyclesTo(300, 200, [150]);
    const short = [20, 40, 60, 80, 100, 120, 140].map((s) => ({
      ...long[0],
      fromMs: (280 + s) * 1000,
      toMs: (300 + s) * 1000,
      meanC: 165,
      peakC: 168,
      troughC: 161,
    }));
    const { seen } = judgeBand(band, at(441), [...long, ...short]);
    // 140 s of dips at 165, and the whole cycle of 200 s at 150.
    expect(seen.kind === 'judged' ? seen.aboveByK + 160 : 0).toBeCloseTo((140 * 165 + 200 * 150) / 340, 9);
  });

  test('only those since the stage was chosen', () => {
    const band = judgeBand(startBand(stage, 0), at(270), []);
    expect(judgeBand(band, at(400), cyclesTo(390, 130, [165, 165, 165])).seen.kind).toBe('undecided');
  });
});

const after = (band: BandWatch, fromS: number, toS: number, plateC: (s: number) => number) => {
  let now = band;
  for (let s = fromS; s <= toS; s++) now = judgeBand(now, at(s, plateC(s)), []);
  return now;
};

describe('held without a swing', () => {
  test('judged over two minutes, not before', () => {
    expect(after(startBand(stage, 0), 0, 119, () => 130).seen.kind).toBe('undecided');
    expect(after(startBand(stage, 0), 0, 120, () => 130).seen).toEqual({
      kind: 'judged',
      aboveByK: -30,
      belowByK: 10,
    });
  });

  test('a plate on its way is not judged by it', () => {
    expect(after(startBand(stage, 0), 0, 300, (s) => 130 - 0.06 * s).seen.kind).toBe('undecided');
  });
});

describe('on its rest, warming or cooling', () => {
  const above = judgeBand(judgeBand(startBand(stage, 0), at(1), []), at(400), cyclesTo(390, 130, [165, 165]));

  test('what was seen stands over a rest, however long', () => {
    expect(pauseBand(pauseBand(above, 400_000, true), 9_000_000, true).seen).toEqual(above.seen);
  });

  test('of a plate that is not regulated any more, for five minutes', () => {
    const off = pauseBand(above, 400_000, false);
    expect(pauseBand(off, 700_000, false).seen).toEqual(above.seen);
    expect(pauseBand(off, 700_001, false).seen.kind).toBe('not-judged');
  });

  test('short rests between passes don’t begin it anew', () => {
    let band = judgeBand(startBand(stage, 0), at(1), []);
    for (let s = 2; s < 300; s++) {
      band = s % 60 < 30 ? pauseBand(band, s * 1000, true) : judgeBand(band, at(s), cyclesTo(s, 40, [130]));
    }
    expect(judgeBand(band, at(300), cyclesTo(299, 40, [130, 130, 130, 130])).seen.kind).toBe('judged');
  });

  test('taken up again after a long one, what was seen stands until a cycle ends at work', () => {
    const rest = pauseBand(above, 400_000, true);
    const again = judgeBand(rest, at(610), cyclesTo(605, 130, [150, 150]));
    expect(again).toMatchObject({ resumedMs: 610_000, seen: above.seen });
    expect(judgeBand(again, at(700), cyclesTo(690, 130, [150, 150])).seen).toMatchObject({ aboveByK: -10 });
  });
});

test('without a stage nothing is judged', () => {
  expect(judgeBand(startBand(null, 0), at(400), cyclesTo(390, 130, [165, 165])).seen.kind).toBe('not-judged');
});

test('after a restart it has to be found out whether what stood still holds', () => {
  expect(doubtfulBand(stage, 0).seen.kind).toBe('undecided');
});

test('two stages with the same band are the same to the thermostat', () => {
  expect(sameStage(stage, { ...stage })).toBe(true);
  expect(sameStage(stage, { ...stage, highC: 161 })).toBe(false);
  expect(sameStage(stage, null)).toBe(false);
  expect(sameStage(null, null)).toBe(true);
});
