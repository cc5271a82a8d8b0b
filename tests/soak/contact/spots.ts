/** Rests on one spot against the truth, at one limit. */

export interface SpotMoment {
  /** How long it has truly rested on the work without a move, ms; 0: it doesn't. */
  readonly trueMs: number;
  readonly onWork: boolean;
  /** Null: not measured. */
  readonly saidMs: number | null;
}

export interface SpotScore {
  readonly hours: number;
  readonly limitS: number;
  /** True rests that were longer than the limit by two seconds at least. */
  readonly rests: number;
  readonly found: number;
  /** After the limit had passed, s: the middle one, and the one that 90 % don't pass. */
  readonly lateS: readonly [number, number];
  /** Told while it was moved on the work, and while it was truly parked, an hour. */
  readonly falseMoving: number;
  readonly falseParked: number;
}

const SLACK_S = 2;

export class SpotTally {
  readonly #limitS: number;
  #hours = 0;
  #rests = 0;
  #falseMoving = 0;
  #falseParked = 0;
  readonly #latesS: number[] = [];

  constructor(limitS: number) {
    this.#limitS = limitS;
  }

  /** @param moments one of each second */
  add(moments: readonly SpotMoment[]): void {
    this.#hours += moments.length / 3600;
    const told = moments.map((m) => (m.saidMs ?? 0) >= this.#limitS * 1000);
    for (const [i, m] of moments.entries()) {
      const ends = m.trueMs > 0 && (moments[i + 1]?.trueMs ?? 0) < m.trueMs;
      if (ends && m.trueMs >= (this.#limitS + SLACK_S) * 1000) this.#rest(told, i, m.trueMs / 1000);
      if (told[i] !== true || told[i - 1] === true) continue;
      // What was so within the last two seconds is not false.
      if (moments.slice(Math.max(0, i - SLACK_S), i + 1).some((n) => n.trueMs >= this.#limitS * 1000 - 1000))
        continue;
      if (m.onWork) this.#falseMoving++;
      else this.#falseParked++;
    }
  }

  #rest(told: readonly boolean[], end: number, lastedS: number): void {
    this.#rests++;
    const from = end - Math.round(lastedS);
    const at = told.findIndex((t, i) => t && i >= from + this.#limitS - 1 && i <= end + SLACK_S);
    if (at >= 0) this.#latesS.push(at - from - this.#limitS);
  }

  score(): SpotScore {
    const sorted = this.#latesS.toSorted((a, b) => a - b);
    const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
    return {
      hours: this.#hours,
      limitS: this.#limitS,
      rests: this.#rests,
      found: sorted.length,
      lateS: [at(0.5), at(0.9)],
      falseMoving: this.#falseMoving / this.#hours,
      falseParked: this.#falseParked / this.#hours,
    };
  }
}

export const spotText = (name: string, s: SpotScore): string =>
  [
    name,
    `limit ${s.limitS} s`,
    `${s.hours.toFixed(0)} h`,
    `rests ${s.rests}, found ${s.found}`,
    `late by ${s.lateS[0]} s, 90 % within ${s.lateS[1]} s`,
    `false an hour: ${s.falseMoving.toFixed(3)} while moved, ${s.falseParked.toFixed(3)} while parked or lifted`,
  ].join(' | ');
