import { describe, expect, test } from 'vitest';
import { heatScheduleDraftSchema, heatScheduleSchema, isConfirmed } from '../../../shared/heat/schedule.ts';
import { shippedSchedule } from '../../../shared/heat/shipped.ts';
import { placeAmongStages } from '../../../shared/heat/standing.ts';
import { cToF } from '../../../shared/units/temperature.ts';

describe('the shipped schedule', () => {
  test('is a valid one, and unconfirmed', () => {
    expect(heatScheduleSchema.parse(shippedSchedule)).toEqual(shippedSchedule);
    expect(isConfirmed(shippedSchedule)).toBe(false);
  });

  test('stages lie where FAA-H-8083-31 vol. 1 ch. 3 has them: typically from 225 to 350 °F', () => {
    for (const { targetC } of shippedSchedule.stages) {
      expect(cToF(targetC)).toBeGreaterThan(224.9);
      expect(cToF(targetC)).toBeLessThan(350.1);
    }
  });

  test('every value says where it comes from; what isn’t set is not set', () => {
    for (const { standing } of shippedSchedule.stages) expect(standing).not.toBe('');
    expect(shippedSchedule.limitStanding).toContain('from memory');
    expect(shippedSchedule.cementLimitC).toBeNull();
    expect(cToF(shippedSchedule.fabricLimitC)).toBeCloseTo(375, 9);
  });
});

describe('a draft is refused where it makes no sense', () => {
  const { id: _id, version: _version, madeAt: _madeAt, ...draft } = shippedSchedule;
  const [tack] = draft.stages;
  if (tack === undefined) throw new Error('no stage');
  const where = (change: object): string[] =>
    heatScheduleDraftSchema.safeParse({ ...draft, ...change }).error?.issues.map((i) => i.path.join('.')) ??
    [];

  test.each([
    ['low over high', { stages: [{ ...tack, lowC: 140 }] }, 'stages.0.targetC'],
    ['target outside its band', { stages: [{ ...tack, targetC: 140 }] }, 'stages.0.targetC'],
    ['the same id twice', { stages: [tack, tack] }, 'stages.1.id'],
    ['a target over the limit', { fabricLimitC: 100 }, 'stages.0.targetC'],
    ['no number', { fabricLimitC: Number.NaN }, 'fabricLimitC'],
    ['a limit at which the fabric is long gone', { fabricLimitC: 401 }, 'fabricLimitC'],
    ['no stage at all', { stages: [] }, 'stages'],
    ['an unknown key', { limitF: 375 }, ''],
    ['a source without its page', { source: { manual: 'Manual', page: ' ' } }, 'source.page'],
  ])('%s', (_, change, path) => {
    expect(where(change)).toContain(path);
  });

  test('as it is, it is taken', () => {
    expect(where({})).toEqual([]);
  });
});

const place = (c: number | null) => placeAmongStages(c, shippedSchedule, 2.2);

describe('place among the stages (shipped schedule, guard band 2.2 K)', () => {
  test.each([
    [null, 'no-reading', []],
    [20, 'cold', []],
    [42.9, 'cold', []],
    [43, 'below', []],
    [121, 'in-stage', ['tack', 'initial shrink', 'tape smoothing']],
    [135, 'between', []],
    [149, 'in-stage', ['intermediate shrink']],
    [177, 'in-stage', ['final shrink']],
    [187, 'above', []],
    [188.35, 'above', []],
    [188.36, 'over-limit', []],
    [300, 'over-limit', []],
  ])('%s °C is %s', (c, kind, stages) => {
    expect(place(c)).toEqual({ kind, stages });
  });

  test('the limit counts from its guard band on, even inside a stage (JCGM 106)', () => {
    expect(placeAmongStages(177, { ...shippedSchedule, fabricLimitC: 179 }, 2.2).kind).toBe('over-limit');
  });
});
