import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOut, spread } from '../../../../dashboard/iron/ladder/layout.ts';
import { shippedSchedule } from '../../../../shared/heat/shipped.ts';

describe('the ladder', () => {
  const ladder = layOut(shippedSchedule, 2.2);

  it('joins stages that share a band', () => {
    expect(ladder.bands.map((band) => band.stages.map((stage) => stage.id))).toEqual([
      ['tack', 'initial', 'tape'],
      ['intermediate'],
      ['final'],
    ]);
    expect(ladder.lanes).toBe(1);
  });

  it('puts what is hotter higher, and keeps everything on it', () => {
    expect(ladder.pct(200)).toBeLessThan(ladder.pct(100));
    expect(ladder.limitPct).toBeLessThan(ladder.warnPct);
    expect(ladder.pct(1000)).toBe(0);
    expect(ladder.pct(-40)).toBe(100);
  });

  it('names both limits, one that is not set too', () => {
    const names = (of = ladder) => of.labels.map(({ subject }) => subject.kind);
    expect(names()).toContain('fabric-limit');
    expect(names()).toContain('cement-limit');
    expect(ladder.cementPct).toBeNull();
    expect(layOut({ ...shippedSchedule, cementLimitC: 120 }, 2.2).cementPct).toBeCloseTo(ladder.pct(120));
  });

  it('sets bands that overlap side by side', () => {
    const [first, ...rest] = shippedSchedule.stages;
    if (first === undefined) throw new Error('the shipped schedule has no stage');
    const wider = { ...first, id: 'wider', highC: first.highC + 3 };
    const crowded = layOut({ ...shippedSchedule, stages: [first, wider, ...rest] }, 2.2);
    expect(crowded.lanes).toBe(2);
    expect(new Set(crowded.bands.slice(0, 2).map((band) => band.lane)).size).toBe(2);
  });
});

describe('moving labels apart', () => {
  it('keeps their order, their distance and the ladder’s ends', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 14 }),
        (anywhere) => {
          const wanted = anywhere.toSorted((a, b) => a - b);
          const gap = Math.min(12, 100 / wanted.length);
          const places = spread(wanted, gap);
          expect(places).toHaveLength(wanted.length);
          places.forEach((place, i) => {
            expect(place).toBeGreaterThanOrEqual(gap / 2 - 1e-9);
            expect(place).toBeLessThanOrEqual(100 - gap / 2 + 1e-9);
            if (i > 0) expect(place - (places[i - 1] ?? 0)).toBeGreaterThanOrEqual(gap - 1e-9);
          });
        },
      ),
    );
  });

  it('moves nothing that has room', () => {
    expect(spread([20, 50, 80], 10)).toEqual([20, 50, 80]);
  });
});
