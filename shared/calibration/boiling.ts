import { ABSOLUTE_ZERO_C } from '../units/temperature.ts';

/**
 * Where pure water boils: the saturation line of IAPWS-IF97, region 4 (IAPWS R7-97(2012), equations 29 to 31), whose
 * coefficients these are. Within 0.01 K of the full equation of state anywhere that people boil water.
 */
const N1 = 0.11670521452767e4;
const N2 = -0.72421316703206e6;
const N3 = -0.17073846940092e2;
const N4 = 0.1202082470247e5;
const N5 = -0.32325550322333e7;
const N6 = 0.1491510861353e2;
const N7 = -0.48232657361591e4;
const N8 = 0.40511340542057e6;
const N9 = -0.23855557567849;
const N10 = 0.65017534844798e3;

const HPA_PER_MPA = 1e4;
/** The line ends at the critical point (IAPWS): 647.096 K, 22.064 MPa. */
const CRITICAL_K = 647.096;
const CRITICAL_HPA = 22.064 * HPA_PER_MPA;

/**
 * The pressure, hPa, at which water boils at `tC`, degC: from 0 degC to the critical point at 373.946 degC.
 * Null outside of that and for NaN.
 */
export function saturationPressureHpa(tC: number): number | null {
  const tK = tC - ABSOLUTE_ZERO_C;
  return tC >= 0 && tK <= CRITICAL_K ? pressureHpa(tK) : null;
}

/**
 * The temperature, degC, at which water boils under `hPa`: the exact inverse of `saturationPressureHpa`, from 6.11 hPa
 * to the critical pressure. Null outside of that and for NaN.
 */
export function boilingPointC(hPa: number): number | null {
  if (!(hPa >= LOWEST_HPA && hPa <= CRITICAL_HPA)) return null;
  const beta = (hPa / HPA_PER_MPA) ** 0.25;
  const e = beta * beta + N3 * beta + N6;
  const f = N1 * beta * beta + N4 * beta + N7;
  const g = N2 * beta * beta + N5 * beta + N8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const sum = N10 + d;
  return (sum - Math.sqrt(sum * sum - 4 * (N9 + N10 * d))) / 2 + ABSOLUTE_ZERO_C;
}

function pressureHpa(tK: number): number {
  const theta = tK + N9 / (tK - N10);
  const a = theta * theta + N1 * theta + N2;
  const b = N3 * theta * theta + N4 * theta + N5;
  const c = N6 * theta * theta + N7 * theta + N8;
  return ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4 * HPA_PER_MPA;
}

const LOWEST_HPA = pressureHpa(-ABSOLUTE_ZERO_C);
