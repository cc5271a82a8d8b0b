import type { ReferenceFunctions } from './reference-functions.ts';

/** Type J, as published: NIST Monograph 175 (SRD 60), the same functions as IEC 60584-1. */
export const typeJ: ReferenceFunctions = {
  forward: [
    {
      tMinC: -210,
      tMaxC: 760,
      coefficients: [
        0.0, 0.50381187815e-1, 0.3047583693e-4, -0.8568106572e-7, 0.13228195295e-9, -0.17052958337e-12,
        0.20948090697e-15, -0.12538395336e-18, 0.15631725697e-22,
      ],
      exponential: null,
    },
    {
      tMinC: 760,
      tMaxC: 1200,
      coefficients: [
        0.29645625681e3, -0.14976127786e1, 0.31787103924e-2, -0.31847686701e-5, 0.15720819004e-8,
        -0.30691369056e-12,
      ],
      exponential: null,
    },
  ],
  inverse: [
    {
      tMinC: -210,
      tMaxC: 0,
      emfMinMv: -8.095,
      emfMaxMv: 0.0,
      coefficients: [
        0.0, 1.9528268e1, -1.2286185, -1.0752178, -5.9086933e-1, -1.7256713e-1, -2.8131513e-2, -2.396337e-3,
        -8.3823321e-5,
      ],
    },
    {
      tMinC: 0,
      tMaxC: 760,
      emfMinMv: 0.0,
      emfMaxMv: 42.919,
      coefficients: [
        0.0, 1.978425e1, -2.001204e-1, 1.036969e-2, -2.549687e-4, 3.585153e-6, -5.344285e-8, 5.09989e-10, 0.0,
      ],
    },
    {
      tMinC: 760,
      tMaxC: 1200,
      emfMinMv: 42.919,
      emfMaxMv: 69.553,
      coefficients: [
        -3.11358187e3, 3.00543684e2, -9.9477323, 1.7027663e-1, -1.43033468e-3, 4.73886084e-6, 0.0, 0.0, 0.0,
      ],
    },
  ],
};
