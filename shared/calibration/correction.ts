import { z } from 'zod';
import { ABSOLUTE_ZERO_C } from '../units/temperature.ts';
import { lineU } from './least-squares.ts';
import { rectangularU } from './rectangular.ts';

/** What is added to a reading, and how far that can be trusted. */

const correctionMethods = ['offset', 'line', 'least-squares'] as const;
export type CorrectionMethod = (typeof correctionMethods)[number];

const celsius = z.number().min(ABSOLUTE_ZERO_C).max(2000);

/** b(t) = b1 + b2 (t - t0), added to a reading t (the form of GUM H.3). */
export const correctionSchema = z
  .strictObject({
    /** An offset from one point, a line through two, a least-squares line from more. */
    method: z.enum(correctionMethods),
    t0C: celsius,
    b1K: z.number(),
    /** K a K. */
    b2: z.number().gt(-1),
    /** Standard uncertainties of b1 and b2, with the references' and the readings' own in them. */
    u1K: z.number().min(0),
    u2: z.number().min(0),
    /** Correlation of b1 and b2. */
    r: z.number().min(-1).max(1),
    /** Residual standard deviation; null for fewer than three points. */
    sK: z.number().min(0).nullable(),
    /** The lowest and the highest reading that it was made from. */
    fromC: celsius,
    toC: celsius,
  })
  .refine((c) => c.fromC <= c.toC, { message: 'from must not be over to', path: ['toC'] })
  .readonly();

export type Correction = z.infer<typeof correctionSchema>;

/**
 * What is not known of a probe's slope where no point was taken, K a K (standard uncertainty): the share of the
 * temperature that a standard-class type K thermocouple may be off by, 0.75 % (ASTM E230), as a rectangular
 * distribution. To take it for a slope is our own choice.
 */
export const UNKNOWN_SLOPE = rectangularU(0.0075);

/** The correction at a reading, K. */
export const correctionAtK = ({ b1K, b2, t0C }: Correction, readingC: number): number =>
  b1K + b2 * (readingC - t0C);

/** The reading with its correction, degC. */
export const corrected = (readingC: number, correction: Correction): number =>
  readingC + correctionAtK(correction, readingC);

/** The reading that has been corrected to `correctedC`, degC: exact, since a correction is a straight line that rises. */
export const uncorrected = (correctedC: number, { b1K, b2, t0C }: Correction): number =>
  (correctedC - b1K + b2 * t0C) / (1 + b2);

/**
 * Standard uncertainty of the correction at a reading, K. Between the points it is that of the line, covariance
 * included. Beyond them what nobody looked at is added: `UNKNOWN_SLOPE` for each K past the outermost point.
 */
export function correctionUK(correction: Correction, readingC: number): number {
  const { u1K, u2, r, t0C, fromC, toC } = correction;
  const pastK = Math.max(0, fromC - readingC, readingC - toC);
  return Math.hypot(lineU({ u1: u1K, u2, r }, readingC - t0C), UNKNOWN_SLOPE * pastK);
}

/** Beyond the outermost points a drawing goes on by so much of their span, and by so much at least, K. */
const MARGIN_SHARE = 0.15;
const MARGIN_K = 10;
const STEPS = 24;
/** Twice the standard uncertainty holds the truth in some 95 of 100 cases (GUM, JCGM 100:2008, 6.3.3). */
const EXPANDED = 2;

/** The correction's expanded uncertainty along the readings that it was made from, and a little beyond. */
export function trustAlong(
  correction: Correction,
): readonly { readonly readC: number; readonly bandK: number }[] {
  const { fromC, toC } = correction;
  const marginK = Math.max(MARGIN_K, MARGIN_SHARE * (toC - fromC));
  const [lowC, highC] = [fromC - marginK, toC + marginK];
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const readC = lowC + ((highC - lowC) * i) / STEPS;
    return { readC, bandK: EXPANDED * correctionUK(correction, readC) };
  });
}
