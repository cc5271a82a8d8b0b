import {
  type ChartPoint,
  type DialChart,
  emptyChart,
  withPoint,
} from '../../../../shared/iron/dial/chart.ts';

/** A measured point with peaks 12 K over its mean and troughs as far under it. */
export const point = (mark: number, meanC: number, halfSwingK = 12): ChartPoint => ({
  mark,
  kind: 'measured',
  meanC,
  peakC: meanC + halfSwingK,
  troughC: meanC - halfSwingK,
  cycles: 8,
  peakSpreadK: 0,
  meanSpreadK: 0.5,
  lagAllowanceK: 0,
  at: '2026-05-01T09:00:00Z',
  madeWith: null,
});

/** A chart of marks and their means. */
export const chartOf = (...marks: readonly (readonly [mark: number, meanC: number])[]): DialChart =>
  marks.map(([mark, meanC]) => point(mark, meanC)).reduce(withPoint, emptyChart);
