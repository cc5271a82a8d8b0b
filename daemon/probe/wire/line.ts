import { emptySample } from '../../../shared/thermometer/sample.ts';
import { type CheckKind, splitChecksum } from './checksum.ts';
import { hotJunction, type ProbeSample, readers, sampleOf, type Values } from './keys.ts';
import type { RejectCause } from './reject.ts';
import { type Measured, measured } from './values.ts';

/** The longest line, without its line end. */
export const MAX_LINE = 256;

export interface SampleLine extends ProbeSample {
  readonly kind: 'sample';
  readonly form: 'pairs' | 'bare' | 'columns' | 'pattern';
  readonly check: CheckKind;
  /** Samples of further probes in the same line: only columns have them. */
  readonly others?: readonly ProbeSample[];
}

export interface HelloLine {
  readonly kind: 'hello';
  readonly hello: Readonly<Record<string, string>>;
  readonly check: CheckKind;
}

export interface RejectedLine {
  readonly kind: 'rejected';
  readonly cause: RejectCause;
  /** What of the line was wrong, for whoever sets a form up; left out where the cause says it all. */
  readonly why?: string;
}

export type ParsedLine = SampleLine | HelloLine | RejectedLine;

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
  if (values === null) return 'bad-value';
  return { kind: 'sample', ...sampleOf(values, deviceId), form: 'pairs' };
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
