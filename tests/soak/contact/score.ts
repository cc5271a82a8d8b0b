/** How well something that is said second by second agrees with what was so. */

export interface Score {
  readonly hours: number;
  readonly precision: number;
  readonly recall: number;
  /** Spells that were said, and those that never were. */
  readonly spells: number;
  readonly missed: number;
  /** From the beginning of a spell until it was said, s: the middle one, and the one that 90 % don't pass. */
  readonly latencyS: readonly [number, number];
}

/** One moment of each second. */
export interface Moment {
  readonly so: boolean;
  readonly said: boolean;
}

/** What is said may come so late, and stay so long, s. */
const TOLERANCE_S = 10;
/** Breaks shorter than this don't end a spell, and spells shorter than this are not asked for, s. */
const BREAK_S = 10;
const SHORTEST_S = 20;

/** What several sessions add up to. */
export class Tally {
  #hours = 0;
  #saidRight = 0;
  #said = 0;
  #told = 0;
  #so = 0;
  #missed = 0;
  readonly #latenciesS: number[] = [];

  add(moments: readonly Moment[]): void {
    const soNear = within(moments.map((m) => m.so));
    const saidSoon = within(moments.map((m) => m.said).toReversed()).toReversed();
    for (const [i, { so, said }] of moments.entries()) {
      if (said) this.#said++;
      if (said && soNear[i] === true) this.#saidRight++;
      if (so) this.#so++;
      if (so && saidSoon[i] === true) this.#told++;
    }
    this.#hours += moments.length / 3600;
    for (const { from, to } of spellsOf(moments)) {
      const at = moments.findIndex((m, i) => i >= from && i < to && m.said);
      if (at < 0) this.#missed++;
      else this.#latenciesS.push(at - from);
    }
  }

  score(): Score {
    const sorted = this.#latenciesS.toSorted((a, b) => a - b);
    const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
    return {
      hours: this.#hours,
      precision: this.#saidRight / this.#said,
      recall: this.#told / this.#so,
      spells: sorted.length,
      missed: this.#missed,
      latencyS: [at(0.5), at(0.9)],
    };
  }
}

/** Whether it was so at any moment of the last `TOLERANCE_S`. */
function within(flags: readonly boolean[]): boolean[] {
  let lastTrue = -Infinity;
  return flags.map((flag, i) => {
    if (flag) lastTrue = i;
    return i - lastTrue <= TOLERANCE_S;
  });
}

function spellsOf(moments: readonly Moment[]): readonly { readonly from: number; readonly to: number }[] {
  const spells: { from: number; to: number }[] = [];
  for (const [i, { so }] of moments.entries()) {
    const last = spells.at(-1);
    if (so && last !== undefined && i - last.to < BREAK_S) last.to = i + 1;
    else if (so) spells.push({ from: i, to: i + 1 });
  }
  return spells.filter(({ from, to }) => to - from >= SHORTEST_S);
}

export const scoreText = (name: string, s: Score): string =>
  [
    name,
    `${s.hours.toFixed(0)} h`,
    `precision ${s.precision.toFixed(3)}`,
    `recall ${s.recall.toFixed(3)}`,
    `spells ${s.spells}, missed ${s.missed}`,
    `latency ${s.latencyS[0]} s, 90 % within ${s.latencyS[1]} s`,
  ].join(' | ');
