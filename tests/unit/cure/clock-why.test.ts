import { describe, expect, test } from 'vitest';
import { learn } from '../../../shared/cure/learn.ts';
import { clockOf, exact, only, type Situation } from './clocked.ts';
import { HOUR_MS, MINUTE_MS, NOW_MS, OWN_AIR, probed } from './curing.ts';

describe('why the range is as wide as it is', () => {
  const taught = learn(
    [1, 2, 3].map((day) => ({
      fromUtcMs: day * 24 * HOUR_MS,
      stages: [{ aboveS: 3500, belowS: 3700, stageS: 3600 }],
    })),
  );
  const why = (situation: Situation): readonly string[] =>
    clockOf({ cement: exact, ...situation, more: { learned: taught, ...situation.more } }).why;

  test('one day differs from another, where all else is known', () =>
    expect(why({})).toEqual(['days-differ']));
  test('nothing learned', () => expect(why({ more: { learned: learn([]) } })).toEqual(['not-learned']));
  test('the instructions give a range', () =>
    expect(why({ cement: only('ready-for-iron', 3000, 4200) })).toEqual(['instructions']));
  test('no air told', () => expect(why({ points: [] })).toEqual(['no-air']));
  test('told long ago', () => expect(why({ points: probed(-600, -590) })).toEqual(['old-air']));
  test('typed', () =>
    expect(why({ points: [{ ...OWN_AIR, atUtcMs: NOW_MS, how: 'typed' }] })).toEqual(['typed']));
  const damp = { atUtcMs: NOW_MS, airC: 13, rhPct: 90, how: 'typed' } as const;
  test('what makes the latest time so late, even where it is the air after the likely one', () => {
    const late = { ...damp, atUtcMs: NOW_MS + 50 * MINUTE_MS };
    expect(why({ points: [late], atMin: 55 })).toEqual(['air-ahead', 'no-air', 'typed']);
  });
  test('how the air goes on isn’t known; that it was told long ago is said once it was', () => {
    const long = only('ready-for-iron', 24 * 3600, 24 * 3600);
    expect(why({ points: probed(0, 600), cement: long, atMin: 600 })).toEqual(['air-ahead']);
    expect(why({ points: probed(0, 600), cement: long, atMin: 660 })).toEqual(['old-air']);
    expect(why({ points: [damp], atMin: 120 })).toEqual(['air-ahead', 'typed']);
    expect(why({ points: [damp], atMin: 600 })[0]).toBe('old-air');
  });
  test('no humidity told, where it matters', () => {
    const points = probed(0, 1440, { airC: 23, rhPct: null });
    expect(why({ points })).toEqual(['no-humidity']);
    expect(why({ points, cement: { ...exact, kind: 'two-part' } })).toEqual(['days-differ']);
  });
  test('the clock was lost: that first, then by how much each widens it', () => {
    const points = probed(0, 1440, { airC: 23, rhPct: null });
    expect(
      why({
        points,
        cement: only('ready-for-iron', 3400, 3800),
        more: { clockLost: true, learned: learn([]) },
      }),
    ).toEqual(['clock', 'no-humidity', 'not-learned', 'instructions']);
  });
  test('where it stands, too', () => {
    expect(why({ points: probed(0, 60, { airC: 23, rhPct: 100 }), atMin: 61 })).toEqual(['days-differ']);
    expect(why({ points: probed(0, 10, { airC: 23, rhPct: 100 }), atMin: 300 })).toEqual(['old-air']);
  });
});
