import { describe, expect, test } from 'vitest';
import { noBehaviour } from '../../../../shared/iron/behaviour.ts';
import { isDoubted, noSitting, sit } from '../../../../shared/iron/dial/sitting.ts';
import { ramp, Sitter, waves } from './sitting-plate.ts';

const sine = waves.sine(150, 24, 80);

/** On its rest at mark 3: cold for 10 s, up at 1 K/s to 172 degC, down to the wave, which it begins at 150. */
const warmedUp = (mark: number | null = 3): Sitter =>
  new Sitter()
    .say({ mark, place: 'on-rest' })
    .run(10, () => 20)
    .run(152, ramp(20, 1))
    .run(55, ramp(172, -0.4));
/** From its middle, falling. */
const fromMiddle = (s: number): number => sine(s + 20);

describe('what a stretch gives', () => {
  test('the figures of the standard, from a cold start on', () => {
    const { figures, mark, fromMs, toMs } = warmedUp().run(800, fromMiddle).last;
    expect([mark, fromMs]).toEqual([3, 250]);
    // The plate leaves 20 degC at 10 s and peaks at 162 s; smoothing and the kelvin that it may stray take a second each.
    expect(Math.abs((figures.heatingUpS ?? 0) - 152)).toBeLessThan(3);
    expect(Math.abs((figures.heatingUpFromC ?? 0) - 20)).toBeLessThan(0.1);
    expect(Math.abs((figures.heatingUpExcessK ?? 0) - 22)).toBeLessThan(1);
    expect(Math.abs(figures.meanC - 150)).toBeLessThan(0.1);
    expect(figures.peakSpreadK ?? 1).toBeLessThan(0.1);
    expect(figures.highestPeakC).toBeGreaterThan(figures.peakC - 1e-9);
    expect(toMs).toBeGreaterThan(fromMs + 500_000);
  });

  test('told after three cycles, then after each five, and at its end', () => {
    const sitter = warmedUp().run(1200, fromMiddle);
    expect(sitter.stretches.map((s) => s.figures.cycles)).toEqual([3, 8, 13]);
    sitter.run(80, fromMiddle).say({ place: 'unknown' }).run(1, fromMiddle);
    expect(sitter.stretches.map((s) => s.figures.cycles)).toEqual([3, 8, 13, 14]);
    expect(new Set(sitter.stretches.map((s) => s.fromMs)).size).toBe(1);
  });

  test('at most sixteen cycles count: the state stays small and survives JSON', () => {
    const sitter = warmedUp().run(4000, fromMiddle);
    expect(sitter.last.figures.cycles).toBe(16);
    expect(JSON.parse(JSON.stringify(sitter.sitting))).toEqual(sitter.sitting);
    expect(JSON.stringify(sitter.sitting).length).toBeLessThan(4000);
  });

  test('a mark told late in the warm-up still gets the heating-up time; one told after the first peak doesn’t', () => {
    const early = new Sitter().say({ place: 'on-rest' }).run(10, () => 20);
    early.run(60, ramp(20, 1)).say({ mark: 'wool' }).run(92, ramp(80, 1)).run(55, ramp(172, -0.4));
    expect(early.run(400, fromMiddle).last).toMatchObject({ mark: 'wool' });
    expect(Math.abs((early.last.figures.heatingUpS ?? 0) - 152)).toBeLessThan(3);
    const late = warmedUp(null).say({ mark: 3 }).run(400, fromMiddle);
    expect(late.last.figures.heatingUpS).toBeNull();
    expect(late.last.figures.heatingUpExcessK).toBeNull();
  });

  test('an iron that was warm already has no heating-up time', () => {
    const sitter = new Sitter().say({ mark: 3, place: 'on-rest' });
    sitter.run(112, ramp(60, 1)).run(55, ramp(172, -0.4)).run(400, fromMiddle);
    expect(sitter.last.figures.heatingUpS).toBeNull();
  });

  test('a room that grows warmer while the iron stands cold is no warm-up', () => {
    const sitter = new Sitter().say({ mark: 3, place: 'on-rest' });
    sitter
      .run(3600, ramp(15, 6 / 3600))
      .run(151, ramp(21, 1))
      .run(55, ramp(172, -0.4));
    const { figures } = sitter.run(400, fromMiddle).last;
    expect(Math.abs((figures.heatingUpS ?? 0) - 151)).toBeLessThan(3);
  });
});

describe('what ends a stretch', () => {
  const cut = (how: (s: Sitter) => Sitter): Sitter => how(warmedUp().run(200, fromMiddle));

  test('one that is cut short gives nothing', () => {
    for (const sitter of [
      cut((s) => s.say({ place: 'unknown' })),
      cut((s) => s.say({ place: 'on-work' })),
      cut((s) => s.say({ mark: 4 })),
      cut((s) => s.say({ mark: null })),
      cut((s) => s.say({ stageId: 'final' })),
      cut((s) => s.say({ probe: 'board/2' })),
    ])
      expect(sitter.run(40, fromMiddle).stretches).toEqual([]);
  });

  test('nor do two short ones together: each begins anew', () => {
    const sitter = cut((s) => s.say({ place: 'unknown' }).run(0.5, fromMiddle).say({ place: 'on-rest' }));
    expect(sitter.run(200, fromMiddle).stretches).toEqual([]);
    sitter.run(240, fromMiddle);
    expect(sitter.stretches).toHaveLength(1);
    expect(sitter.last.fromMs).toBeGreaterThan(400_000);
    expect(sitter.last.figures.heatingUpS).toBeNull();
  });

  test('readings that stop for six seconds', () => {
    const sitter = cut((s) => s);
    sitter.tMs += 6000;
    sitter.run(160, (s) => fromMiddle(s + 6));
    expect(sitter.stretches).toEqual([]);
    sitter.run(320, (s) => fromMiddle(s + 6));
    expect(sitter.last.fromMs).toBeGreaterThan(417_000);
  });

  test('what was gathered before an end is not lost', () => {
    const sitter = warmedUp().run(560, fromMiddle).say({ place: 'on-work' }).run(1, fromMiddle);
    expect(sitter.stretches.map((s) => s.figures.cycles)).toEqual([3, 5]);
  });

  test('a mark told again, or a word that says the same, does not', () => {
    const sitter = warmedUp().run(240, fromMiddle).say({ mark: 3 }).run(240, fromMiddle);
    expect(sitter.last.fromMs).toBe(250);
  });
});

describe('a dial that is turned without a word', () => {
  test('up or down so far that the plate leaves its swing: the mark counts no more until it is told again', () => {
    for (const toC of [110, 190]) {
      const sitter = warmedUp().run(560, fromMiddle);
      const before = sitter.stretches.length;
      sitter.run(Math.abs(toC - 150) / 0.5, ramp(150, toC > 150 ? 0.5 : -0.5));
      sitter.run(800, waves.sine(toC, 24, 80));
      expect(sitter.sitting.stretch).toBeNull();
      for (const s of sitter.stretches.slice(before)) expect(Math.abs(s.figures.meanC - 150)).toBeLessThan(1);
      sitter.say({ mark: 3 }).run(560, waves.sine(toC, 24, 80));
      expect(Math.abs(sitter.last.figures.meanC - toC)).toBeLessThan(1);
    }
  });

  test('a little, so that the plate stays within its swing: two cycles unlike the others tell', () => {
    const sitter = warmedUp().run(560, fromMiddle);
    sitter.run(15, ramp(150, 0.5)).run(800, waves.sine(157, 24, 80));
    expect(isDoubted(sitter.sitting, { mark: 3, toldMs: 0 })).toBe(true);
    expect(isDoubted(sitter.sitting, { mark: 3, toldMs: 900_000 })).toBe(false);
    expect(isDoubted(sitter.sitting, null)).toBe(false);
    for (const s of sitter.stretches) expect(Math.abs(s.figures.meanC - 150)).toBeLessThan(1);
  });

  test('a lift and a visit to the work that nobody told of don’t enter the figures', () => {
    const sitter = warmedUp().run(560, fromMiddle);
    for (let i = 0; i < 3; i++) sitter.run(20, ramp(150, -1.2)).run(40, ramp(126, 0.6));
    sitter.say({ place: 'unknown' }).run(1, fromMiddle);
    expect(Math.abs(sitter.last.figures.meanC - 150)).toBeLessThan(1);
    expect(Math.abs(sitter.last.figures.troughC - 138)).toBeLessThan(1);
  });
});

describe('drop under load', () => {
  const onWork = waves.sine(141, 26, 90);

  test('mean and trough on the work against those on the rest', () => {
    const sitter = warmedUp().run(480, fromMiddle).say({ place: 'on-work' });
    sitter.run(18, ramp(150, -0.5)).run(500, (s) => onWork(s + 22.5));
    sitter.say({ place: 'on-rest' }).run(1, fromMiddle);
    expect(sitter.loads).toHaveLength(1);
    const [load] = sitter.loads;
    expect(load?.mark).toBe(3);
    expect(load?.cycles).toBeGreaterThanOrEqual(3);
    expect(Math.abs((load?.meanDropK ?? 0) - 9)).toBeLessThan(0.5);
    expect(Math.abs((load?.troughDropK ?? 0) - 10)).toBeLessThan(0.5);
  });

  test('a short spell, another mark, or work without a rest before it tell nothing', () => {
    const short = warmedUp().run(480, fromMiddle).say({ place: 'on-work' }).run(70, fromMiddle);
    expect(short.say({ place: 'on-rest' }).run(1, fromMiddle).loads).toEqual([]);
    const other = warmedUp().run(480, fromMiddle).say({ place: 'on-work', mark: 4 }).run(500, onWork);
    expect(other.say({ place: 'on-rest' }).run(1, fromMiddle).loads).toEqual([]);
    const unrested = warmedUp().say({ place: 'on-work' }).run(500, onWork).say({ place: 'on-rest' });
    expect(unrested.run(1, fromMiddle).loads).toEqual([]);
  });

  test('an iron that is switched off while it is said to be on the work has not dropped under load', () => {
    const sitter = warmedUp().run(480, fromMiddle).say({ place: 'on-work' });
    sitter
      .run(200, fromMiddle)
      .run(300, ramp(150, -0.2))
      .say({ place: 'on-rest' })
      .run(1, () => 90);
    expect(sitter.loads).toEqual([]);
  });
});

test('a first look without a level is taken quietly', () => {
  const look = { tMs: 0, probe: 'p', behaviour: noBehaviour, cycle: null, dial: null, stageId: null };
  const step = sit(noSitting, { ...look, place: 'on-work' });
  expect(step.found).toEqual([]);
  expect(step.sitting.load).toBeNull();
});
