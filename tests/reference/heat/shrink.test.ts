import { describe, expect, it } from 'vitest';
import { heatScheduleDraftSchema, type ShrinkTable } from '../../../shared/heat/schedule.ts';
import { shippedSchedule } from '../../../shared/heat/shipped.ts';
import { freeShrink, handbookShrink } from '../../../shared/heat/work/shrink.ts';
import { fToC } from '../../../shared/units/temperature.ts';

const atF = (plateF: number, table?: ShrinkTable) => freeShrink(fToC(plateF), table);

describe('free shrinkage of loose cloth', () => {
  /**
   * FAA-H-8083-31 vol. 1 ch. 3, heat shrinking: nearly 5 % at 250 degF, 10 % at 350 degF. Standing: seen in a web
   * reproduction of the section, the second also in an examination question.
   */
  it('is what the handbook says at its points, and in between on a straight line (ours)', () => {
    expect(atF(250)).toEqual({ bound: 'about', percent: 5 });
    expect(atF(350)).toEqual({ bound: 'about', percent: 10 });
    expect(atF(300)).toEqual({ bound: 'about', percent: expect.closeTo(7.5, 9) as number });
  });

  it('is only bounded beyond them', () => {
    expect(atF(249)).toEqual({ bound: 'less-than', percent: 5 });
    expect(atF(70)).toEqual({ bound: 'less-than', percent: 5 });
    expect(atF(351)).toEqual({ bound: 'at-least', percent: 10 });
  });

  it("goes by the user's own manual where its table was entered", () => {
    const table: ShrinkTable = {
      points: [
        { plateC: 100, percent: 2 },
        { plateC: 120, percent: 4 },
        { plateC: 180, percent: 12 },
      ],
      standing: 'demo data',
    };
    const at = (plateC: number) => freeShrink(plateC, table);
    expect([90, 100, 110, 150, 180, 190].map(at)).toEqual([
      { bound: 'less-than', percent: 2 },
      { bound: 'about', percent: 2 },
      { bound: 'about', percent: 3 },
      { bound: 'about', percent: 8 },
      { bound: 'about', percent: 12 },
      { bound: 'at-least', percent: 12 },
    ]);
  });
});

describe('a table of a schedule', () => {
  const { id: _, version: __, madeAt: ___, ...draft } = shippedSchedule;
  const read = (points: readonly { plateC: number; percent: number }[]) =>
    heatScheduleDraftSchema.safeParse({ ...draft, shrink: { points, standing: '' } });

  it('may be left out, and is taken where it rises', () => {
    expect(heatScheduleDraftSchema.safeParse(draft).success).toBe(true);
    expect(read(handbookShrink.points).success).toBe(true);
  });

  it.each([
    [[{ plateC: 120, percent: 5 }], 'points'],
    [
      [
        { plateC: 120, percent: 5 },
        { plateC: 120, percent: 6 },
      ],
      'temperatures must rise',
    ],
    [
      [
        { plateC: 120, percent: 5 },
        { plateC: 100, percent: 6 },
      ],
      'temperatures must rise',
    ],
    [
      [
        { plateC: 120, percent: 5 },
        { plateC: 150, percent: 4 },
      ],
      'shrinkage must not fall',
    ],
    [
      [
        { plateC: 120, percent: 5 },
        { plateC: 150, percent: 101 },
      ],
      'percent',
    ],
  ])('is refused where it makes no sense (%#)', (points, said) => {
    const { error } = read(points);
    expect(JSON.stringify(error?.issues)).toContain(said);
  });
});
