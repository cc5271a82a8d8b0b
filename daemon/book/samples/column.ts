import { BlockDamaged, type ByteReader, type ByteWriter, signedLength } from './bytes.ts';

/**
 * One column of numbers, kept exactly. Most of what a wire says is decimal text, so a column is held as whole numbers
 * of its last decimal, as differences, where every value comes back exactly from that; else as doubles.
 *
 * First byte: bits 0-1 the form, bits 2-5 the decimals, bit 6 set where a bitmap of the values that are there follows
 * (a bit a value, the lowest first; the others are null).
 */
const forms = ['doubles', 'differences', 'second-differences', 'steady'] as const;
type Form = (typeof forms)[number];

const MOST_DECIMALS = 9;
/** Keeps second differences of whole numbers exact, doubled for their sign. */
const LARGEST_WHOLE = 2 ** 50 - 1;
const HAS_NULLS = 0x40;

/** Writes a column; at least one of its values must not be null. */
export function writeColumn(out: ByteWriter, values: readonly (number | null)[]): void {
  const there = values.filter((v) => v !== null);
  const decimals = decimalsOf(there);
  const scaled = decimals === null ? null : inWholes(there, decimals);
  const form = scaled === null ? 'doubles' : shortestForm(scaled);
  const nulls = there.length < values.length;
  out.byte(forms.indexOf(form) | ((scaled === null ? 0 : (decimals ?? 0)) << 2) | (nulls ? HAS_NULLS : 0));
  if (nulls) writeBitmap(out, values);
  if (scaled === null) for (const value of there) out.float64(value);
  else writeWholes(out, scaled, form);
}

/** Reads a column of `count` values. Throws `BlockDamaged`. */
export function readColumn(source: ByteReader, count: number): (number | null)[] {
  const head = source.byte();
  const form = forms[head & 3] ?? 'doubles';
  const decimals = (head >> 2) & 0xf;
  if (head > 0x7f || decimals > MOST_DECIMALS) throw new BlockDamaged('an unknown kind of column');
  const there = (head & HAS_NULLS) === 0 ? null : readBitmap(source, count);
  const size = there === null ? count : there.filter(Boolean).length;
  const values =
    form === 'doubles'
      ? Array.from({ length: size }, () => source.float64())
      : readWholes(source, size, form).map((n) => n / 10 ** decimals);
  return there === null ? values : spread(values, there);
}

/** How many decimals hold every value exactly; null where none do. */
function decimalsOf(values: readonly number[]): number | null {
  let decimals = 0;
  for (const value of values) {
    while (!isExact(value, decimals)) if (++decimals > MOST_DECIMALS) return null;
  }
  return decimals;
}

/**
 * A decimal of at most fifteen digits is the double nearest to it, and so is the quotient of its whole number and a
 * power of ten (IEEE 754: division rounds correctly); any other double fails this comparison. -0 fails it too.
 */
function isExact(value: number, decimals: number): boolean {
  const scaled = Math.round(value * 10 ** decimals);
  return (
    Math.abs(scaled) <= LARGEST_WHOLE && Object.is(scaled / 10 ** decimals, value) && !Object.is(scaled, -0)
  );
}

function inWholes(values: readonly number[], decimals: number): number[] | null {
  if (!values.every((v) => isExact(v, decimals))) return null;
  return values.map((v) => Math.round(v * 10 ** decimals));
}

const differences = (values: readonly number[]): number[] =>
  values.slice(1).map((v, i) => v - (values[i] ?? 0));

function shortestForm(wholes: readonly number[]): Form {
  const first = differences(wholes);
  const second = differences(first);
  if (second.every((d) => d === 0)) return 'steady';
  const secondLength = length(second) + signedLength(first[0] ?? 0);
  return secondLength < length(first) ? 'second-differences' : 'differences';
}

const length = (deltas: readonly number[]): number => deltas.reduce((sum, d) => sum + signedLength(d), 0);

function writeWholes(out: ByteWriter, wholes: readonly number[], form: Form): void {
  const first = differences(wholes);
  out.signed(wholes[0] ?? 0);
  if (form === 'differences') for (const d of first) out.signed(d);
  else if (first[0] !== undefined) out.signed(first[0]);
  if (form === 'second-differences') for (const d of differences(first)) out.signed(d);
}

function readWholes(source: ByteReader, count: number, form: Form): number[] {
  const wholes: number[] = [];
  let value = 0;
  let step = 0;
  for (let i = 0; i < count; i++) {
    if (i === 0) value = source.signed();
    else {
      if (i === 1 || form === 'differences') step = source.signed();
      else if (form === 'second-differences') step += source.signed();
      value += step;
    }
    wholes.push(value);
  }
  return wholes;
}

function writeBitmap(out: ByteWriter, values: readonly (number | null)[]): void {
  for (let from = 0; from < values.length; from += 8) {
    let bits = 0;
    for (let i = 0; i < 8; i++) if ((values[from + i] ?? null) !== null) bits |= 1 << i;
    out.byte(bits);
  }
}

function readBitmap(source: ByteReader, count: number): boolean[] {
  const bytes = source.bytes(Math.ceil(count / 8));
  return Array.from({ length: count }, (_, i) => (((bytes[i >> 3] ?? 0) >> (i & 7)) & 1) === 1);
}

function spread(values: readonly number[], there: readonly boolean[]): (number | null)[] {
  let next = 0;
  return there.map((is) => (is ? (values[next++] ?? null) : null));
}
