import { describe, expect, test } from 'vitest';
import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import { compareLevels, levelOf, stageReachedAt } from '../../../../shared/heat/work/reached.ts';
import { fToC } from '../../../../shared/units/temperature.ts';

const { stages } = shippedSchedule;
const reachedF = (fabricF: number, worked: string | null = null) =>
  stageReachedAt(stages, fToC(fabricF), worked)?.id ?? null;

describe('the stage that fabric has reached', () => {
  test('is the highest whose low it came to', () => {
    expect(reachedF(234.9)).toBeNull();
    expect(reachedF(284.9)).toBe('tack');
    expect(reachedF(285.1)).toBe('intermediate');
    expect(reachedF(390)).toBe('final');
    expect(stageReachedAt(stages, null, 'tack')).toBeNull();
    expect(stageReachedAt(stages, stages[0]?.lowC ?? 0, null)?.id).toBe('tack');
  });

  test('is the one being worked among those of one low, else the first', () => {
    expect(reachedF(250, 'initial')).toBe('initial');
    expect(reachedF(250, 'tape')).toBe('tape');
    expect(reachedF(250, 'final')).toBe('tack');
    expect(reachedF(300, 'initial')).toBe('intermediate');
  });

  test('is of the level of its target, whatever its purpose', () => {
    const tack = stageReachedAt(stages, fToC(250), 'tack');
    const tape = stageReachedAt(stages, fToC(250), 'tape');
    const final = stageReachedAt(stages, fToC(350), null);
    expect(compareLevels(tack, tape)).toBe(0);
    expect(compareLevels(tack, final)).toBeLessThan(0);
    expect(compareLevels(final, tack)).toBeGreaterThan(0);
    expect(compareLevels(null, tack)).toBeLessThan(0);
    expect(compareLevels(null, null)).toBe(0);
    expect(levelOf(final)).toBeCloseTo(176.67, 2);
  });
});
