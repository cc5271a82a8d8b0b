import type { Calibration, CalibrationPoint } from '../../../shared/calibration/calibration.ts';
import type { CalibratedProbe } from '../../../shared/calibration/check-points.ts';
import type { Correction } from '../../../shared/calibration/correction.ts';
import { fitCorrection } from '../../../shared/calibration/fit.ts';
import { isRefusal } from '../../../shared/calibration/refusals.ts';

/** Points and corrections for tests. */

export const loose: CalibratedProbe = { mounting: 'loose', thermocouple: 'K' };
export const fittedProbe: CalibratedProbe = { mounting: 'fitted', thermocouple: 'K' };

const common = {
  readingSpreadK: 0.05,
  readings: 80,
  resolutionK: null,
  pressureHpa: null,
  altitudeM: null,
  instrument: '',
  takenAt: '2026-03-01T10:00:00Z',
} as const;

export const icePoint = (readingC: number, rest: Partial<CalibrationPoint> = {}): CalibrationPoint => ({
  ...common,
  kind: 'ice',
  readingC,
  referenceC: 0,
  referenceUK: 0.1,
  ...rest,
});

/** Under 1013.25 hPa, where water boils at 99.97 degC. */
export const boilingPoint = (readingC: number, rest: Partial<CalibrationPoint> = {}): CalibrationPoint => ({
  ...common,
  kind: 'boiling',
  readingC,
  referenceC: 99.974,
  referenceUK: 0.2,
  pressureHpa: 1013.25,
  ...rest,
});

export const contactPoint = (
  readingC: number,
  referenceC: number,
  rest: Partial<CalibrationPoint> = {},
): CalibrationPoint => ({
  ...common,
  kind: 'contact',
  readingC,
  referenceC,
  referenceUK: 1,
  instrument: 'bench thermometer',
  ...rest,
});

/** For points that the test itself knows to be sound. */
export function fit(points: readonly CalibrationPoint[], probe: CalibratedProbe): Correction {
  const correction = fitCorrection(points, probe);
  if (isRefusal(correction)) throw new Error(`refused: ${correction.reason}`);
  return correction;
}

export function calibration(points: readonly CalibrationPoint[], probe: CalibratedProbe): Calibration {
  return {
    id: 'demo-1',
    iron: 'big',
    version: 1,
    probe: 'demo/1',
    madeAt: '2026-03-01T10:05:00Z',
    by: '',
    mounting: probe.mounting,
    points: [...points],
    correction: fit(points, probe),
    dueUtcMs: null,
  };
}
