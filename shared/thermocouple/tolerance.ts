import type { ThermocoupleType } from './types.ts';

/** Tolerance classes of new thermocouple wire: ASTM E230 special and standard, IEC 60584-1 class 1, 2 and 3. */
export const toleranceClasses = ['astm-special', 'astm-standard', 'iec-1', 'iec-2', 'iec-3'] as const;
export type ToleranceClass = (typeof toleranceClasses)[number];

/** From, to (degC), the least tolerance (K), and its share of the temperature's magnitude in degC. */
type Band = readonly [fromC: number, toC: number, leastK: number, shareOfC: number];

/**
 * ASTM E230/E230M-12 and IEC 60584-1:2013 as wire makers give them; the standards themselves were not at hand.
 * E230 below 0 degC holds only for wire ordered to meet it there.
 */
const bands: Readonly<Record<ToleranceClass, Partial<Record<ThermocoupleType, readonly Band[]>>>> = {
  'astm-special': {
    K: [[0, 1260, 1.1, 0.004]],
    J: [[0, 760, 1.1, 0.004]],
    T: [[0, 370, 0.5, 0.004]],
    E: [[0, 870, 1, 0.004]],
    N: [[0, 1260, 1.1, 0.004]],
  },
  'astm-standard': {
    K: [
      [-200, 0, 2.2, 0.02],
      [0, 1260, 2.2, 0.0075],
    ],
    J: [[0, 760, 2.2, 0.0075]],
    T: [
      [-200, 0, 1, 0.015],
      [0, 370, 1, 0.0075],
    ],
    E: [
      [-200, 0, 1.7, 0.01],
      [0, 870, 1.7, 0.005],
    ],
    N: [[0, 1260, 2.2, 0.0075]],
  },
  'iec-1': {
    K: [[-40, 1000, 1.5, 0.004]],
    J: [[-40, 750, 1.5, 0.004]],
    T: [[-40, 350, 0.5, 0.004]],
    E: [[-40, 800, 1.5, 0.004]],
    N: [[-40, 1000, 1.5, 0.004]],
  },
  'iec-2': {
    K: [[-40, 1200, 2.5, 0.0075]],
    J: [[-40, 750, 2.5, 0.0075]],
    T: [[-40, 350, 1, 0.0075]],
    E: [[-40, 900, 2.5, 0.0075]],
    N: [[-40, 1200, 2.5, 0.0075]],
  },
  'iec-3': {
    K: [[-200, 40, 2.5, 0.015]],
    T: [[-200, 40, 1, 0.015]],
    E: [[-200, 40, 2.5, 0.015]],
    N: [[-200, 40, 2.5, 0.015]],
  },
};

/**
 * How far a new thermocouple of a type and class may be from the reference function at `tC` (degC): plus or minus
 * so many K, the larger of a fixed figure and a share of the temperature's magnitude in degC.
 * Null where the class gives none: the type has no such class, `tC` is outside its range or not a number.
 */
export function toleranceK(
  type: ThermocoupleType,
  toleranceClass: ToleranceClass,
  tC: number,
): number | null {
  const band = bands[toleranceClass][type]?.find(([fromC, toC]) => tC >= fromC && tC <= toC);
  if (band === undefined) return null;
  const [, , leastK, shareOfC] = band;
  return Math.max(leastK, shareOfC * Math.abs(tC));
}
