import { describe, expect, test } from 'vitest';
import { cycleBetween } from '../../../shared/iron/cycle.ts';
import { type Swing, turnThresholdK, widen } from '../../../shared/iron/swing.ts';
import { follow, startTurning, TURN_K, type Turned } from '../../../shared/iron/turning.ts';

interface Turn {
  readonly kind: 'peak' | 'trough';
  readonly tMs: number;
  readonly plateC: number;
}

function turnsOf(values: readonly number[], stepMs = 1000, turnK = TURN_K): Turn[] {
  const found: Turn[] = [];
  let turning = startTurning(0, values[0] ?? 0);
  for (const [i, c] of values.entries()) {
    const { turning: after, turn }: Turned = follow(turning, i * stepMs, c, turnK);
    turning = after;
    if (turn !== null) found.push({ kind: turn.kind, tMs: turn.point.tMs, plateC: turn.point.plateC });
  }
  return found;
}

describe('turning points', () => {
  test('a saw gives each peak and trough where it was, not where it was confirmed', () => {
    const saw = [100, 110, 120, 130, 120, 110, 100, 110, 120];
    expect(turnsOf(saw)).toEqual([
      { kind: 'peak', tMs: 3000, plateC: 130 },
      { kind: 'trough', tMs: 6000, plateC: 100 },
    ]);
  });

  test('wiggles under the threshold are none', () => {
    expect(turnsOf([100, 110, 120, 117.5, 121, 118.2, 122, 130])).toEqual([]);
    expect(turnsOf([100, 102, 99, 101, 100, 102])).toEqual([]);
  });

  test('a steady plate has none', () => {
    expect(turnsOf(Array.from({ length: 1000 }, () => 150))).toEqual([]);
  });
});

test('a cycle: peak, the lower trough, and the mean over time (a triangle’s is its middle)', () => {
  let turning = startTurning(0, 130);
  const points = [];
  for (const [i, c] of [130, 100, 115, 130, 120, 110, 102, 110, 118].entries()) {
    const turned = follow(turning, i * 1000, c, TURN_K);
    turning = turned.turning;
    if (turned.turn !== null) points.push(turned.turn.point);
  }
  const [from, peak, to] = points;
  if (from === undefined || peak === undefined || to === undefined) throw new Error('a turn is missing');
  const cycle = cycleBetween(from, peak, to);
  expect(cycle).toMatchObject({ fromMs: 1000, toMs: 6000, peakC: 130, troughC: 100 });
  // By hand: 100-115-130-120-110-102 in steps of 1 s, trapezoids (107.5 + 122.5 + 125 + 115 + 106) / 5.
  expect(cycle.meanC).toBeCloseTo(115.2, 9);
});

describe('how far the plate must come back for a turn to count', () => {
  test('3 K before a swing is known, a third of the swing after that', () => {
    expect(turnThresholdK(null)).toBe(3);
    expect(turnThresholdK({ tMs: 0, lowestC: 149, highestC: 151 })).toBe(3);
    expect(turnThresholdK({ tMs: 0, lowestC: 135, highestC: 163 })).toBeCloseTo(9.8, 9);
  });

  test('the swing widens at once and narrows over a quarter of an hour', () => {
    let swing: Swing | null = null;
    for (let s = 0; s <= 60; s++) swing = widen(swing, s * 1000, s === 30 ? 90 : 150 + (s % 2) * 10, true);
    expect((swing?.highestC ?? 0) - (swing?.lowestC ?? 0)).toBeGreaterThan(65);
    for (let s = 61; s <= 3660; s++) swing = widen(swing, s * 1000, 150 + (s % 2) * 10, true);
    expect((swing?.highestC ?? 0) - (swing?.lowestC ?? 0)).toBeLessThan(16);
  });
});
