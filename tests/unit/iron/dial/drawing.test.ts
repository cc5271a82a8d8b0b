import { describe, expect, it } from 'vitest';
import { hottestCurve } from '../../../../shared/iron/dial/advice.ts';
import { meanAt } from '../../../../shared/iron/dial/chart.ts';
import { drawnChart, drawnCycles, stageNear, turnsOf } from '../../../../shared/iron/dial/drawing.ts';
import { valueAt } from '../../../../shared/iron/dial/pchip.ts';
import { chartOf } from './charts.ts';

const cycle = (i: number) => ({
  fromMs: 500_000 + 80_000 * i,
  peakMs: 530_000 + 80_000 * i,
  toMs: 580_000 + 80_000 * i,
  peakC: 160 + i,
  troughC: 140 - i,
  meanC: 150,
});

describe('cycles to be drawn', () => {
  it('are the last eight, with times since the first trough', () => {
    const drawn = drawnCycles(Array.from({ length: 11 }, (_, i) => cycle(i)));
    expect(drawn).toHaveLength(8);
    expect(drawn[0]).toEqual({ fromS: 0, peakS: 30, toS: 80, peakC: 163, troughC: 137, meanC: 150 });
    expect(drawn.at(-1)?.toS).toBe(640);
  });

  it('are joined at their turning points, but not over one that was left out', () => {
    expect(turnsOf(drawnCycles([cycle(0), cycle(1), cycle(3)]))).toEqual([
      [
        { s: 30, plateC: 160 },
        { s: 80, plateC: 140 },
        { s: 110, plateC: 161 },
        { s: 160, plateC: 139 },
      ],
      [
        { s: 270, plateC: 163 },
        { s: 320, plateC: 137 },
      ],
    ]);
    expect(turnsOf([])).toEqual([]);
  });

  it('are for the stage whose target is nearest to their mean', () => {
    const stages = [{ targetC: 121 }, { targetC: 149 }, { targetC: 177 }];
    expect(stageNear(stages, 152)).toBe(stages[1]);
    expect(stageNear(stages, 400)).toBe(stages[2]);
    expect(stageNear([], 150)).toBeNull();
  });
});

describe('a dial chart to be drawn', () => {
  const wanted = {
    stage: { lowC: 140, targetC: 149, highC: 157 },
    fabricLimitC: 190,
    cementLimitC: null,
    uncertaintyK: 4,
    unevennessK: 3,
  };

  it('goes through its points, from the first mark to the last, as the advice has it', () => {
    const chart = chartOf([2, 100], [4, 150], [7, 170]);
    const { mean, hottest } = drawnChart(chart, wanted);
    for (const { mark, plateC } of mean) expect(plateC).toBe(meanAt(chart, mark));
    expect([mean[0]?.mark, mean.at(-1)?.mark]).toEqual([2, 7]);
    expect(mean).toContainEqual({ mark: 4, plateC: 150 });
    const curve = hottestCurve(chart.points, wanted) ?? expect.unreachable();
    for (const { mark, plateC } of hottest) expect(plateC).toBe(valueAt(curve, mark));
    // Its peaks are 12 K over the mean; uncertainty and unevenness come on top.
    expect(hottest).toContainEqual({ mark: 4, plateC: 150 + 12 + 4 + 3 });
  });

  it('has no curve of a single mark or of none', () => {
    expect(drawnChart(chartOf([2, 100]), wanted)).toEqual({ mean: [], hottest: [] });
    expect(drawnChart(chartOf(), wanted)).toEqual({ mean: [], hottest: [] });
  });
});
