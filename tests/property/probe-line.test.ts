import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CheckKind, withChecksum } from '../../daemon/probe/wire/checksum.ts';
import { parseLine } from '../../daemon/probe/wire/line.ts';
import { emptySample, type Sample, type WireFault } from '../../shared/thermometer/sample.ts';

/** Numbers as devices print them. */
const decimal = (min: number, max: number): fc.Arbitrary<string> =>
  fc
    .tuple(fc.double({ min, max, noNaN: true }), fc.integer({ min: 0, max: 4 }))
    .map(([value, digits]) => value.toFixed(digits));

const optional = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(value, { nil: null });

const letterOf: Readonly<Record<WireFault, string>> = {
  open: 'o',
  'short-to-ground': 'g',
  'short-to-supply': 'v',
  'cold-junction': 'c',
  'not-a-number': '',
};

/** The text of each key that a line carries, with the sample that it must give. */
const written = fc
  .record({
    name: fc.stringMatching(/^[A-Za-z0-9_-]{1,16}$/),
    junction: fc.oneof(
      decimal(-300, 1800).map((t) => ({ t })),
      fc.record({ uv: decimal(-10_000, 80_000), cj: decimal(-40, 125) }),
    ),
    ms: optional(fc.integer({ min: 0, max: 0xffff_ffff })),
    n: optional(fc.integer({ min: 0, max: 0xffff })),
    g: optional(decimal(0, 16)),
    b: optional(fc.constantFrom(1 as const, 2 as const)),
    ta: optional(decimal(-40, 85)),
    rh: optional(decimal(-100, 300)),
    f: fc.uniqueArray(fc.constantFrom('open', 'short-to-ground', 'short-to-supply', 'cold-junction')),
    extra: optional(fc.stringMatching(/^[!-)+-~]{0,20}$/)),
  })
  .map((w) => {
    const f = w.f as readonly WireFault[];
    const pairs: Readonly<Record<string, string | number | null>> = {
      p: w.name,
      ...w.junction,
      ms: w.ms,
      n: w.n,
      g: w.g,
      b: w.b,
      ta: w.ta,
      rh: w.rh,
      f: f.length === 0 ? null : f.map((fault) => letterOf[fault]).join(''),
      extra: w.extra,
    };
    const sample: Sample = {
      ...emptySample(`dev/${w.name}`),
      tC: 't' in w.junction ? number(w.junction.t) : null,
      emfUv: 'uv' in w.junction ? number(w.junction.uv) : null,
      coldJunctionC: 'cj' in w.junction ? number(w.junction.cj) : null,
      deviceMs: w.ms,
      motionG: number(w.g),
      button: w.b,
      airC: number(w.ta),
      rhPct: number(w.rh),
      faults: f,
    };
    const words = Object.entries(pairs).flatMap(([key, value]) =>
      value === null ? [] : [`${key}=${value}`],
    );
    return { words, sample };
  });

/** As JSON would have it: without a negative nought. */
function number(text: string | null): number | null {
  return text === null ? null : Number(text) + 0;
}

const check = fc.constantFrom<CheckKind>('none', 'xor', 'crc');

describe('a line', () => {
  it('gives back what was written, in any order and with either checksum', () => {
    const shuffled = written.chain(({ words, sample }) =>
      fc.record({
        words: fc.shuffledSubarray(words, { minLength: words.length, maxLength: words.length }),
        sample: fc.constant(sample),
      }),
    );
    fc.assert(
      fc.property(shuffled, check, fc.integer({ min: 1, max: 3 }), ({ words, sample }, kind, spaces) => {
        const line = withChecksum(words.join(' '.repeat(spaces)), kind);
        expect(parseLine(line, 'dev')).toMatchObject({ kind: 'sample', check: kind, sample });
      }),
      { numRuns: 500 },
    );
  });

  it('never throws, and never yields a number that is none', () => {
    const key = fc.constantFrom('p', 'n', 'ms', 't', 'uv', 'cj', 'g', 'b', 'ta', 'rh', 'f');
    const almost = fc
      .array(
        fc.oneof(
          fc.tuple(key, fc.string({ maxLength: 8 })).map(([name, text]) => `${name}=${text}`),
          fc.tuple(key, decimal(-1e6, 1e6)).map(([name, text]) => `${name}=${text}`),
          fc.string({ maxLength: 8 }),
        ),
      )
      .map((words) => words.join(' '));
    fc.assert(
      fc.property(fc.oneof(almost, fc.string(), fc.string({ unit: 'binary' })), check, (text, kind) => {
        const parsed = parseLine(withChecksum(text, kind), 'dev');
        if (parsed.kind !== 'sample') return;
        const numbers = Object.values(parsed.sample).filter((value) => typeof value === 'number');
        expect(numbers.every(Number.isFinite)).toBe(true);
        expect(JSON.parse(JSON.stringify(parsed.sample))).toEqual(parsed.sample);
      }),
      { numRuns: 1000 },
    );
  });
});
