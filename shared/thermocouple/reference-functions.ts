/**
 * The ITS-90 reference functions of a thermocouple type: emf in mV against temperature in degC, cold junction at
 * 0 degC. Coefficients low order first.
 */
export interface ReferenceFunctions {
  /** emf from temperature: the definition of the type, in two pieces that meet. */
  readonly forward: readonly [ForwardPiece, ForwardPiece];
  /** Temperature from emf: approximations good to 0.06 K, ascending and adjoining. */
  readonly inverse: readonly [InversePiece, ...InversePiece[]];
}

export interface ForwardPiece {
  readonly tMinC: number;
  readonly tMaxC: number;
  readonly coefficients: readonly number[];
  /** Adds a0 exp(a1 (t - a2)^2): type K above 0 degC only. */
  readonly exponential: { readonly a0: number; readonly a1: number; readonly a2: number } | null;
}

export interface InversePiece {
  readonly tMinC: number;
  readonly tMaxC: number;
  readonly emfMinMv: number;
  readonly emfMaxMv: number;
  readonly coefficients: readonly number[];
}

export interface EmfAndSlope {
  readonly emfMv: number;
  readonly slopeMvPerK: number;
}

/**
 * The reference function and its derivative at `tC`, degC. The caller keeps to the published range: beyond an end
 * this goes on with the outer piece.
 */
export function emfAndSlope({ forward: [below, above] }: ReferenceFunctions, tC: number): EmfAndSlope {
  const { coefficients, exponential } = tC <= below.tMaxC ? below : above;
  let emfMv = 0;
  let slopeMvPerK = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) {
    slopeMvPerK = slopeMvPerK * tC + emfMv;
    emfMv = emfMv * tC + (coefficients[i] ?? 0);
  }
  if (exponential === null) return { emfMv, slopeMvPerK };

  const fromCentreK = tC - exponential.a2;
  const bumpMv = exponential.a0 * Math.exp(exponential.a1 * fromCentreK * fromCentreK);
  return {
    emfMv: emfMv + bumpMv,
    slopeMvPerK: slopeMvPerK + 2 * exponential.a1 * fromCentreK * bumpMv,
  };
}

/** The published approximation of the temperature, degC, that a piece gives for an emf in mV. */
export const approximateC = ({ coefficients }: InversePiece, emfMv: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * emfMv + coefficient, 0);

/** The inverse piece that an emf falls in; the outermost one for an emf beyond the ends. */
export function inversePieceAt({ inverse }: ReferenceFunctions, emfMv: number): InversePiece {
  let found = inverse[0];
  for (const piece of inverse) if (emfMv > piece.emfMinMv) found = piece;
  return found;
}
