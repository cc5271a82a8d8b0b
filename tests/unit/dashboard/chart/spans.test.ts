import { describe, expect, it } from 'vitest';
import { heldSpans, rangeOf, traceSpan } from '../../../../dashboard/chart/spans.ts';
import { shippedSchedule } from '../../../../shared/heat/shipped.ts';

const probe = { id: 'board/1', label: 'Plate', seat: 'fitted' as const, guardBandK: 2.2, calibration: null };
const stricter = { ...shippedSchedule, version: 2, fabricLimitC: 180 };
const text = (c: number): string => `${Math.round(c)} C`;

describe('what held from when to when', () => {
  it('is cut wherever the settings or the stage changed', () => {
    const held = heldSpans(
      [
        { fromMs: 0, schedule: shippedSchedule, probes: [probe] },
        { fromMs: 5000, schedule: stricter, probes: [probe, { ...probe, guardBandK: 4 }] },
      ],
      [
        { fromMs: 0, stageId: null, place: 'unknown' },
        { fromMs: 3000, stageId: 'final', place: 'on-work' },
      ],
      9000,
    );
    expect(
      held.map(({ fromMs, toMs, stageId, guardBandK, schedule }) => [
        fromMs,
        toMs,
        stageId,
        guardBandK,
        schedule.version,
      ]),
    ).toEqual([
      [0, 3000, null, 2.2, 1],
      [3000, 5000, 'final', 2.2, 1],
      [5000, 9000, 'final', 4, 2],
    ]);
  });

  it('is nothing before the settings are known', () => {
    expect(heldSpans([], [{ fromMs: 0, stageId: null, place: 'unknown' }], 10)).toEqual([]);
  });

  it('is drawn with each band once, the one being worked last, and the limits', () => {
    const held = { fromMs: 0, toMs: 10, schedule: stricter, stageId: 'tape', guardBandK: 2.2 };
    const span = traceSpan(held, text);
    expect(span.bands.map(({ text: name, working }) => [name, working])).toEqual([
      ['intermediate shrink', false],
      ['final shrink', false],
      ['tack, initial shrink, tape smoothing', true],
    ]);
    expect(span).toMatchObject({
      fabricC: 180,
      warnC: 177.8,
      cementC: null,
      fabricText: 'fabric limit 180 C',
    });
  });

  it('gives a range that holds limits, stages and readings', () => {
    const held = { fromMs: 0, toMs: 10, schedule: shippedSchedule, stageId: null, guardBandK: 2.2 };
    const { lowC, highC } = rangeOf([held], { lowC: 21, highC: 203 });
    expect(lowC).toBeLessThan(21);
    expect(highC).toBeGreaterThan(203);
    expect(rangeOf([held], null).highC).toBeGreaterThan(shippedSchedule.fabricLimitC);
    expect(rangeOf([], null)).toEqual({ lowC: 0, highC: 1 });
  });
});
