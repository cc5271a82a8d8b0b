import { emfUv } from '../../../shared/thermocouple/thermocouple.ts';
import { withChecksum } from '../wire/checksum.ts';
import type { EmfTraits } from './irons.ts';
import { type Seed, uniform } from './random.ts';

/** The wire's lines as a board writes them, latin1, without their line end. */

/** What a board says when it has started. */
export const helloLine = (probe: string): string => withChecksum(`id=demo-iron fw=1 probes=${probe}`);

export interface SampleWords {
  readonly probe: string;
  readonly n: number;
  readonly ms: number;
  /** What is said of the hot junction: `tWords` or `emfWords`; null: it is open. */
  readonly heat: string | null;
  /** Motion in g; null: no motion sensor. */
  readonly motionG: number | null;
}

/** A temperature that the board made itself, degC as text. */
export const tWords = (tC: string): string => `t=${tC}`;

/** The emf at the board's terminals with its cold junction; swapped wires turn its sign round. */
export function emfWords(tC: number, { type, reversed, coldJunctionC }: EmfTraits): string | null {
  const hotUv = emfUv(type, tC);
  const coldUv = emfUv(type, coldJunctionC);
  if (hotUv === null || coldUv === null) return null;
  const terminalUv = (hotUv - coldUv) * (reversed ? -1 : 1);
  return `uv=${terminalUv.toFixed(1)} cj=${coldJunctionC.toFixed(2)}`;
}

/** One sample as a line with its checksum; sequence number and device clock wrap as the wire's do. */
export function sampleLine(words: SampleWords): string {
  const heat = words.heat ?? 'f=o';
  const motion = words.motionG === null ? '' : ` g=${words.motionG.toFixed(3)}`;
  return withChecksum(`p=${words.probe} n=${words.n % 65_536} ms=${words.ms % 2 ** 32} ${heat}${motion}`);
}

/** What the board's air sensor tells of the room. */
export const airLine = (airC: number, rhPct: number): string =>
  withChecksum(`p=air ta=${airC.toFixed(1)} rh=${rhPct.toFixed(1)}`);

/**
 * The line as bad wiring delivers it: one byte lost, one byte changed, or a burst of noise in place of its end. The
 * first two always break the checksum while the `*` stands.
 */
export function damaged(line: string, seed: Seed): { readonly line: string; readonly seed: Seed } {
  const how = uniform(seed);
  const where = uniform(how.seed);
  const what = uniform(where.seed);
  const at = Math.floor(where.value * line.length);
  const byte = noiseByte(line.charCodeAt(at), what.value);
  if (how.value < 0.4) return { line: line.slice(0, at) + line.slice(at + 1), seed: what.seed };
  if (how.value < 0.8) return { line: line.slice(0, at) + byte + line.slice(at + 1), seed: what.seed };
  return { line: line.slice(0, at) + byte.repeat(3) + '\u00ff', seed: what.seed };
}

/** A byte other than `not`, never a line end. */
function noiseByte(not: number, fraction: number): string {
  const code = Math.floor(fraction * 256);
  return String.fromCharCode(code === not || code === 0x0a || code === 0x0d ? not ^ 0x80 : code);
}
