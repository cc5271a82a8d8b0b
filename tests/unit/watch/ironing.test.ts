import { describe, expect, test } from 'vitest';
import type { Visit } from '../../../shared/heat/work/visit.ts';
import { fToC } from '../../../shared/units/temperature.ts';
import { Live } from './support/live.ts';
import { at, lapDone, onArea, piece, turned, undo } from './support/places.ts';
import { carried, watchSettings } from './support/settings.ts';

const hot = (): Live => new Live(carried(watchSettings())).ramp(150, 2).stage('intermediate').mark(piece);

const visitsOf = (live: Live): readonly Visit[] =>
  live.found.flatMap(({ finding }) => (finding.kind === 'visit' ? [finding.visit] : []));

/** Of each visit its last telling that counts. */
const counted = (live: Live): readonly Visit[] =>
  [...new Map(visitsOf(live).map((v) => [v.n, v])).values()].filter((v) => !v.takenBack);

describe('a visit', () => {
  test('lasts from one area to the next, with what the plate was meanwhile', () => {
    const live = hot().mark(onArea('end')).read(6, 152).mark(onArea('middle')).read(2, 148).place('on-rest');
    const [first, second] = counted(live);
    expect(first).toMatchObject({
      spot: { piece: 'flap', version: 1, side: 1, area: 'end' },
      placeName: 'Left flap, Upper, end',
      presumed: false,
      contactBy: 'marks',
      contactMs: 6000,
      lapDone: false,
      reached: { id: 'intermediate' },
    });
    expect(first?.peakC).toBeCloseTo(152, 1);
    expect(first?.inBandMs).toBe(6000);
    expect(second).toMatchObject({ spot: { area: 'middle' }, contactMs: 2000 });
    expect(live.state.ironing.visit).toBeNull();
  });

  test('that is a brush past reaches less than the plate has', () => {
    const live = hot().mark(onArea('end')).read(0.5, 150).place('on-rest');
    expect(counted(live)[0]).toMatchObject({ contactMs: 500, reached: null });
    expect(counted(live)[0]?.peakC).toBeGreaterThan(149);
  });

  test('that goes on is told every ten seconds, and counts once', () => {
    const live = hot().mark(onArea('end')).read(25, 150).place('on-rest');
    expect(visitsOf(live).map((v) => Math.round(v.contactMs / 1000))).toEqual([10, 20, 25]);
    expect(counted(live)).toHaveLength(1);
  });

  test('is told as its session ends', () => {
    const live = hot().mark(onArea('end')).read(4, 150);
    live.give({ kind: 'stop', commandId: null, why: 'shutdown' });
    expect(counted(live)).toMatchObject([{ spot: { area: 'end' }, contactMs: 4000 }]);
  });

  test('on the work without a place is unassigned', () => {
    const live = new Live(carried(watchSettings()))
      .ramp(150, 2)
      .place('on-work')
      .read(3, 150)
      .place('on-rest');
    expect(counted(live)[0]).toMatchObject({ spot: null, placeName: '', contactMs: 3000 });
  });

  test('passed by "next" is presumed until the area is said again', () => {
    const presumed = at('end', { presumed: true });
    const live = hot().mark({ kind: 'at', said: 'next', at: presumed }).read(3, 150);
    expect(live.state.ironing.visit?.at?.presumed).toBe(true);
    live.mark(onArea('end')).read(1, 150).place('off-work');
    expect(counted(live)).toMatchObject([{ presumed: false, contactMs: 4000 }]);
  });

  test('without a valid reading only lasts', () => {
    const live = hot().mark(onArea('end')).readAll(3, { 'board/1': null }).place('on-rest');
    expect(counted(live)[0]).toMatchObject({ peakC: null, reached: null, contactMs: 3000 });
  });
});

describe('after a break of the program', () => {
  const broken = (place: 'on-work' | 'on-rest'): Live =>
    new Live(carried(watchSettings(), { place, at: at('end'), fromSession: 'before' })).ramp(150, 2);

  test('an iron that was on the work goes on there, presumed until that is said again', () => {
    const live = broken('on-work');
    expect(live.state.ironing.visit).toMatchObject({ at: { area: 'end', presumed: true } });
    const contactMs = live.tMs + 3000;
    live.read(3, 150).place('on-rest');
    expect(counted(live)).toMatchObject([{ spot: { area: 'end' }, presumed: true, contactMs }]);
  });

  test('saying the area confirms it, and a lap goes over what came since', () => {
    const live = broken('on-work').mark(onArea('end')).read(3, 150).mark(lapDone).place('on-rest');
    expect(counted(live).map((v) => [v.lapDone, v.presumed])).toEqual([
      [false, false],
      [true, false],
    ]);
  });

  test('one that was on its rest makes no visit', () => {
    expect(counted(broken('on-rest').read(3, 150).mark(lapDone))).toEqual([]);
  });
});

describe('a lap done', () => {
  test('is told of the whole side, with its mean and not its peak', () => {
    // Its peak of 340 degF is in the final stage's band, its mean is not.
    const live = hot().mark({ kind: 'at', said: 'area', at: at(null) });
    live.read(2, fToC(340)).read(20, fToC(300)).mark(lapDone);
    const [lap] = counted(live).filter((v) => v.lapDone);
    expect(lap).toMatchObject({ spot: { side: 1, area: null }, reached: { id: 'intermediate' } });
    expect(lap?.contactMs).toBe(22_000);
    expect(lap?.peakC).toBeCloseTo(fToC(340), 1);
    // The stay "somewhere on the side" was the lap itself.
    expect(counted(live)).toHaveLength(1);
  });

  test('begins the next one, and turning over begins one on the other side', () => {
    const live = hot().mark(onArea('end')).read(5, 150).mark(lapDone).read(5, 150).mark(lapDone);
    live.mark(turned).read(7, 150).mark(lapDone);
    const laps = counted(live).filter((v) => v.lapDone);
    expect(laps.map((v) => [v.spot?.side, v.contactMs])).toEqual([
      [1, 5000],
      [1, 5000],
      [2, 7000],
    ]);
  });

  test('without a piece in hand is refused', () => {
    const live = new Live(carried(watchSettings())).mark(lapDone);
    expect(live.found.map(({ finding }) => finding.kind)).toContain('refused');
  });
});

describe('undo', () => {
  test('puts what was done since on the area before', () => {
    const live = hot().mark(onArea('end')).read(4, 150).mark(onArea('middle')).read(3, 155).mark(undo);
    live.read(1, 150).place('on-rest');
    expect(counted(live)).toMatchObject([{ spot: { area: 'end' }, contactMs: 8000 }]);
    expect(counted(live)[0]?.peakC).toBeCloseTo(155, 1);
  });

  test('of a lap takes it back, and goes on with it', () => {
    const live = hot().mark(onArea('end')).read(4, 150).mark(lapDone).read(2, 150).mark(undo);
    expect(counted(live).filter((v) => v.lapDone)).toEqual([]);
    live.read(2, 150).mark(lapDone);
    expect(counted(live).filter((v) => v.lapDone)).toMatchObject([{ contactMs: 8000 }]);
  });

  test('of a rest goes on where the iron was', () => {
    const live = hot().mark(onArea('end')).read(4, 150).place('on-rest').read(3, 150).mark(undo);
    expect(live.state.work.place).toBe('on-work');
    live.read(1, 150).mark(onArea('middle'));
    expect(counted(live)).toMatchObject([{ spot: { area: 'end' }, contactMs: 5000 }]);
  });

  test('of a place taken by mistake leaves nothing of it', () => {
    const live = hot().place('on-rest').mark(onArea('end')).read(12, 150).mark(undo).read(1, 150);
    expect(live.state.work.place).toBe('on-rest');
    expect(counted(live)).toEqual([]);
  });

  test('of a place taken by mistake leaves nothing of it in the lap either', () => {
    const live = hot().mark(onArea('end')).read(4, 150).place('on-rest');
    live.mark(onArea('middle')).read(12, 170).mark(undo).mark(lapDone);
    const [lap] = counted(live).filter((v) => v.lapDone);
    expect(lap).toMatchObject({ contactMs: 4000 });
    expect(lap?.peakC).toBeLessThan(151);
  });

  test('of a lap that was done on the rest, and is said again, is told in the order of time', () => {
    const live = hot().mark(onArea('end')).read(4, 150).place('on-rest').mark(lapDone).wait(2).mark(undo);
    live.wait(2).mark(lapDone);
    const laps = visitsOf(live).filter((v) => v.lapDone);
    const since = laps.map((v) => v.toMs - (laps[0]?.toMs ?? 0));
    expect(laps.map((v) => v.takenBack)).toEqual([false, true, false]);
    expect(since).toEqual([0, 2000, 4000]);
    expect(counted(live).filter((v) => v.lapDone)).toMatchObject([{ contactMs: 4000 }]);
  });

  test('of two marks leaves nothing of a visit that the second of them had ended', () => {
    const live = hot().place('on-rest').mark(onArea('end')).read(5, 150).mark(onArea('middle'));
    live.mark(undo).mark(undo);
    expect(live.state.work.place).toBe('on-rest');
    expect(counted(live)).toEqual([]);
  });

  test('goes ten marks back, and then refuses', () => {
    const live = new Live(carried(watchSettings()));
    for (let i = 0; i < 12; i++) live.mark(onArea(`area-${i}`));
    for (let i = 0; i < 10; i++) live.mark(undo);
    expect(live.state.work.at?.area).toBe('area-1');
    live.afresh().mark(undo);
    expect(live.found).toMatchObject([{ finding: { kind: 'refused' } }]);
  });
});
