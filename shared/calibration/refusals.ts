import type { PointKind } from './calibration.ts';

/**
 * Why a point or a set of points was not taken, with what was seen; the sentences are in words/calibration.ts.
 * `point` and `other` are places in the list that was given.
 */
export type CalibrationRefusal =
  | { readonly reason: 'no-points' }
  | { readonly reason: 'too-many-points'; readonly count: number; readonly most: number }
  | { readonly reason: 'not-a-number'; readonly point: number }
  | { readonly reason: 'water-on-fitted'; readonly point: number | null }
  | { readonly reason: 'pressure-missing' }
  | PressureRefusal
  | { readonly reason: 'altitude-range'; readonly altitudeM: number }
  | { readonly reason: 'uncertainty-missing' }
  | {
      readonly reason: 'water-temperature';
      readonly point: number;
      readonly kind: PointKind;
      readonly givenC: number;
      readonly possibleC: number;
    }
  | {
      readonly reason: 'water-reading';
      readonly point: number;
      readonly kind: PointKind;
      readonly readingC: number;
      readonly referenceC: number;
    }
  | { readonly reason: 'unsteady'; readonly point: number; readonly spreadK: number; readonly boundK: number }
  | {
      readonly reason: 'not-steady';
      readonly point: number;
      /** How much of the window has held, 0 to 1. */
      readonly progress: number;
      readonly driftKPerMin: number | null;
    }
  | { readonly reason: 'few-readings'; readonly point: number; readonly readings: number }
  | {
      readonly reason: 'out-of-range';
      readonly point: number;
      readonly tC: number;
      readonly minC: number;
      readonly maxC: number;
    }
  | { readonly reason: 'duplicate'; readonly point: number; readonly other: number; readonly apartK: number }
  | ({ readonly reason: 'reversed' } & ReversedPair)
  | { readonly reason: 'too-close'; readonly spanK: number }
  | {
      readonly reason: 'correction-too-large';
      readonly point: number;
      readonly correctionK: number;
      readonly boundK: number;
    }
  | { readonly reason: 'slope-too-large'; readonly slope: number };

export type PressureRefusal =
  | { readonly reason: 'pressure-range'; readonly pressureHpa: number }
  | {
      readonly reason: 'pressure-not-of-altitude';
      readonly pressureHpa: number;
      readonly altitudeM: number;
      readonly standardHpa: number;
    };

/** Two points whose readings don't rise with their references. */
export interface ReversedPair {
  readonly point: number;
  readonly other: number;
  readonly referenceC: number;
  readonly otherReferenceC: number;
  readonly readingC: number;
  readonly otherReadingC: number;
}

/** Tells a refusal from what was asked for. */
export const isRefusal = (answer: object): answer is CalibrationRefusal => 'reason' in answer;
