import { describe, expect, it } from 'vitest';
import {
  MOTION_GAP_MS,
  MOVING_AFTER_MS,
  type Motion,
  noMotion,
  STILL_AFTER_MS,
  stepMotion,
  stillSinceMs,
} from '../../../../shared/iron/motion/motion.ts';
import { inHandByMotion, restOnSpotMs } from '../../../../shared/iron/motion/rest.ts';

const check = { stillG: 0.02, movingG: 0.04 };

/** Values every `everyMs` from `fromMs` on. */
function heard(
  values: readonly (number | null)[],
  {
    everyMs = 100,
    fromMs = 0,
    before = noMotion,
  }: { everyMs?: number; fromMs?: number; before?: Motion } = {},
): Motion {
  return values.reduce<Motion>(
    (motion, motionG, i) => stepMotion(motion, { tMs: fromMs + i * everyMs, motionG, check }),
    before,
  );
}
const many = (g: number, count: number): number[] => Array.from({ length: count }, () => g);

describe('still or moving', () => {
  it('is unknown without a check, whatever comes', () => {
    expect(stepMotion(noMotion, { tMs: 0, motionG: 0.5, check: null }).is).toBe('unknown');
    const still = heard(many(0.005, 20));
    expect(stepMotion(still, { tMs: 2000, motionG: 0.005, check: null })).toEqual(noMotion);
  });

  it.each([100, 250, 500, 1000])('tells still within its delay and a line, every %i ms', (everyMs) => {
    const moving = heard(many(0.08, 10), { everyMs });
    expect(moving.is).toBe('moving');
    const fromMs = 10 * everyMs;
    const lines = Math.ceil(STILL_AFTER_MS / everyMs);
    expect(heard(many(0.005, lines), { everyMs, fromMs, before: moving }).is).toBe('moving');
    const still = heard(many(0.005, lines + 1), { everyMs, fromMs, before: moving });
    expect(still.is).toBe('still');
    expect(stillSinceMs(still)).toBe(fromMs);
  });

  it('bears a knock while still, and a pause at the turn of a stroke while moving', () => {
    const still = heard(many(0.005, 20));
    const knocked = heard([0.3, ...many(0.005, 10)], { fromMs: 2000, before: still });
    expect(stillSinceMs(knocked)).toBe(0);
    const moving = heard(many(0.08, 10));
    const turned = heard([...many(0.005, 8), ...many(0.08, 3), ...many(0.005, 8)], {
      fromMs: 1000,
      before: moving,
    });
    expect(turned.is).toBe('moving');
  });

  it('is moving again soon', () => {
    const still = heard(many(0.005, 20));
    const lines = MOVING_AFTER_MS / 100 + 1;
    expect(heard(many(0.08, lines), { fromMs: 2000, before: still }).is).toBe('moving');
  });

  it('stays what it was between the two levels', () => {
    expect(heard(many(0.03, 30), { fromMs: 2000, before: heard(many(0.005, 20)) }).is).toBe('still');
    expect(heard(many(0.03, 30), { fromMs: 1000, before: heard(many(0.08, 10)) }).is).toBe('moving');
    expect(heard(many(0.03, 30)).is).toBe('unknown');
  });

  it('is unknown after a gap: by a tick, and by the next value, which counts from itself', () => {
    const still = heard(many(0.005, 20));
    const silentMs = 1900 + MOTION_GAP_MS;
    expect(stepMotion(still, { tMs: silentMs, motionG: null, check }).is).toBe('still');
    expect(stepMotion(still, { tMs: silentMs + 1, motionG: null, check })).toEqual(noMotion);
    const back = stepMotion(still, { tMs: silentMs + 1, motionG: 0.005, check });
    expect(back).toMatchObject({ is: 'unknown', saysSinceMs: silentMs + 1 });
    expect(stepMotion(still, { tMs: 2000, motionG: Number.NaN, check })).toEqual(still);
  });

  it('survives JSON', () => {
    const still = heard(many(0.005, 20));
    expect(JSON.parse(JSON.stringify(still))).toEqual(still);
  });
});

describe('rest on one spot', () => {
  const still = heard(many(0.005, 60));
  const moving = heard(many(0.08, 60));
  const facts = { tMs: 6000, hot: true, place: 'on-work', inHand: null, thereFromMs: 0 } as const;

  it('lasts as long as it is still, hot and on the work', () => {
    expect(restOnSpotMs(still, facts)).toBe(6000);
    expect(restOnSpotMs(moving, facts)).toBe(0);
    expect(restOnSpotMs(still, { ...facts, hot: false })).toBe(0);
    expect(restOnSpotMs(still, { ...facts, place: 'on-rest' })).toBe(0);
    expect(restOnSpotMs(still, { ...facts, place: 'off-work' })).toBe(0);
  });

  it('counts from when it was taken to the work: the iron may have stood on its rest before', () => {
    expect(restOnSpotMs(still, { ...facts, thereFromMs: 4500 })).toBe(1500);
    expect(restOnSpotMs(still, { ...facts, thereFromMs: 7000 })).toBe(0);
  });

  it('is not measured where the motion is not known, or nothing tells where it is', () => {
    expect(restOnSpotMs(noMotion, facts)).toBeNull();
    expect(restOnSpotMs(still, { ...facts, place: 'unknown' })).toBeNull();
  });

  it('without a mark follows the iron in hand', () => {
    expect(restOnSpotMs(still, { ...facts, place: 'unknown', inHand: true })).toBe(6000);
    expect(restOnSpotMs(still, { ...facts, place: 'unknown', inHand: false })).toBe(0);
  });
});

describe('the iron in hand by motion', () => {
  const still = heard(many(0.005, 60));
  const moving = heard(many(0.08, 60));

  it('is the one that has moved for a while, while others have not', () => {
    expect(inHandByMotion({ big: moving, small: still }, 2900, 'small')).toBe('small');
    expect(inHandByMotion({ big: moving, small: still }, 3000, 'small')).toBe('big');
    expect(inHandByMotion({ big: moving, small: noMotion }, 6000, null)).toBe('big');
  });

  it('stays the one that it was while two move, and while none does', () => {
    expect(inHandByMotion({ big: moving, small: moving }, 6000, 'small')).toBe('small');
    expect(inHandByMotion({ big: still, small: still }, 6000, 'big')).toBe('big');
    expect(inHandByMotion({}, 6000, null)).toBeNull();
  });
});
