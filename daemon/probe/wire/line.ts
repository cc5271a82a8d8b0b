import { emptySample, type Sample, type WireFault } from '../../../shared/thermometer/sample.ts';
import type { RejectCause } from '../source.ts';
import { type CheckKind, splitChecksum } from './checksum.ts';
import { button, counted, faultsOf, type Measured, measured, measuredWithin, probeName } from './values.ts';

/** The longest line, without its line end. */
export const MAX_LINE = 256;

export interface SampleLine {
  readonly kind: 'sample';
  readonly sample: Sample;
  /** The probe's name on its device. */
  readonly name: string;
  /** The device's own sequence number. */
  readonly seq: number | null;
  readonly form: 'pairs' | 'bare';
  readonly check: CheckKind;
}

export interface HelloLine {
  readonly kind: 'hello';
  readonly hello: Readonly<Record<string, string>>;
  readonly check: CheckKind;
}

export type ParsedLine = SampleLine | HelloLine | { readonly kind: 'rejected'; readonly cause: RejectCause };

const rejected = (cause: RejectCause): ParsedLine => ({ kind: 'rejected', cause });

/** Either a value, or why there is none. */
type Read = Omit<SampleLine, 'check'> | RejectCause;

/**
 * One line as the protocol has it (firmware-notes/line-protocol.md), without its line end, a character a byte.
 * A value that can't be right refuses the line whole: half a line is never taken.
 */
export function parseLine(line: string, deviceId: string): ParsedLine {
  if (line.length > MAX_LINE) return rejected('too-long');
  if (!/^[ -~]*$/.test(line)) return rejected('not-ascii');
  const checked = splitChecksum(line);
  if (checked === null) return rejected('checksum');
  const { payload, check } = checked;
  const words = payload.split(' ').filter((word) => word !== '');
  const [only] = words;
  const bare = only !== undefined && words.length === 1 ? measured(only) : null;
  const read = bare === null ? readPairs(words, deviceId) : bareSample(bare, deviceId);
  if (typeof read === 'string') return rejected(read);
  return { ...read, check };
}

function bareSample(value: Measured, deviceId: string): Read {
  const sample = { ...emptySample(`${deviceId}/1`), ...hotJunction(value) };
  return { kind: 'sample', sample, name: '1', seq: null, form: 'bare' };
}

type Pairs = ReadonlyMap<string, string>;

function readPairs(words: readonly string[], deviceId: string): Read | Omit<HelloLine, 'check'> {
  const pairs = pairsOf(words);
  if (pairs === null) return 'malformed';
  if (![...pairs.keys()].some((key) => measuring.has(key))) {
    return helloKeys.some((key) => pairs.has(key))
      ? { kind: 'hello', hello: Object.fromEntries(pairs) }
      : 'incomplete';
  }
  if (pairs.has('uv') !== pairs.has('cj')) return 'incomplete';
  if (pairs.has('t') && pairs.has('uv')) return 'malformed';
  const values = readValues(pairs);
  return values === null ? 'bad-value' : sampleOf(values, deviceId);
}

const helloKeys = ['id', 'fw', 'probes'] as const;
/** A line without any of these says nothing about a probe. */
const measuring: ReadonlySet<string> = new Set(['t', 'uv', 'cj', 'g', 'b', 'ta', 'rh', 'f']);

function pairsOf(words: readonly string[]): Pairs | null {
  const pairs = new Map<string, string>();
  for (const word of words) {
    const [, key, value] = /^([A-Za-z][A-Za-z0-9_-]*)=(.*)$/.exec(word) ?? [];
    if (key === undefined || value === undefined || pairs.has(key)) return null;
    pairs.set(key, value);
  }
  return pairs.size > 0 ? pairs : null;
}

/** The table of keys: how the value of each is read. */
const readers = {
  p: probeName,
  n: (text: string) => counted(text, 0xffff),
  ms: (text: string) => counted(text, 0xffff_ffff),
  t: measured,
  uv: measured,
  cj: measured,
  g: (text: string) => measuredWithin(text, 0, Number.POSITIVE_INFINITY),
  b: button,
  ta: measured,
  rh: (text: string) => measuredWithin(text, 0, 100),
  f: faultsOf,
} as const;

type Readers = typeof readers;
type Values = { readonly [K in keyof Readers]?: NonNullable<ReturnType<Readers[K]>> };

/** Null where any value can't be right. Unknown keys are passed over: they are for others. */
function readValues(pairs: Pairs): Values | null {
  const values: Record<string, unknown> = {};
  for (const [key, read] of Object.entries(readers)) {
    const text = pairs.get(key);
    if (text === undefined) continue;
    const value = read(text);
    if (value === null) return null;
    values[key] = value;
  }
  return values;
}

function sampleOf(values: Values, deviceId: string): Read {
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
  return { kind: 'sample', sample, name, seq: values.n ?? null, form: 'pairs' };
}

/** A side value that is no number is one that the line did not carry: it is no fault of the thermocouple. */
const numberOf = (value: Measured | undefined): number | null => (typeof value === 'number' ? value : null);

const noNumber: { readonly faults: readonly WireFault[] } = { faults: ['not-a-number'] };

function hotJunction(value: Measured | undefined): Partial<Sample> {
  if (value === 'not-a-number') return noNumber;
  return { tC: value ?? null };
}

/** Both or neither: an emf without its cold junction is no temperature. */
function emf(emfUv: Measured | undefined, coldJunctionC: Measured | undefined): Partial<Sample> {
  if (typeof emfUv !== 'number' || typeof coldJunctionC !== 'number') return noNumber;
  return { emfUv, coldJunctionC };
}
