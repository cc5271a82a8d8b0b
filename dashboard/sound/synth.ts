import { lengthS, type Note, type Pattern } from './patterns.ts';

/** Samples a second: enough for partials up to 4 kHz. */
export const SAMPLE_RATE = 24_000;

/**
 * One cycle of a pattern as samples from -1 to 1, the rest after its notes silent, so that it can be looped.
 * @param withRest false: ends with the last note
 */
export function samplesOf(pattern: Pattern, withRest = true): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.ceil((withRest ? pattern.cycleS : lengthS(pattern)) * SAMPLE_RATE));
  for (const note of pattern.notes) addNote(samples, note, pattern);
  const highest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return samples.map((sample) => (sample * pattern.peak) / highest);
}

function addNote(samples: Float32Array, { startS, lengthS, hz }: Note, pattern: Pattern): void {
  const first = Math.round(startS * SAMPLE_RATE);
  const count = Math.min(Math.floor(lengthS * SAMPLE_RATE), samples.length - first);
  for (let i = 0; i < count; i += 1) {
    const tS = i / SAMPLE_RATE;
    const wave = pattern.partials.reduce(
      (sum, { ratio, share }) => sum + share * Math.sin(2 * Math.PI * hz * ratio * tS),
      0,
    );
    const loudness = Math.min(1, tS / pattern.attackS, (lengthS - tS) / pattern.releaseS);
    samples[first + i] = (samples[first + i] ?? 0) + wave * loudness;
  }
}
