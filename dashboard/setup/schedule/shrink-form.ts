import type { ShrinkTable } from '../../../shared/heat/schedule.ts';
import { handbookShrink } from '../../../shared/heat/work/shrink.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { emptyTyped, figureTyped, inUnit, type Typed, temperatureTyped } from '../fields/number.ts';

/** The shrink table of a schedule as it stands in its fields. */
export interface ShrinkForm {
  /** None: the schedule has no table of its own, and the handbook's holds. */
  readonly points: readonly ShrinkPointForm[];
  readonly standing: string;
}

export interface ShrinkPointForm {
  readonly plate: Typed;
  readonly percent: Typed;
}

/** So few points at least, and so many are offered at most; one that has more keeps them. */
export const LEAST_POINTS = 2;
export const MOST_POINTS = 6;

export const noShrink: ShrinkForm = { points: [], standing: '' };

export const shrinkFormOf = (table: ShrinkTable | undefined, unit: TemperatureUnit): ShrinkForm =>
  table === undefined
    ? noShrink
    : {
        points: table.points.map(({ plateC, percent }) => ({
          plate: temperatureTyped(plateC, unit),
          percent: figureTyped(percent),
        })),
        standing: table.standing,
      };

/** A table of one's own begins with the handbook's. */
export const firstShrink = (unit: TemperatureUnit): ShrinkForm => shrinkFormOf(handbookShrink, unit);

export const shrinkInUnit = ({ points, standing }: ShrinkForm, unit: TemperatureUnit): ShrinkForm => ({
  points: points.map(({ plate, percent }) => ({ plate: inUnit(plate, unit), percent })),
  standing,
});

export const withPoint = (shrink: ShrinkForm, at: number, change: Partial<ShrinkPointForm>): ShrinkForm => ({
  ...shrink,
  points: shrink.points.map((point, i) => (i === at ? { ...point, ...change } : point)),
});

export const withNewPoint = (shrink: ShrinkForm): ShrinkForm => ({
  ...shrink,
  points: [...shrink.points, { plate: emptyTyped, percent: emptyTyped }],
});

export const withoutPoint = (shrink: ShrinkForm, at: number): ShrinkForm => ({
  ...shrink,
  points: shrink.points.filter((_, i) => i !== at),
});

/** The table as a line of text, with the unit of its temperatures; empty where there is none. */
export function shrinkText({ points, standing }: ShrinkForm, unit: TemperatureUnit): string {
  const pairs = points.map(({ plate, percent }) => `${plate.text} °${unit}: ${percent.text} %`).join(', ');
  return [pairs, standing.trim()].filter((one) => one !== '').join('; ');
}
