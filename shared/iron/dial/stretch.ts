import type { TimedCycle } from './figures.ts';
import { type DialFigures, figuresOf, type HeatedUp, meanOf, spreadOf } from './figures.ts';
import type { DialMark } from './mark.ts';

/** A stretch of time in which the iron sits on its rest with its dial at one mark. */
export interface Stretch {
  readonly mark: DialMark;
  readonly fromMs: number;
  readonly heatedUp: HeatedUp | null;
  /** Whether its first whole cycle has passed: it still bears the warm-up or the work, and is left out. */
  readonly settled: boolean;
  /** The last ones after that, oldest first. */
  readonly cycles: readonly TimedCycle[];
  /** How many there were in all, and how many when it was last told of. */
  readonly count: number;
  readonly told: number;
  /** Cycles in a row that were unlike those before, on the same side: above 0 hotter, below 0 colder. */
  readonly unlike: number;
}

/** What a stretch has given. Told of again as it goes on: the same `fromMs` and probe is the same stretch. */
export interface StretchFound {
  readonly mark: DialMark;
  readonly fromMs: number;
  readonly toMs: number;
  readonly figures: DialFigures;
  /** What they rest on, oldest first. */
  readonly cycles: readonly TimedCycle[];
}

/** Fewer cycles than this give no figures (our own choice: the least that have a spread worth the name). */
export const ENOUGH_CYCLES = 3;
const KEEP_CYCLES = 16;
/** A stretch that goes on is told of again after so many more. */
const TELL_EVERY = 5;
/** A cycle this far from those before, K and in their standard deviations, is unlike them (our own choice). */
const UNLIKE_MEAN_K = 4;
const UNLIKE_TURN_K = 8;
const UNLIKE_SPREADS = 3;
/** So many in a row mean that the dial was turned, or the iron used, without a word. */
const UNLIKE_CYCLES = 2;

export const beginStretch = (mark: DialMark, fromMs: number): Stretch => ({
  mark,
  fromMs,
  heatedUp: null,
  settled: false,
  cycles: [],
  count: 0,
  told: 0,
  unlike: 0,
});

/** Takes one more whole cycle in; one that began before the stretch is none of its own. */
export function addCycle(stretch: Stretch, cycle: TimedCycle): Stretch {
  if (cycle.fromMs < stretch.fromMs) return stretch;
  if (!stretch.settled) return { ...stretch, settled: true };
  const side = sideOf(cycle, stretch.cycles);
  if (side !== 0)
    return { ...stretch, unlike: Math.sign(stretch.unlike) === side ? stretch.unlike + side : side };
  const cycles = [...stretch.cycles, cycle].slice(-KEEP_CYCLES);
  return { ...stretch, cycles, count: stretch.count + 1, unlike: 0 };
}

/** Whether a cycle is unlike those before it: 1 hotter, -1 colder, 0 alike or not to be told. */
function sideOf(cycle: TimedCycle, before: readonly TimedCycle[]): -1 | 0 | 1 {
  if (before.length < ENOUGH_CYCLES) return 0;
  const offK = (of: (c: TimedCycle) => number, leastK: number): number => {
    const values = before.map(of);
    const byK = of(cycle) - meanOf(values);
    return Math.abs(byK) > Math.max(leastK, UNLIKE_SPREADS * (spreadOf(values) ?? 0)) ? byK : 0;
  };
  const byK =
    offK((c) => c.meanC, UNLIKE_MEAN_K) ||
    offK((c) => c.troughC, UNLIKE_TURN_K) ||
    offK((c) => c.peakC, UNLIKE_TURN_K);
  return byK === 0 ? 0 : byK > 0 ? 1 : -1;
}

/** The mark can't be right any more: the iron does something else than it did. */
export const isUnlike = ({ unlike }: Stretch): boolean => Math.abs(unlike) >= UNLIKE_CYCLES;

/** What it has given so far, where it has not been told yet; at its end also what is little. */
export function untold(stretch: Stretch, ended: boolean): StretchFound | null {
  const { mark, fromMs, cycles, count, told, heatedUp } = stretch;
  const due = ended ? told + 1 : told === 0 ? ENOUGH_CYCLES : told + TELL_EVERY;
  // Asked at every reading, and as a rule there is nothing to tell: the figures are worked out only then.
  if (count < Math.max(due, ENOUGH_CYCLES)) return null;
  const last = cycles.at(-1);
  const figures = figuresOf(cycles, heatedUp);
  if (last === undefined || figures === null) return null;
  return { mark, fromMs, toMs: last.toMs, figures, cycles };
}
