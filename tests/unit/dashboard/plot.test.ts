import { expect, it } from 'vitest';
import { across, down, plainTicks, scaleOf } from '../../../dashboard/plot/scale.ts';

it('a scale holds what is drawn with a little room, also a single value', () => {
  expect(scaleOf([100, 200], 0.1)).toEqual({ from: 90, to: 210 });
  expect(scaleOf([4], 0.1)).toEqual({ from: 3.5, to: 4.5 });
  expect(scaleOf([], 0.1)).toBeNull();
});

it('places go across and down in percent', () => {
  const scale = { from: 90, to: 210 };
  expect([across(scale, 90), across(scale, 150), across(scale, 210)]).toEqual([0, 50, 100]);
  expect([down(scale, 90), down(scale, 150), down(scale, 210)]).toEqual([100, 50, 0]);
});

it('ticks are plain numbers, no more than asked for', () => {
  expect(plainTicks({ from: 2.8, to: 6.2 }, 6)).toEqual([3, 4, 5, 6]);
  expect(plainTicks({ from: 3.5, to: 4.5 }, 6)).toEqual([3.5, 4, 4.5]);
  expect(plainTicks({ from: 0, to: 640 }, 6)).toEqual([0, 200, 400, 600]);
  expect(plainTicks({ from: 0, to: 90_000 }, 6).length).toBeLessThanOrEqual(7);
});
