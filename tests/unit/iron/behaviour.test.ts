import { describe, expect, test } from 'vitest';
import {
  type Behaviour,
  expectedPeakC,
  noBehaviour,
  observe,
  retuned,
} from '../../../shared/iron/behaviour.ts';
import type { Cycle } from '../../../shared/iron/cycle.ts';
import type { IronPhase } from '../../../shared/iron/phase.ts';

/** A plate as a function of time, read every half second. */
class Plate {
  behaviour: Behaviour = noBehaviour;
  readonly cycles: Cycle[] = [];
  readonly phases: IronPhase[] = ['unknown'];
  #tMs = 0;
  #c: number;

  constructor(c: number) {
    this.#c = c;
  }

  /** Goes evenly to `c` at `kPerS`. */
  to(c: number, kPerS: number): this {
    const count = Math.max(1, Math.round((Math.abs(c - this.#c) / kPerS) * 2));
    const from = this.#c;
    for (let i = 1; i <= count; i++) this.#read(from + ((c - from) * i) / count);
    return this;
  }

  /** Stays for so many seconds. */
  stay(s: number): this {
    for (let i = 0; i < 2 * s; i++) this.#read(this.#c);
    return this;
  }

  /** Cycles of a thermostat around `meanC`, 28 K (50 degF) from trough to peak. */
  swing(meanC: number, count: number): this {
    for (let i = 0; i < count; i++) this.to(meanC + 14, 0.8).to(meanC - 14, 0.35);
    return this;
  }

  gap(s: number): this {
    this.#tMs += s * 1000;
    return this;
  }

  #read(c: number): void {
    this.#c = c;
    this.#tMs += 500;
    const { behaviour, cycle } = observe(this.behaviour, this.#tMs, c);
    if (behaviour.phase !== this.behaviour.phase) this.phases.push(behaviour.phase);
    if (cycle !== null) this.cycles.push(cycle);
    this.behaviour = behaviour;
  }
}

describe('phases', () => {
  test('cold, warming, regulating, cooling, cold', () => {
    const plate = new Plate(20).stay(5).to(170, 1).swing(150, 4).to(20, 0.1);
    expect(plate.phases).toEqual(['unknown', 'cold', 'warming', 'regulating', 'cooling', 'cold']);
  });

  test('a plate that cools slowly is never taken for a regulated one', () => {
    // A heavy iron: time constant 3000 s, from 60 degC in a room of 20.
    const plate = new Plate(60);
    for (let s = 0; s < 2000; s += 5) plate.to(20 + 40 * Math.exp(-s / 3000), 100).stay(5);
    expect(plate.phases).toEqual(['unknown', 'cooling', 'cold']);
  });

  test('one that is switched off after work neither', () => {
    const plate = new Plate(20).to(170, 1).swing(150, 4);
    for (let s = 0; s < 6000; s += 5) plate.to(20 + 116 * Math.exp(-s / 1500), 100).stay(5);
    expect(plate.phases).toEqual(['unknown', 'cold', 'warming', 'regulating', 'cooling', 'cold']);
  });

  test('a plate that comes up and is then held without a swing is regulated', () => {
    expect(new Plate(20).to(150, 1).stay(130).behaviour.phase).toBe('regulating');
  });

  test('the dial turned up: warming until the next peak; turned down: cooling, then warming, then regulating', () => {
    const up = new Plate(20).to(140, 1).swing(121, 3).to(163, 0.8).to(180, 0.8).swing(177, 2);
    expect(up.phases.slice(3)).toEqual(['regulating', 'warming', 'regulating']);
    const down = new Plate(20).to(195, 1).swing(177, 3).to(110, 0.2).swing(121, 2);
    expect(down.phases.slice(3)).toEqual(['regulating', 'cooling', 'warming', 'regulating']);
  });

  test('a dip that work draws is no dial that was turned down', () => {
    const plate = new Plate(20).to(170, 1).swing(150, 3).to(128, 1).to(160, 0.8).swing(150, 2);
    expect(plate.phases).toEqual(['unknown', 'cold', 'warming', 'regulating']);
  });

  test('a plate at the edge of cold doesn’t flutter', () => {
    const plate = new Plate(60).to(44, 1);
    for (let i = 0; i < 100; i++) plate.to(42.9, 10).stay(3).to(44, 10).stay(3);
    expect(plate.phases.filter((p) => p === 'cold')).toHaveLength(1);
  });
});

describe('cycles', () => {
  test('peak, trough, mean and length of a 28 K swing', () => {
    const { cycles } = new Plate(20).to(170, 1).swing(150, 6);
    expect(cycles.length).toBeGreaterThanOrEqual(4);
    for (const cycle of cycles.slice(1)) {
      expect(Math.abs(cycle.peakC - 164)).toBeLessThan(1);
      expect(Math.abs(cycle.troughC - 136)).toBeLessThan(1);
      expect(Math.abs(cycle.meanC - 150)).toBeLessThan(0.5);
      expect(Math.abs(cycle.toMs - cycle.fromMs - 115_000)).toBeLessThan(1500);
    }
  });

  test('dips of passes over the work that ride on the swing are not cycles', () => {
    const plate = new Plate(20).to(170, 1).swing(150, 2);
    const before = plate.cycles.length;
    for (let i = 0; i < 3; i++) {
      plate
        .to(145, 0.8)
        .to(140, 1)
        .to(164, 0.8)
        .to(155, 0.35)
        .to(160, 0.5)
        .to(150, 0.35)
        .to(155, 0.5)
        .to(136, 0.35);
    }
    expect(plate.cycles.length - before).toBeLessThanOrEqual(3);
  });

  test('a single wild reading is neither a peak nor a cycle', () => {
    const plate = new Plate(20).to(170, 1).swing(150, 3).to(150, 0.8);
    const expected = expectedPeakC(plate.behaviour);
    const before = plate.cycles.length;
    plate.to(190, 90).to(150, 90).to(158, 0.8);
    expect(plate.cycles).toHaveLength(before);
    expect(expectedPeakC(plate.behaviour)).toBe(expected);
  });

  test('state stays small, however long it goes on', () => {
    const plate = new Plate(20).to(170, 1).swing(150, 40);
    expect(plate.behaviour.cycles).toHaveLength(16);
    expect(plate.behaviour.peaksC).toHaveLength(4);
    expect(JSON.parse(JSON.stringify(plate.behaviour))).toEqual(plate.behaviour);
  });
});

const near = (c: number | null, expected: number) => expect(Math.abs((c ?? 0) - expected)).toBeLessThan(1.5);

describe('the peak to expect', () => {
  test('none until the plate has turned by itself; the warm-up’s own counts', () => {
    expect(expectedPeakC(new Plate(20).to(170, 1).behaviour)).toBeNull();
    near(expectedPeakC(new Plate(20).to(170, 1).to(160, 0.35).behaviour), 170);
  });

  test('the highest is remembered while the work keeps later ones lower', () => {
    near(expectedPeakC(new Plate(20).to(172, 1).swing(148, 12).behaviour), 172);
  });

  test('four peaks that all stay far below tell that the dial was turned down', () => {
    near(expectedPeakC(new Plate(20).to(195, 1).swing(177, 3).to(110, 0.2).swing(121, 6).behaviour), 135);
  });

  test('forgotten once the plate is cold', () => {
    expect(expectedPeakC(new Plate(20).to(170, 1).swing(150, 4).to(20, 0.5).behaviour)).toBeNull();
  });
});

describe('another stage', () => {
  const tuned = new Plate(20).to(170, 1).swing(150, 4).behaviour;

  test('cycles of the old one don’t count; peaks do on the way up, not on the way down', () => {
    const up = retuned(tuned, { lowC: 168, highC: 185 }, false);
    expect([up.cycles, up.phase, expectedPeakC(up)]).toEqual([[], 'warming', expectedPeakC(tuned)]);
    const down = retuned(tuned, { lowC: 112, highC: 130 }, true);
    expect([down.cycles, down.phase, expectedPeakC(down)]).toEqual([[], 'cooling', null]);
  });

  test('where the plate is there already it is regulated already', () => {
    expect(retuned(tuned, { lowC: 130, highC: 160 }, false).phase).toBe('regulating');
  });
});

test('after a gap of half a minute it begins anew, but still knows the peaks', () => {
  const plate = new Plate(20).to(170, 1).swing(150, 4);
  const expected = expectedPeakC(plate.behaviour);
  plate.gap(31).stay(1);
  expect(plate.behaviour).toMatchObject({ phase: 'unknown', cycles: [], trough: null });
  expect(expectedPeakC(plate.behaviour)).toBe(expected);
});
