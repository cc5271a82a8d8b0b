import { describe, expect, test } from 'vitest';
import { type CoatFacts, noCoats } from '../../../shared/cure/facts.ts';
import { fToC } from '../../../shared/units/temperature.ts';
import { Live } from './support/live.ts';
import { onArea, piece } from './support/places.ts';
import { carried, LIMIT_C, probeSettings, watchSettings } from './support/settings.ts';

const watched = (schedule = {}): Live =>
  new Live(carried(watchSettings([probeSettings()], schedule))).ramp(120, 2).mark(piece);

describe('the cement limit', () => {
  const cement = { cementLimitC: 140 };

  test('holds on a bonded edge, with the guard band, and nowhere else', () => {
    const live = watched(cement).mark(onArea('middle')).ramp(150, 2).read(3, 150);
    expect(live.changes).not.toContain('over-cement-limit raised');
    live.mark(onArea('edge', { bonded: true })).read(1, 150);
    expect(live.alarm('over-cement-limit')).toMatchObject({ state: 'unacknowledged' });
    expect(live.alarm('over-cement-limit')?.peakC).toBeGreaterThan(149);
    live.mark(onArea('middle')).read(6, 150);
    expect(live.alarm('over-cement-limit')?.state).toBe('returned-unacknowledged');
  });

  test('is warned of from the guard band on', () => {
    const guardK = fToC(375) - LIMIT_C;
    const live = watched(cement).mark(onArea('edge', { bonded: true }));
    live.ramp(140 - guardK - 6, 0.2).read(5, 140 - guardK - 6);
    expect(live.changes).not.toContain('over-cement-limit raised');
    live.ramp(139, 1).read(5, 139);
    expect(live.alarm('over-cement-limit')?.state).toBe('unacknowledged');
  });

  test('that is not set raises nothing', () => {
    const live = watched()
      .mark(onArea('edge', { bonded: true }))
      .ramp(170, 2)
      .read(5, 170);
    expect(live.changes).not.toContain('over-cement-limit raised');
  });
});

describe('a wrong order', () => {
  const cap = { kind: 'piece-facts', facts: { capC: fToC(285), imbalance: '' } } as const;

  test('is warned of once a plate too hot for the side is on it', () => {
    const live = watched().give(cap).mark(onArea('middle')).read(5, 121).ramp(142, 2).read(0.5, 142);
    expect(live.alarm('wrong-order', null)?.state).not.toBe('unacknowledged');
    live.read(2, 150);
    expect(live.alarm('wrong-order', null)?.state).toBe('unacknowledged');
    live.place('off-work').read(6, 150);
    expect(live.alarm('wrong-order', null)?.state).toBe('returned-unacknowledged');
  });

  test('is none once the other side has had its own, or it was overruled', () => {
    const none = { kind: 'piece-facts', facts: { capC: null, imbalance: '' } } as const;
    const live = watched().give(none).mark(onArea('middle')).ramp(150, 2).read(10, 150);
    expect(live.changes).not.toContain('wrong-order raised');
  });
});

test('an imbalance stands in the words that it was told in', () => {
  const imbalance = 'Upper has had more than Lower: 2 light laps over Lower would even it.';
  const live = watched()
    .give({ kind: 'piece-facts', facts: { capC: null, imbalance } })
    .read(1, 120);
  expect(live.alarm('imbalance', null)).toMatchObject({ state: 'unacknowledged', detail: imbalance });
});

test('long on one area is told by marks, after the time that its size asks for', () => {
  const live = watched()
    .mark(onArea('end', { limitMs: 20_000 }))
    .read(19, 120);
  expect(live.alarm('long-on-area', null)).toBeUndefined();
  live.read(2, 120);
  expect(live.alarm('long-on-area', null)?.state).toBe('unacknowledged');
});

describe('rest on one spot', () => {
  const motion = { stillG: 0.01, movingG: 0.03, checkedAt: '2026-03-01T09:00:00Z' };
  const moved = (live: Live, s: number, motionG: number): Live => {
    for (let i = 0; i < s * 4; i++) {
      live.tMs += 250;
      live.sample({ tC: 121 + 0.01 * (i % 2), motionG });
    }
    return live;
  };
  const checked = (): Live =>
    new Live(carried(watchSettings([probeSettings(undefined, { motion })]))).ramp(121, 2).mark(piece);

  test('is told after the stage’s limit, on the work and still', () => {
    const live = moved(checked().mark(onArea('end')), 6, 0.08);
    moved(live, 5, 0.004);
    expect(live.changes).not.toContain('dwell raised');
    moved(live, 2, 0.004);
    expect(live.alarm('dwell', null)?.state).toBe('unacknowledged');
    moved(live, 3, 0.08);
    expect(live.alarm('dwell', null)?.state).toBe('returned-unacknowledged');
  });

  test('is none on its rest, nor below every stage', () => {
    expect(moved(checked().place('on-rest'), 20, 0.004).changes).not.toContain('dwell raised');
    const cold = checked().mark(onArea('end')).ramp(70, 2);
    for (let i = 0; i < 40; i++) {
      cold.tMs += 250;
      cold.sample({ tC: 70 + 0.01 * (i % 2), motionG: 0.004 });
    }
    expect(cold.changes).not.toContain('dwell raised');
  });

  test('is not measured without a check of still and moving', () => {
    const live = moved(watched().mark(onArea('end')), 20, 0.004);
    expect(live.changes).not.toContain('dwell raised');
  });

  test('names by what contact is known', () => {
    const live = moved(checked().mark(onArea('end')), 4, 0.08);
    expect(live.state.ironing.visit?.contactBy).toBe('motion');
  });
});

describe('a hot iron with nobody there', () => {
  const alone = (live: Live): Live => {
    live.attended = false;
    return live;
  };
  const minutes = (live: Live, min: number): Live => alone(live).read(min * 60, 150);

  test('is reminded of after ten minutes, and told of louder after fifteen', () => {
    const live = watched().place('on-rest').ramp(150, 2);
    minutes(live, 9.5);
    expect(live.alarm('unattended', null)).toBeUndefined();
    minutes(live, 1);
    expect(live.alarm('unattended', null)?.state).toBe('unacknowledged');
    expect(live.alarm('left-alone', null)).toBeUndefined();
    minutes(live, 5);
    expect(live.alarm('left-alone', null)?.state).toBe('unacknowledged');
    live.give({ kind: 'presence' }).read(1, 150);
    expect(live.alarm('left-alone', null)?.state).toBe('returned-unacknowledged');
  });

  test.each([
    ['a touch', (live: Live) => live.give({ kind: 'presence' })],
    ['a mark', (live: Live) => live.place('on-rest')],
    ['the button', (live: Live) => live.sample({ tC: 150, button: 1 })],
  ])('%s is a sign of somebody', (_what, sign) => {
    const live = watched().place('on-rest').ramp(150, 2);
    minutes(live, 8);
    sign(live);
    minutes(live, 8);
    expect(live.changes).not.toContain('unattended raised');
  });

  test('is not told of while it only loses its heat', () => {
    const live = alone(watched().place('on-rest').ramp(150, 2).read(60, 150));
    live.ramp(60, 0.1);
    expect(live.changes).not.toContain('unattended raised');
  });

  test('after other times, where the user settled them', () => {
    const settings = { ...watchSettings(), unattended: { reminderMin: 2, alarmMin: 3 } };
    const live = alone(new Live(carried(settings)))
      .ramp(150, 2)
      .place('on-rest')
      .read(121, 150);
    expect(live.alarm('unattended', null)?.state).toBe('unacknowledged');
  });
});

describe('a coat that is still wet', () => {
  const facts = (wet: string, fire = '', more: Partial<CoatFacts> = {}) =>
    ({ kind: 'coat-facts', facts: { ...noCoats, wet, fire, ...more } }) as const;

  test('is told of while a hot iron is on it, and in the words that it came in', () => {
    const live = watched().mark(onArea('edge')).read(2, 120).give(facts('Edge: demo cement')).read(2, 120);
    expect(live.alarm('wet-cement', null)).toMatchObject({
      state: 'unacknowledged',
      detail: 'Edge: demo cement',
    });
    live.give(facts('')).read(5, 120);
    expect(live.alarm('wet-cement', null)?.state).toBe('returned-unacknowledged');
  });

  test('is not told of while the iron is lifted off', () => {
    const live = watched().mark(onArea('edge')).place('off-work').give(facts('Edge: demo cement'));
    live.read(5, 120);
    expect(live.changes).not.toContain('wet-cement raised');
  });

  test('whose vapour burns is called out once nobody has answered for a while, wherever the iron is', () => {
    const live = watched().place('on-rest').give(facts('', 'Edge: demo cement')).read(18, 120);
    expect(live.changes).not.toContain('fire-hazard raised');
    live.read(4, 120);
    expect(live.alarm('fire-hazard', null)).toMatchObject({
      state: 'unacknowledged',
      detail: 'Edge: demo cement',
    });
    live.give(facts('')).read(1, 120);
    expect(live.alarm('fire-hazard', null)?.state).toBe('returned-unacknowledged');
  });

  test('raises no question beside a cold iron', () => {
    const live = new Live(carried(watchSettings())).read(5, 21).give(facts('', 'Edge: demo cement'));
    live.read(60, 21);
    expect(live.changes).not.toContain('fire-hazard raised');
  });
});
