import { emptySample, type Sample, type WireFault } from '../../../shared/thermometer/sample.ts';
import { button, counted, faultsOf, type Measured, measured, measuredWithin, probeName } from './values.ts';

/** The keys that a line's values go by, in whatever form the line is, and the sample that they make. */

export interface ProbeSample {
  readonly sample: Sample;
  /** The probe's name on its device. */
  readonly name: string;
  /** The device's own sequence number. */
  readonly seq: number | null;
}

/** The table of keys: how the value of each is read. */
export const readers = {
  p: probeName,
  n: (text: string) => counted(text, 0xffff),
  ms: (text: string) => counted(text, 0xffff_ffff),
  t: measured,
  uv: measured,
  cj: measured,
  g: (text: string) => measuredWithin(text, 0, Number.POSITIVE_INFINITY),
  b: button,
  ta: measured,
  rh: measured,
  f: faultsOf,
} as const;

type Readers = typeof readers;
export type Values = { readonly [K in keyof Readers]?: NonNullable<ReturnType<Readers[K]>> };

/** The sample of one probe, from the values that a line has for it. An emf comes with its cold junction. */
export function sampleOf(values: Values, deviceId: string): ProbeSample {
  const name = values.p ?? '1';
  const junction = values.uv === undefined ? hotJunction(values.t) : emf(values.uv, values.cj);
  const sample: Sample = {
    ...emptySample(`${deviceId}/${name}`),
    ...junction,
    faults: [...(values.f ?? []), ...(junction.faults ?? [])],
    deviceMs: values.ms ?? null,
    motionG: numberOf(values.g),
    button: values.b ?? null,
    airC: numberOf(values.ta),
    rhPct: numberOf(values.rh),
  };
  return { sample, name, seq: values.n ?? null };
}

/** A side value that is no number is one that the line did not carry: it is no fault of the thermocouple. */
const numberOf = (value: Measured | undefined): number | null => (typeof value === 'number' ? value : null);

const noNumber: { readonly faults: readonly WireFault[] } = { faults: ['not-a-number'] };

export function hotJunction(value: Measured | undefined): Partial<Sample> {
  if (value === 'not-a-number') return noNumber;
  return { tC: value ?? null };
}

/** Both or neither: an emf without its cold junction is no temperature. */
function emf(emfUv: Measured | undefined, coldJunctionC: Measured | undefined): Partial<Sample> {
  if (typeof emfUv !== 'number' || typeof coldJunctionC !== 'number') return noNumber;
  return { emfUv, coldJunctionC };
}
