import { describe, expect, it } from 'vitest';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { parseLine } from '../../../daemon/probe/wire/line.ts';
import { emptySample, type Sample } from '../../../shared/thermometer/sample.ts';

const parse = (line: string) => parseLine(line, 'dev');

/** The sample of a line, without the fields that it leaves empty. */
function carried(line: string): Partial<Sample> {
  const parsed = parse(line);
  if (parsed.kind !== 'sample') throw new Error(`${line}: ${JSON.stringify(parsed)}`);
  const entries = Object.entries(parsed.sample).filter(
    ([key, value]) => key !== 'probe' && value !== null && !(Array.isArray(value) && value.length === 0),
  );
  return Object.fromEntries(entries);
}

const cause = (line: string): string => {
  const parsed = parse(line);
  return parsed.kind === 'rejected' ? parsed.cause : parsed.kind;
};

describe('pairs', () => {
  it('carry every key of the table', () => {
    const line = 'p=tip n=65535 ms=4294967295 uv=6138 cj=24.5 g=0.02 b=2 ta=21.5 rh=44 f=c';
    expect(parse(line)).toEqual({
      kind: 'sample',
      name: 'tip',
      seq: 65_535,
      form: 'pairs',
      check: 'none',
      sample: {
        probe: 'dev/tip',
        tC: null,
        emfUv: 6138,
        coldJunctionC: 24.5,
        deviceMs: 4_294_967_295,
        motionG: 0.02,
        button: 2,
        airC: 21.5,
        rhPct: 44,
        faults: ['cold-junction'],
      },
    });
  });

  it('may come in any order, with any number of spaces, and with either checksum', () => {
    const expected = { tC: 150.25, deviceMs: 7 };
    for (const payload of ['t=150.25 ms=7 p=1', ' ms=7  p=1   t=150.25 ']) {
      for (const check of ['none', 'xor', 'crc'] as const) {
        expect(carried(withChecksum(payload, check))).toEqual(expected);
        expect(parse(withChecksum(payload, check))).toMatchObject({ check });
      }
    }
  });

  it('of a line without a name belong to probe 1', () => {
    expect(parse('t=1')).toMatchObject({ name: '1', seq: null, sample: { probe: 'dev/1' } });
  });

  it('of unknown keys are passed over, whatever their value', () => {
    expect(carried('t=20 T=99 vbat=3.7=x note=')).toEqual({ tC: 20 });
  });

  it.each([
    ['t=-12.50', { tC: -12.5 }],
    ['t=+3', { tC: 3 }],
    ['t=007.0', { tC: 7 }],
    ['t=-0.0', { tC: 0 }],
    ['ta=-5 rh=100', { airC: -5, rhPct: 100 }],
    // Whether air can be like that is for whoever listens to it: the plate in the same line is no worse for it.
    ['t=150 rh=134', { tC: 150, rhPct: 134 }],
    ['ta=-127 rh=-1', { airC: -127, rhPct: -1 }],
    ['g=0', { motionG: 0 }],
    ['b=1', { button: 1 }],
  ] as const)('%s reads as a number', (line, expected) => {
    expect(carried(line)).toEqual(expected);
  });

  it.each(['nan', 'NaN', '-nan', 'inf', 'INF', '-inf', '+Inf', 'infinity', 'ovf'])(
    't=%s is a fault, never a number',
    (text) => {
      expect(carried(`t=${text}`)).toEqual({ faults: ['not-a-number'] });
      expect(carried(text)).toEqual({ faults: ['not-a-number'] });
      expect(carried(`uv=${text} cj=20`)).toEqual({ faults: ['not-a-number'] });
      expect(carried(`uv=4000 cj=${text}`)).toEqual({ faults: ['not-a-number'] });
    },
  );

  it('of the side values that are no number are left out, and are no fault of the thermocouple', () => {
    expect(carried('t=150 ta=nan rh=nan g=nan')).toEqual({ tC: 150 });
  });

  it('give each fault letter its fault, in any order and once', () => {
    expect(carried('f=o')).toEqual({ faults: ['open'] });
    expect(carried('f=cvgo')).toEqual({
      faults: ['cold-junction', 'short-to-supply', 'short-to-ground', 'open'],
    });
    expect(carried('f=oo')).toEqual({ faults: ['open'] });
    expect(carried('t=nan f=o')).toEqual({ faults: ['open', 'not-a-number'] });
  });
});

describe('a bare number', () => {
  it('is the hot junction of probe 1, as the wire said it', () => {
    expect(parse('150.25')).toEqual({
      kind: 'sample',
      name: '1',
      seq: null,
      form: 'bare',
      check: 'none',
      sample: { ...emptySample('dev/1'), tC: 150.25 },
    });
    expect(carried(withChecksum('-3'))).toEqual({ tC: -3 });
  });
});

describe('a hello', () => {
  it('is what the device says of itself', () => {
    expect(parse(withChecksum('id=bench-7 fw=1.2 probes=2 rate=10'))).toEqual({
      kind: 'hello',
      check: 'xor',
      hello: { id: 'bench-7', fw: '1.2', probes: '2', rate: '10' },
    });
  });

  it('with a measurement is a sample', () => {
    expect(carried('id=bench-7 t=20')).toEqual({ tC: 20 });
  });
});

describe('a line is refused', () => {
  it.each([
    ['too-long', `t=1 x=${'9'.repeat(251)}`],
    ['not-ascii', 't=150\u00b0'],
    ['not-ascii', 't=150\t'],
    ['not-ascii', 't=1\u00005'],
    ['checksum', 't=150.2*00'],
    ['checksum', 't=150.2*'],
    ['malformed', ''],
    ['malformed', '   '],
    ['malformed', withChecksum('')],
    ['malformed', 'hello world'],
    ['malformed', 't'],
    ['malformed', '=150'],
    ['malformed', 't = 150'],
    ['malformed', 't=150 t=150'],
    ['malformed', 'x=1 t=150 x=2'],
    ['malformed', 't=150 20'],
    ['malformed', '150 20'],
    ['malformed', 't=150 uv=6000 cj=20'],
    ['incomplete', 'uv=6000'],
    ['incomplete', 'cj=20'],
    ['incomplete', 't=150 cj=20'],
    ['incomplete', 'p=1 n=5 ms=7'],
    ['incomplete', 'mode=run'],
    ['bad-value', 't='],
    ['bad-value', 't=150,2'],
    ['bad-value', 't=1e3'],
    ['bad-value', 't=0x10'],
    ['bad-value', 't=.5'],
    ['bad-value', 't=5.'],
    ['bad-value', 't=1.2.3'],
    ['bad-value', 't=--1'],
    ['bad-value', 't=open'],
    ['bad-value', 't=150 n=65536'],
    ['bad-value', 't=150 n=-1'],
    ['bad-value', 't=150 n=1.0'],
    ['bad-value', 't=150 n=nan'],
    ['bad-value', 't=150 ms=4294967296'],
    ['bad-value', 't=150 ms=99999999999999999999'],
    ['bad-value', 't=150 rh=wet'],
    ['bad-value', 't=150 g=-0.1'],
    ['bad-value', 't=150 b=0'],
    ['bad-value', 't=150 b=3'],
    ['bad-value', 't=150 f='],
    ['bad-value', 't=150 f=ox'],
    ['bad-value', 't=150 p='],
    ['bad-value', 't=150 p=a/b'],
    ['bad-value', `t=150 p=${'a'.repeat(17)}`],
  ])('as %s: %j', (expected, line) => {
    expect(cause(line)).toBe(expected);
  });

  it('at 257 characters, and not at 256', () => {
    expect(cause(`t=1 x=${'9'.repeat(250)}`)).toBe('sample');
  });
});
