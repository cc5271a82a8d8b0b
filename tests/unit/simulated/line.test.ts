import { describe, expect, it } from 'vitest';
import { damaged, emfWords, helloLine, sampleLine, tWords } from '../../../daemon/probe/simulated/line.ts';
import { parseLine } from '../../../daemon/probe/wire/line.ts';

const words = { probe: '1', n: 7, ms: 700, heat: tWords('150.25'), motionG: 0.0204 };

describe('a simulated line', () => {
  it('is the wire form with its checksum', () => {
    expect(sampleLine(words)).toMatch(/^p=1 n=7 ms=700 t=150\.25 g=0\.020\*[0-9A-F]{2}$/);
    expect(parseLine(sampleLine(words), 'simulated')).toMatchObject({
      kind: 'sample',
      check: 'xor',
      seq: 7,
      sample: { probe: 'simulated/1', tC: 150.25, motionG: 0.02, deviceMs: 700, faults: [] },
    });
  });

  it('says an open junction by its letter and no temperature', () => {
    expect(parseLine(sampleLine({ ...words, heat: null }), 'simulated')).toMatchObject({
      kind: 'sample',
      sample: { tC: null, faults: ['open'] },
    });
  });

  it('carries the emf of a thermocouple with its cold junction, and the other sign with its wires swapped', () => {
    const emf = { type: 'K', reversed: false, coldJunctionC: 24.5 } as const;
    const said = parseLine(sampleLine({ ...words, heat: emfWords(150, emf) }), 'simulated');
    // NIST's table of type K has 6.138 mV at 150 degC, and 0.960 and 1.000 mV at 24 and 25 degC: 0.980 between them.
    expect(said).toMatchObject({ kind: 'sample', sample: { tC: null, coldJunctionC: 24.5 } });
    if (said.kind === 'sample') expect(Math.abs((said.sample.emfUv ?? 0) - (6138 - 980))).toBeLessThan(1.5);
    const swapped = emfWords(150, { ...emf, reversed: true });
    expect(swapped).toBe(emfWords(150, emf)?.replace('uv=', 'uv=-'));
    expect(emfWords(5000, emf)).toBeNull();
  });

  it('has no motion without a motion sensor', () => {
    expect(parseLine(sampleLine({ ...words, motionG: null }), 'simulated')).toMatchObject({
      sample: { motionG: null },
    });
  });

  it('wraps its number at 65536 and its clock at 2^32 ms', () => {
    expect(sampleLine({ ...words, n: 65_536 + 3, ms: 2 ** 32 + 9 })).toContain('n=3 ms=9 ');
  });

  it('says hello when the board starts', () => {
    expect(parseLine(helloLine('1'), 'simulated')).toMatchObject({ kind: 'hello', hello: { probes: '1' } });
  });
});

describe('a damaged line', () => {
  const line = sampleLine(words);
  const broken = (count: number): readonly string[] => {
    let seed = 1;
    return Array.from({ length: count }, () => {
      const result = damaged(line, seed);
      seed = result.seed;
      return result.line;
    });
  };

  it('is never taken for a good one with a checksum, unless it says the same', () => {
    const good = parseLine(line, 'simulated');
    for (const text of broken(20_000)) {
      const parsed = parseLine(text, 'simulated');
      if (parsed.kind === 'sample' && parsed.check !== 'none') expect(parsed).toEqual(good);
    }
  });

  it('comes in every kind: shorter, of the same length, with bytes that are not text', () => {
    const texts = broken(500);
    expect(texts.some((text) => text.length === line.length - 1)).toBe(true);
    expect(texts.some((text) => text.length === line.length && !text.includes('\u00ff'))).toBe(true);
    expect(texts.some((text) => text.endsWith('\u00ff'))).toBe(true);
  });

  it('holds no line end and no character beyond a byte', () => {
    for (const text of broken(20_000)) {
      expect(text).not.toMatch(/[\r\n]/);
      expect(Buffer.from(text, 'latin1').toString('latin1')).toBe(text);
    }
  });
});
