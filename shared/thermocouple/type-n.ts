import type { ReferenceFunctions } from './reference-functions.ts';

/** Type N, as published: NIST Monograph 175 (SRD 60), the same functions as IEC 60584-1. */
export const typeN: ReferenceFunctions = {
  forward: [
    {
      tMinC: -270,
      tMaxC: 0,
      coefficients: [
        0.0, 0.26159105962e-1, 0.10957484228e-4, -0.93841111554e-7, -0.46412039759e-10, -0.26303357716e-11,
        -0.22653438003e-13, -0.76089300791e-16, -0.93419667835e-19,
      ],
      exponential: null,
    },
    {
      tMinC: 0,
      tMaxC: 1300,
      coefficients: [
        0.0, 0.25929394601e-1, 0.1571014188e-4, 0.43825627237e-7, -0.25261169794e-9, 0.64311819339e-12,
        -0.10063471519e-14, 0.99745338992e-18, -0.60863245607e-21, 0.20849229339e-24, -0.30682196151e-28,
      ],
      exponential: null,
    },
  ],
  inverse: [
    {
      tMinC: -200,
      tMaxC: 0,
      emfMinMv: -3.99,
      emfMaxMv: 0.0,
      coefficients: [
        0.0, 3.8436847e1, 1.1010485, 5.2229312, 7.2060525, 5.8488586, 2.7754916, 7.7075166e-1, 1.1582665e-1,
        7.3138868e-3,
      ],
    },
    {
      tMinC: 0,
      tMaxC: 600,
      emfMinMv: 0.0,
      emfMaxMv: 20.613,
      coefficients: [
        0.0, 3.86896e1, -1.08267, 4.70205e-2, -2.12169e-6, -1.17272e-4, 5.3928e-6, -7.98156e-8, 0.0, 0.0,
      ],
    },
    {
      tMinC: 600,
      tMaxC: 1300,
      emfMinMv: 20.613,
      emfMaxMv: 47.513,
      coefficients: [
        1.972485e1, 3.300943e1, -3.915159e-1, 9.855391e-3, -1.274371e-4, 7.767022e-7, 0.0, 0.0, 0.0, 0.0,
      ],
    },
  ],
};
