import { describe, expect, it } from 'vitest';
import { lengthS, patternNames, patterns } from '../../../../dashboard/sound/patterns.ts';
import { SAMPLE_RATE, samplesOf } from '../../../../dashboard/sound/synth.ts';

const alarms = ['act-now', 'act-soon', 'know'] as const;

const highest = (samples: Iterable<number>): number => {
  let most = 0;
  for (const sample of samples) most = Math.max(most, Math.abs(sample));
  return most;
};

/** Root mean square of a stretch. */
const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, s) => sum + s * s, 0) / Math.max(1, samples.length));

const loudest = (name: (typeof patternNames)[number]): number => rms(samplesOf(patterns[name], false));

/** Energy at one frequency, by a discrete Fourier sum: 1 for a full sine that fills the stretch. */
function at(hz: number, samples: Float32Array): number {
  let re = 0;
  let im = 0;
  for (const [i, sample] of samples.entries()) {
    const angle = (2 * Math.PI * hz * i) / SAMPLE_RATE;
    re += sample * Math.cos(angle);
    im += sample * Math.sin(angle);
  }
  return (2 * Math.hypot(re, im)) / samples.length;
}

describe.each(patternNames)('%s as samples', (name) => {
  const pattern = patterns[name];
  const samples = samplesOf(pattern);

  it('is as long as its cycle, so that a loop repeats it in time', () => {
    expect(samples.length).toBe(Math.ceil(pattern.cycleS * SAMPLE_RATE));
    expect(samplesOf(pattern, false).length).toBe(Math.ceil(lengthS(pattern) * SAMPLE_RATE));
    expect(lengthS(pattern)).toBeLessThan(pattern.cycleS);
  });

  it('reaches its peak and never clips', () => {
    expect(highest(samples)).toBeCloseTo(pattern.peak, 5);
    expect(pattern.peak).toBeLessThan(1);
  });

  it('begins and ends each note in silence, so that nothing clicks', () => {
    expect([samples[0], samples.at(-1)]).toEqual([0, 0]);
    const step = Math.floor(SAMPLE_RATE / 4000);
    for (const note of pattern.notes) {
      const from = Math.round(note.startS * SAMPLE_RATE);
      const to = from + Math.floor(note.lengthS * SAMPLE_RATE);
      const edges = [...samples.slice(from, from + step), ...samples.slice(to - step, to)];
      expect(highest(edges)).toBeLessThan(pattern.peak / 6);
    }
  });

  it('is loud in its notes and silent between them', () => {
    for (const note of pattern.notes) {
      const from = Math.round(note.startS * SAMPLE_RATE);
      const whole = samples.slice(from, from + Math.floor(note.lengthS * SAMPLE_RATE));
      expect(rms(whole)).toBeGreaterThan(pattern.peak / 8);
    }
    const rest = samples.slice(Math.ceil(lengthS(pattern) * SAMPLE_RATE));
    expect(highest(rest)).toBe(0);
  });
});

describe('alarms', () => {
  it.each(alarms)('%s has several partials, all from 1 to 4 kHz', (name) => {
    const pattern = patterns[name];
    for (const { startS, lengthS, hz } of pattern.notes) {
      const partials = pattern.partials.map(({ ratio }) => ratio * hz);
      expect(partials.length).toBeGreaterThanOrEqual(3);
      expect(Math.min(...partials)).toBeGreaterThanOrEqual(1000);
      expect(Math.max(...partials)).toBeLessThanOrEqual(4000);
      const from = Math.round(startS * SAMPLE_RATE);
      const note = samplesOf(pattern).slice(from, from + Math.floor(lengthS * SAMPLE_RATE));
      for (const partial of partials) expect(at(partial, note)).toBeGreaterThan(0.02);
      // Where the noise of a workshop is, they have next to nothing.
      expect(at(150, note)).toBeLessThan(0.01);
    }
  });

  it('differ in rhythm and in pitch, and the more urgent is denser', () => {
    const beats = alarms.map((name) => patterns[name].notes.length / patterns[name].cycleS);
    expect(beats).toEqual(beats.toSorted((a, b) => b - a));
    expect(new Set(beats.map((beat) => Math.round(beat * 10))).size).toBe(3);
    expect(new Set(alarms.map((name) => JSON.stringify(patterns[name].notes.map((n) => n.hz)))).size).toBe(3);
    const shares = alarms.map((name) => rms(samplesOf(patterns[name])));
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
  });

  it('never rise from first to last, as what may be ready does, and none is softer at its peak', () => {
    const rises = (name: (typeof patternNames)[number]): boolean => {
      const pitches = patterns[name].notes.map(({ hz }) => hz);
      return pitches.length > 1 && pitches.every((hz, i) => i === 0 || hz > (pitches[i - 1] ?? hz));
    };
    expect(patternNames.filter(rises)).toEqual(['ready']);
    expect(patterns.ready.peak).toBeLessThanOrEqual(patterns.know.peak);
    const partials = patterns.ready.notes.flatMap(({ hz }) =>
      patterns.ready.partials.map(({ ratio }) => ratio * hz),
    );
    expect(Math.min(...partials)).toBeGreaterThanOrEqual(1000);
    expect(Math.max(...partials)).toBeLessThanOrEqual(4000);
  });

  it('leave the tick far beneath', () => {
    for (const name of alarms) expect(loudest('tick')).toBeLessThan(loudest(name) / 3);
  });
});
