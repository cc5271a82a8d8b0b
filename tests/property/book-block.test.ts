import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeBlock, encodeBlock, type SampleEntry } from '../../daemon/book/samples/block.ts';
import { BlockDamaged, ByteReader, ByteWriter } from '../../daemon/book/samples/bytes.ts';
import { readColumn, writeColumn } from '../../daemon/book/samples/column.ts';
import type { Sample, WireFault } from '../../shared/thermometer/sample.ts';

const faults: WireFault[] = ['open', 'short-to-ground', 'short-to-supply', 'cold-junction', 'not-a-number'];

/** Any double at all, and often what a wire says: whole numbers and decimals. */
const anyNumber = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, Number.MAX_VALUE, -Number.MAX_VALUE, Number.MIN_VALUE, 2 ** 53, -(2 ** 50), 2 ** 32),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY),
  fc.integer(),
  fc.maxSafeInteger(),
  decimal(),
);

function decimal(): fc.Arbitrary<number> {
  return fc
    .tuple(fc.integer({ min: -400_000, max: 400_000 }), fc.nat({ max: 9 }))
    .map(([n, decimals]) => Number(`${n}e-${decimals}`));
}

const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(value, { freq: 3 });
const probe = fc.oneof(
  fc.constantFrom('usb-0001/heel', 'usb-0001/toe', 'usb-0002/1'),
  fc.string({ unit: 'binary' }),
  // Half of a surrogate pair is a text too, though it has no UTF-8.
  fc.constantFrom('\ud800', 'board"\\/\udfff', ''),
);

const anySample: fc.Arbitrary<Sample> = fc.record(
  {
    probe,
    tC: maybe(anyNumber),
    emfUv: maybe(anyNumber),
    coldJunctionC: maybe(anyNumber),
    deviceMs: maybe(anyNumber),
    motionG: maybe(anyNumber),
    button: fc.constantFrom(null, 1, 2),
    airC: maybe(anyNumber),
    rhPct: maybe(anyNumber),
    faults: fc.oneof(
      { weight: 4, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.array(fc.constantFrom(...faults)) },
    ),
  },
  { noNullPrototype: true },
);

const rising = (count: number) =>
  fc
    .array(fc.integer({ min: 1, max: 1000 }), { minLength: count, maxLength: count })
    .map((steps) => steps.map((_, i) => steps.slice(0, i + 1).reduce((a, b) => a + b, 0)));

const anyEntries: fc.Arbitrary<SampleEntry[]> = fc
  .array(
    fc.tuple(
      anySample,
      anyNumber.filter((n) => !Number.isNaN(n)),
    ),
    { maxLength: 60 },
  )
  .chain((list) =>
    rising(list.length).map((seqs) => list.map(([sample, tMs], i) => ({ seq: seqs[i] ?? 0, tMs, sample }))),
  );

describe('a block of samples', () => {
  it('gives back every value and the order exactly', () => {
    fc.assert(
      fc.property(anyEntries, (entries) => {
        expect(decodeBlock(encodeBlock(entries))).toStrictEqual(entries);
      }),
      { numRuns: 2000 },
    );
  });

  it('is the same bytes for the same samples', () => {
    fc.assert(
      fc.property(anyEntries, (entries) => {
        const bytes = encodeBlock(entries);
        expect(encodeBlock(decodeBlock(bytes))).toStrictEqual(bytes);
      }),
    );
  });

  it('refuses samples whose sequence numbers do not rise', () => {
    fc.assert(
      fc.property(
        anyEntries.filter((e) => e.length > 1),
        fc.nat(),
        (entries, at) => {
          const i = 1 + (at % (entries.length - 1));
          const broken = entries.map((e, j) => (j === i ? { ...e, seq: entries[i - 1]?.seq ?? 0 } : e));
          expect(() => encodeBlock(broken)).toThrow(RangeError);
        },
      ),
    );
  });

  it('never takes garbled bytes for anything but damage or samples', () => {
    const garbled = fc.oneof(
      fc.uint8Array({ maxLength: 200 }),
      fc.uint8Array({ maxLength: 60 }).map((rest) => Uint8Array.of(1, 1, 0, 4, 34, 97, 98, 34, ...rest)),
      fc.tuple(anyEntries, fc.nat(), fc.nat({ max: 255 })).map(([entries, at, value]) => {
        const bytes = encodeBlock(entries);
        bytes[at % Math.max(1, bytes.length)] = value;
        return bytes;
      }),
      fc.tuple(anyEntries, fc.nat()).map(([entries, at]) => {
        const bytes = encodeBlock(entries);
        return bytes.subarray(0, at % Math.max(1, bytes.length));
      }),
    );
    fc.assert(
      fc.property(garbled, (bytes) => {
        try {
          expect(Array.isArray(decodeBlock(bytes))).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(BlockDamaged);
        }
      }),
      { numRuns: 5000 },
    );
  });
});

const roundTrip = (values: (number | null)[]): (number | null)[] => {
  const out = new ByteWriter();
  writeColumn(out, values);
  const source = new ByteReader(out.done());
  const read = readColumn(source, values.length);
  expect(source.left).toBe(0);
  return read;
};

describe('a column', () => {
  it('holds numbers of one number of decimals exactly', () => {
    const column = fc.nat({ max: 9 }).chain((decimals) =>
      fc.array(
        fc.maxSafeInteger().map((n) => Number(`${Math.trunc(n / 2 ** 4)}e-${decimals}`)),
        { minLength: 1, maxLength: 40 },
      ),
    );
    fc.assert(
      fc.property(column, (values) => {
        expect(roundTrip(values)).toStrictEqual(values);
      }),
      { numRuns: 2000 },
    );
  });

  it('keeps the sign of zero', () => {
    const read = roundTrip([0, -0, 1.5, null]);
    expect(read.map((v) => Object.is(v, -0))).toEqual([false, true, false, false]);
  });
});
