import { describe, expect, test } from 'vitest';
import type { Sample } from '../../../shared/thermometer/sample.ts';
import {
  COLD_C,
  converted,
  hear,
  type LinkState,
  listenOn,
  qualityOf,
  SILENT_AFTER_MS,
  slopeOf,
  type Thermometer,
  unheard,
} from '../../../shared/thermometer/thermometer.ts';
import { LIMIT_C, PROBE, probeSettings, reads } from '../watch/support/settings.ts';

const own = probeSettings();

function hearAll(from: Thermometer, samples: readonly Sample[], fromMs = 0, stepMs = 100): Thermometer {
  let t = from;
  for (const [i, sample] of samples.entries()) {
    t =
      hear(t, sample, { tMs: fromMs + i * stepMs, clock: undefined, overC: LIMIT_C }, own)?.thermometer ?? t;
  }
  return t;
}

const fresh = unheard(PROBE, 0, false);
const steady = (tC: number, count = 10): Sample[] => Array.from({ length: count }, () => reads(tC));
const link = (more: Partial<LinkState>): LinkState => ({
  link: 'connected',
  sinceMs: 0,
  lastRejectedMs: null,
  ...more,
});

describe('a number', () => {
  test('becomes an ok reading, with when it was made where the device says so', () => {
    const heard = hear(
      fresh,
      reads(150, { deviceMs: 7 }),
      { tMs: 40, clock: undefined, overC: LIMIT_C },
      own,
    );
    expect(heard?.thermometer.reading).toEqual({ probe: PROBE, quality: 'ok', atMs: 40, plateC: 150 });
    expect(heard?.clock?.lastDeviceMs).toBe(7);
  });

  test('is never hidden where it is over the limit, however it jumped', () => {
    const jumped = hearAll(fresh, [...steady(120), reads(LIMIT_C + 0.1)]);
    expect(jumped.reading).toMatchObject({ quality: 'ok', plateC: LIMIT_C + 0.1 });
    expect(qualityOf(hearAll(fresh, [...steady(120), reads(LIMIT_C - 0.1)]))).toBe('jump');
  });

  test('a jump over the limit and back leaves no slope of its own', () => {
    const after = hearAll(fresh, [...steady(120, 40), reads(LIMIT_C + 5), ...steady(120, 40)]);
    expect(slopeOf(after)).toBeCloseTo(0, 6);
  });

  test('a stuck value over the limit stays an ok reading', () => {
    const rise = Array.from({ length: 60 }, (_, i) => reads(LIMIT_C - 5 + i * 0.1));
    const stuck = Array.from({ length: 600 }, () => reads(LIMIT_C + 1));
    expect(qualityOf(hearAll(fresh, [...rise, ...stuck]))).toBe('ok');
  });
});

describe('frozen', () => {
  test('a stuck probe in mid-ramp is found, and ends with the next change', () => {
    const rise = Array.from({ length: 200 }, (_, i) => reads(50 + i * 0.1));
    const stuck = hearAll(fresh, [...rise, ...steady(70, 150)]);
    expect(qualityOf(stuck)).toBe('frozen');
    expect(qualityOf(hearAll(stuck, [reads(70.1)], 25_000))).toBe('ok');
  });

  test('a whole-degree device on a steady iron repeats itself honestly for hours, noise at its edge and all', () => {
    let t = hearAll(
      fresh,
      Array.from({ length: 500 }, (_, i) => reads(Math.round(100 + 50 * (1 - Math.exp(-i / 100))))),
      0,
      1000,
    );
    for (let i = 0; i < 3 * 3600; i++) {
      // It sits at the edge between two numbers for a minute, and then in the middle of one for a long time.
      const tC = i < 60 ? 150 + (i % 3 === 0 ? 1 : 0) : 150;
      t = hearAll(t, [reads(tC)], 500_000 + i * 1000);
      expect(qualityOf(t)).toBe('ok');
    }
  });

  test('a whole-degree device that has just come back may change by one step and then stand', () => {
    const back = hearAll(fresh, [reads(150), reads(151), reads(151)], 0, 1000);
    expect(qualityOf(hearAll(back, steady(151, 3600), 3000, 1000))).toBe('ok');
  });

  test('a value that came back from a silence is not held against it', () => {
    const rise = Array.from({ length: 200 }, (_, i) => reads(50 + i * 0.1));
    const before = hearAll(fresh, rise);
    expect(qualityOf(hearAll(before, steady(69.9, 300), 60_000))).toBe('ok');
  });
});

describe('heat', () => {
  test('unknown at first, hot from 43 °C on, cold only by a valid reading under it', () => {
    expect(fresh.heat).toBe('unknown');
    expect(unheard(PROBE, 0, true).heat).toBe('hot');
    expect(hearAll(fresh, [reads(COLD_C)]).heat).toBe('hot');
    const cold = hearAll(fresh, [reads(COLD_C - 0.1)]);
    expect(cold.heat).toBe('cold');
    expect(hearAll(hearAll(fresh, [reads(150)]), [reads(0, { faults: ['open'] })]).heat).toBe('hot');
  });
});

describe('silence', () => {
  const heard = hearAll(fresh, [reads(150)], 1000);

  test('a probe that was not heard for 1.5 s is silent', () => {
    expect(SILENT_AFTER_MS).toBe(1500);
    expect(qualityOf(listenOn(heard, link({}), 2499))).toBe('ok');
    expect(qualityOf(listenOn(heard, link({}), 2500))).toBe('silent');
  });

  test('a sample without a temperature does not count as heard', () => {
    expect(
      hear(heard, { ...reads(0), tC: null, button: 1 }, { tMs: 2000, clock: undefined, overC: 1 }, own),
    ).toBeNull();
  });

  test('garbled where lines of its device were rejected in that time', () => {
    expect(qualityOf(listenOn(heard, link({ lastRejectedMs: 1500 }), 2500))).toBe('garbled');
    expect(qualityOf(listenOn(heard, link({ lastRejectedMs: 1000 }), 2500))).toBe('silent');
  });

  test('lost at once where its device is', () => {
    expect(qualityOf(listenOn(heard, link({ link: 'lost' }), 1001))).toBe('device-lost');
  });

  test('starting for five seconds after its port was opened, then silent', () => {
    const lost = listenOn(heard, link({ link: 'lost' }), 4000);
    const starting = link({ link: 'starting', sinceMs: 5000 });
    expect(qualityOf(listenOn(lost, starting, 5000))).toBe('starting');
    expect(qualityOf(listenOn(lost, starting, 9999))).toBe('starting');
    expect(qualityOf(listenOn(lost, starting, 10_000))).toBe('silent');
    expect(qualityOf(listenOn(heard, starting, 1200))).toBe('ok');
    const again = link({ link: 'starting', sinceMs: 10_900 });
    expect(qualityOf(listenOn(lost, again, 10_999))).toBe('starting');
    expect(qualityOf(listenOn(lost, again, 11_000))).toBe('silent');
  });

  test('a fault that the device sends stays what it is while its port is starting', () => {
    const open = hearAll(fresh, [reads(0, { faults: ['open'] })]);
    expect(qualityOf(listenOn(open, link({ link: 'starting' }), 100))).toBe('open');
  });

  test('a fault has no slope, and a reading after it begins anew', () => {
    const rising = hearAll(
      fresh,
      Array.from({ length: 50 }, (_, i) => reads(100 + i * 0.1)),
    );
    expect(slopeOf(rising)).toBeCloseTo(1, 6);
    const silent = listenOn(rising, link({}), 20_000);
    expect(slopeOf(silent)).toBeNull();
    expect(slopeOf(hearAll(silent, [reads(120)], 20_100))).toBeNull();
  });
});

test('with another conversion, what was learned from old numbers is dropped, but not that the plate is hot', () => {
  const before = hearAll(fresh, steady(300, 30));
  const after = converted(before);
  expect(after.heat).toBe('hot');
  expect(qualityOf(hearAll(after, [reads(149)], 5000))).toBe('ok');
  expect(qualityOf(hearAll(before, [reads(149)], 5000))).toBe('jump');
});

test('state survives JSON', () => {
  const t = hearAll(
    fresh,
    Array.from({ length: 50 }, (_, i) => reads(100 + i * 0.1)),
  );
  expect(JSON.parse(JSON.stringify(t))).toEqual(t);
});
