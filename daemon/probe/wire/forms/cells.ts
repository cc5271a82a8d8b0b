import type { ColumnKey } from '../../../../shared/messages/line-form.ts';
import { lineRejectedWords } from '../../../../shared/words/line-forms.ts';
import { type CheckKind, crc16, xor8 } from '../checksum.ts';
import { type ProbeSample, sampleOf, type Values } from '../keys.ts';
import { MAX_LINE, type RejectedLine } from '../line.ts';
import type { RejectCause } from '../reject.ts';
import { button, counted, measured, measuredWithin } from '../values.ts';

/** What columns and patterns have in common: a line's frame, and the value that a piece of its text is. */

export const rejected = (cause: RejectCause, why = ''): RejectedLine =>
  why === '' ? { kind: 'rejected', cause } : { kind: 'rejected', cause, why };

interface Framed {
  readonly kind: 'framed';
  readonly payload: string;
  readonly check: CheckKind;
}

/** Printable text, tabs, and bytes of other alphabets; no control characters, which are what a wrong baud rate gives. */
const text = /^[\t -~\x80-\xff]*$/;
const ending = /^(.*)\*([0-9A-Fa-f]{2}|[0-9A-Fa-f]{4})$/;

/** A line without its checksum, if it ends in one. Here `*` may stand anywhere else. */
export function framed(line: string): Framed | RejectedLine {
  if (line.length > MAX_LINE) return rejected('too-long');
  if (!text.test(line)) return rejected('not-ascii');
  const [, payload, hex] = ending.exec(line) ?? [];
  if (payload === undefined || hex === undefined) return { kind: 'framed', payload: line, check: 'none' };
  const check = hex.length === 2 ? 'xor' : 'crc';
  const sum = check === 'xor' ? xor8(payload) : crc16(payload);
  return sum === Number.parseInt(hex, 16) ? { kind: 'framed', payload, check } : rejected('checksum');
}

/** A value, `none` where the line does not carry one, or null where the text can't be one. */
type Cell = Values[ColumnKey] | 'none' | null;

/** Boards of others count on where ours wrap, and say with 0 that no button was pressed. */
const readers: Readonly<Record<ColumnKey, (text: string) => Cell>> = {
  t: measured,
  uv: measured,
  cj: measured,
  ms: (text) => counted(text, 0xffff_ffff),
  n: (text) => {
    const n = counted(text, 0xffff_ffff);
    return n === null ? null : n % 0x10000;
  },
  g: (text) => measuredWithin(text, 0, Number.POSITIVE_INFINITY),
  b: (text) => (text === '0' ? 'none' : button(text)),
  ta: measured,
  rh: measured,
};

const junction: ReadonlySet<ColumnKey> = new Set(['t', 'uv', 'cj']);

/** Nothing where a number of the thermocouple should stand is a fault of it; elsewhere it is just not there. */
export function cell(key: ColumnKey, text: string): Cell {
  if (text === '') return junction.has(key) ? 'not-a-number' : 'none';
  return readers[key](text);
}

/** One probe's sample from its values, or why there is none. */
export function probeSample(values: Values, deviceId: string): ProbeSample | RejectedLine {
  if (values.t !== undefined && values.uv !== undefined) return rejected('malformed', lineRejectedWords.both);
  if ((values.uv === undefined) !== (values.cj === undefined))
    return rejected('incomplete', lineRejectedWords.incomplete);
  return sampleOf(values, deviceId);
}

/** A line without any of these says nothing about a probe. */
export const measuring: ReadonlySet<string> = new Set<ColumnKey>(['t', 'uv', 'g', 'b', 'ta', 'rh']);
