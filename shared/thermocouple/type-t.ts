import type { ReferenceFunctions } from './reference-functions.ts';

/** Type T, as published: NIST Monograph 175 (SRD 60), the same functions as IEC 60584-1. */
export const typeT: ReferenceFunctions = {
  forward: [
    {
      tMinC: -270,
      tMaxC: 0,
      coefficients: [
        0.0, 0.38748106364e-1, 0.44194434347e-4, 0.11844323105e-6, 0.20032973554e-7, 0.90138019559e-9,
        0.22651156593e-10, 0.36071154205e-12, 0.38493939883e-14, 0.28213521925e-16, 0.14251594779e-18,
        0.48768662286e-21, 0.1079553927e-23, 0.13945027062e-26, 0.79795153927e-30,
      ],
      exponential: null,
    },
    {
      tMinC: 0,
      tMaxC: 400,
      coefficients: [
        0.0, 0.38748106364e-1, 0.3329222788e-4, 0.20618243404e-6, -0.21882256846e-8, 0.10996880928e-10,
        -0.30815758772e-13, 0.4547913529e-16, -0.27512901673e-19,
      ],
      exponential: null,
    },
  ],
  inverse: [
    {
      tMinC: -200,
      tMaxC: 0,
      emfMinMv: -5.603,
      emfMaxMv: 0.0,
      coefficients: [
        0.0, 2.5949192e1, -2.1316967e-1, 7.9018692e-1, 4.2527777e-1, 1.3304473e-1, 2.0241446e-2, 1.2668171e-3,
      ],
    },
    {
      tMinC: 0,
      tMaxC: 400,
      emfMinMv: 0.0,
      emfMaxMv: 20.872,
      coefficients: [0.0, 2.5928e1, -7.602961e-1, 4.637791e-2, -2.165394e-3, 6.048144e-5, -7.293422e-7, 0.0],
    },
  ],
};
