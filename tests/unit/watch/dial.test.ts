import { describe, expect, test } from 'vitest';
import { isDoubted } from '../../../shared/iron/dial/sitting.ts';
import type { Finding } from '../../../shared/watch/finding.ts';
import { Live } from './support/live.ts';
import { carried, PROBE, watchSettings } from './support/settings.ts';

const start = (): Live => new Live(carried(watchSettings())).read(2, 20).place('on-rest');
const found = <K extends Finding['kind']>(live: Live, kind: K): Extract<Finding, { kind: K }>[] =>
  live.found.flatMap(({ finding }) =>
    finding.kind === kind ? [finding as Extract<Finding, { kind: K }>] : [],
  );

describe('what the dial stands at', () => {
  test('the last that was said counts; it can be taken back', () => {
    const live = start().dial(3).dial('wool');
    expect(live.state.work.dial).toEqual({ mark: 'wool', toldMs: live.tMs });
    expect(live.dial(null).state.work.dial).toBeNull();
  });

  test('on its rest at a told mark its cycles become a stretch, told of by the leading probe', () => {
    const live = start().dial(4).ramp(150, 1).swing(135, 6);
    const [first] = found(live, 'stretch');
    expect(first?.probe).toBe(PROBE);
    expect(first?.stretch.mark).toBe(4);
    expect(first?.stretch.figures.cycles).toBe(3);
    // The wave form's own: 35 s up, 80 s down, in straight lines; smoothing takes a little off the corners.
    expect(first?.stretch.figures.meanC).toBeCloseTo(135, 0);
    expect(Math.abs((first?.stretch.figures.fluctuationK ?? 0) - 28)).toBeLessThan(2);
    expect(Math.abs((first?.stretch.figures.periodS ?? 0) - 115)).toBeLessThan(3);
  });

  test('nothing is learned where the mark was not told, or the iron is not on its rest', () => {
    expect(found(start().ramp(150, 1).swing(135, 6), 'stretch')).toEqual([]);
    expect(found(start().dial(4).place('on-work').ramp(150, 1).swing(135, 6), 'stretch')).toEqual([]);
  });

  test('the work at the same mark is held against the rest', () => {
    const live = start().dial(4).ramp(150, 1).swing(135, 6).place('on-work').swing(128, 4).place('on-rest');
    live.swing(135, 1);
    const [load] = found(live, 'load');
    expect(load?.load.mark).toBe(4);
    expect(Math.abs((load?.load.troughDropK ?? 0) - 7)).toBeLessThan(1.5);
  });

  test('a plate that does something else makes the mark doubted, until it is said again', () => {
    const live = start().dial(4).ramp(150, 1).swing(135, 5).ramp(175, 1).swing(160, 4);
    expect(isDoubted(live.state.sitting, live.state.work.dial)).toBe(true);
    expect(found(live, 'stretch').every((f) => f.stretch.figures.meanC < 140)).toBe(true);
    live.dial(5).swing(160, 1);
    expect(isDoubted(live.state.sitting, live.state.work.dial)).toBe(false);
  });
});

describe('the alarm for drift', () => {
  const drift = {
    sinceAt: '2026-03-01T08:00:00Z',
    byK: -4.26,
    stretches: 5,
    sigmaK: 1.5,
    sigmaFrom: 'floor',
  } as const;

  test('stands while the settings say so, with how far and since when, and goes with it', () => {
    const live = start().give({ kind: 'settings', settings: { ...watchSettings(), drift } });
    expect(live.alarm('drift', null)).toMatchObject({
      state: 'unacknowledged',
      detail: '-4.3 K since 2026-03-01T08:00:00Z',
    });
    live.acknowledge('drift').give({ kind: 'settings', settings: { ...watchSettings(), drift: null } });
    expect(live.alarm('drift', null)?.state).toBe('normal');
  });
});
