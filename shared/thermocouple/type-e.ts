import type { ReferenceFunctions } from './reference-functions.ts';

/** Type E, as published: NIST Monograph 175 (SRD 60), the same functions as IEC 60584-1. */
export const typeE: ReferenceFunctions = {
  forward: [
    {
      tMinC: -270,
      tMaxC: 0,
      coefficients: [
        0.0, 0.58665508708e-1, 0.45410977124e-4, -0.77998048686e-6, -0.25800160843e-7, -0.59452583057e-9,
        -0.93214058667e-11, -0.10287605534e-12, -0.80370123621e-15, -0.43979497391e-17, -0.16414776355e-19,
        -0.39673619516e-22, -0.55827328721e-25, -0.34657842013e-28,
      ],
      exponential: null,
    },
    {
      tMinC: 0,
      tMaxC: 1000,
      coefficients: [
        0.0, 0.5866550871e-1, 0.45032275582e-4, 0.28908407212e-7, -0.33056896652e-9, 0.6502440327e-12,
        -0.19197495504e-15, -0.12536600497e-17, 0.21489217569e-20, -0.14388041782e-23, 0.35960899481e-27,
      ],
      exponential: null,
    },
  ],
  inverse: [
    {
      tMinC: -200,
      tMaxC: 0,
      emfMinMv: -8.825,
      emfMaxMv: 0.0,
      coefficients: [
        0.0, 1.6977288e1, -4.351497e-1, -1.5859697e-1, -9.2502871e-2, -2.6084314e-2, -4.1360199e-3,
        -3.403403e-4, -1.156489e-5, 0.0,
      ],
    },
    {
      tMinC: 0,
      tMaxC: 1000,
      emfMinMv: 0.0,
      emfMaxMv: 76.373,
      coefficients: [
        0.0, 1.7057035e1, -2.3301759e-1, 6.5435585e-3, -7.3562749e-5, -1.7896001e-6, 8.4036165e-8,
        -1.3735879e-9, 1.0629823e-11, -3.2447087e-14,
      ],
    },
  ],
};
