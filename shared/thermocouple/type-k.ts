import type { ReferenceFunctions } from './reference-functions.ts';

/** Type K, as published: NIST Monograph 175 (SRD 60), the same functions as IEC 60584-1. */
export const typeK: ReferenceFunctions = {
  forward: [
    {
      tMinC: -270,
      tMaxC: 0,
      coefficients: [
        0.0, 0.39450128025e-1, 0.23622373598e-4, -0.32858906784e-6, -0.49904828777e-8, -0.67509059173e-10,
        -0.57410327428e-12, -0.31088872894e-14, -0.10451609365e-16, -0.19889266878e-19, -0.16322697486e-22,
      ],
      exponential: null,
    },
    {
      tMinC: 0,
      tMaxC: 1372,
      coefficients: [
        -0.17600413686e-1, 0.38921204975e-1, 0.18558770032e-4, -0.99457592874e-7, 0.31840945719e-9,
        -0.56072844889e-12, 0.56075059059e-15, -0.32020720003e-18, 0.97151147152e-22, -0.12104721275e-25,
      ],
      exponential: { a0: 0.1185976, a1: -0.1183432e-3, a2: 0.1269686e3 },
    },
  ],
  inverse: [
    {
      tMinC: -200,
      tMaxC: 0,
      emfMinMv: -5.891,
      emfMaxMv: 0.0,
      coefficients: [
        0.0, 2.5173462e1, -1.1662878, -1.0833638, -8.977354e-1, -3.7342377e-1, -8.6632643e-2, -1.0450598e-2,
        -5.1920577e-4, 0.0,
      ],
    },
    {
      tMinC: 0,
      tMaxC: 500,
      emfMinMv: 0.0,
      emfMaxMv: 20.644,
      coefficients: [
        0.0, 2.508355e1, 7.860106e-2, -2.503131e-1, 8.31527e-2, -1.228034e-2, 9.804036e-4, -4.41303e-5,
        1.057734e-6, -1.052755e-8,
      ],
    },
    {
      tMinC: 500,
      tMaxC: 1372,
      emfMinMv: 20.644,
      emfMaxMv: 54.886,
      coefficients: [
        -1.318058e2, 4.830222e1, -1.646031, 5.464731e-2, -9.650715e-4, 8.802193e-6, -3.11081e-8, 0.0, 0.0,
        0.0,
      ],
    },
  ],
};
