/** What each sound is: its rhythm and its pitches. Plain data; the choices are our own. */

export interface Note {
  readonly startS: number;
  readonly lengthS: number;
  readonly hz: number;
}

export interface Pattern {
  readonly notes: readonly Note[];
  /** From one beginning to the next while it is repeated, s. */
  readonly cycleS: number;
  /** What each note is made of: multiples of its pitch, each with its share. */
  readonly partials: readonly { readonly ratio: number; readonly share: number }[];
  /** Rise and fall of each note, s: without them it would click. */
  readonly attackS: number;
  readonly releaseS: number;
  /** Its highest sample, 0 to 1. */
  readonly peak: number;
}

export const patternNames = ['act-now', 'act-soon', 'know', 'ready', 'tick'] as const;
export type PatternName = (typeof patternNames)[number];
export type AlarmPattern = Exclude<PatternName, 'ready' | 'tick'>;
/** What is played once, or tried. */
export type OncePattern = Exclude<PatternName, 'tick'>;

/** A compressor's noise is mostly low (common practice, no source): alarms have several partials from 1 to 4 kHz. */
export const patterns: Readonly<Record<PatternName, Pattern>> = {
  /** Four quick notes up and down, over and over. */
  'act-now': {
    notes: [1320, 1760, 1320, 1760].map((hz, i) => ({ startS: i * 0.15, lengthS: 0.12, hz })),
    cycleS: 1.2,
    partials: [
      { ratio: 1, share: 1 },
      { ratio: 1.5, share: 0.6 },
      { ratio: 2, share: 0.6 },
    ],
    attackS: 0.008,
    releaseS: 0.03,
    peak: 0.95,
  },
  /** Two slower notes, falling. */
  'act-soon': {
    notes: [
      { startS: 0, lengthS: 0.26, hz: 1480 },
      { startS: 0.32, lengthS: 0.38, hz: 1110 },
    ],
    cycleS: 3,
    partials: [
      { ratio: 1, share: 1 },
      { ratio: 2, share: 0.5 },
      { ratio: 2.5, share: 0.3 },
    ],
    attackS: 0.02,
    releaseS: 0.12,
    peak: 0.85,
  },
  /** One soft note, seldom. */
  know: {
    notes: [{ startS: 0, lengthS: 0.5, hz: 1040 }],
    cycleS: 12,
    partials: [
      { ratio: 1, share: 1 },
      { ratio: 2, share: 0.35 },
      { ratio: 3, share: 0.2 },
    ],
    attackS: 0.03,
    releaseS: 0.4,
    peak: 0.6,
  },
  /** Three short notes that rise, once: no alarm rises. */
  ready: {
    notes: [1047, 1319, 1568].map((hz, i) => ({ startS: i * 0.18, lengthS: i === 2 ? 0.5 : 0.16, hz })),
    cycleS: 2,
    partials: [
      { ratio: 1, share: 1 },
      { ratio: 2, share: 0.25 },
    ],
    attackS: 0.015,
    releaseS: 0.12,
    peak: 0.6,
  },
  /** Barely there, while the plate is in its stage. */
  tick: {
    notes: [{ startS: 0, lengthS: 0.035, hz: 1250 }],
    cycleS: 2,
    partials: [{ ratio: 1, share: 1 }],
    attackS: 0.002,
    releaseS: 0.03,
    peak: 0.12,
  },
};

/** When the last note of a pattern has died away, s after its beginning. */
export const lengthS = ({ notes }: Pattern): number =>
  Math.max(...notes.map((note) => note.startS + note.lengthS));
