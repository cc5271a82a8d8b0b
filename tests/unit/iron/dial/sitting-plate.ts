import { noBehaviour, observe } from '../../../../shared/iron/behaviour.ts';
import type { LoadFound } from '../../../../shared/iron/dial/load.ts';
import type { Look } from '../../../../shared/iron/dial/look.ts';
import type { DialMark } from '../../../../shared/iron/dial/mark.ts';
import { noSitting, type Sitting, sit } from '../../../../shared/iron/dial/sitting.ts';
import type { StretchFound } from '../../../../shared/iron/dial/stretch.ts';

/** Feeds readings and marks through behaviour and sitting, as the watch does, and keeps what comes out. */
export class Sitter {
  sitting: Sitting = noSitting;
  behaviour = noBehaviour;
  tMs = 0;
  readonly stretches: StretchFound[] = [];
  readonly loads: LoadFound[] = [];
  #dial: Look['dial'] = null;
  #place: Look['place'] = 'unknown';
  #stageId: string | null = null;
  #probe = 'board/1';

  /** What the user says from now on. */
  say(said: { mark?: DialMark | null; place?: Look['place']; stageId?: string; probe?: string }): this {
    if (said.mark !== undefined)
      this.#dial = said.mark === null ? null : { mark: said.mark, toldMs: this.tMs };
    this.#place = said.place ?? this.#place;
    this.#stageId = said.stageId ?? this.#stageId;
    this.#probe = said.probe ?? this.#probe;
    return this;
  }

  hear(tMs: number, plateC: number): void {
    this.tMs = tMs;
    const { behaviour, cycle } = observe(this.behaviour, tMs, plateC);
    this.behaviour = behaviour;
    const look = { tMs, probe: this.#probe, behaviour, cycle, dial: this.#dial };
    const step = sit(this.sitting, { ...look, place: this.#place, stageId: this.#stageId });
    this.sitting = step.sitting;
    for (const found of step.found) {
      if (found.kind === 'stretch') this.stretches.push(found.stretch);
      else this.loads.push(found.load);
    }
  }

  /** `plateC` of seconds since now, for so long, read every `everyMs`. */
  run(forS: number, plateC: (s: number) => number, everyMs = 250): this {
    const fromMs = this.tMs;
    for (let ms = everyMs; ms <= forS * 1000; ms += everyMs) this.hear(fromMs + ms, plateC(ms / 1000));
    return this;
  }

  get last(): StretchFound {
    const last = this.stretches.at(-1);
    if (last === undefined) throw new Error('no stretch was told of');
    return last;
  }
}

/** From `fromC` at so many K/s. */
export const ramp = (fromC: number, kPerS: number) => (s: number) => fromC + kPerS * s;

/** Wave forms around `meanC`, `swingK` from trough to peak; each begins at its peak. */
export const waves = {
  sine:
    (meanC: number, swingK: number, periodS: number) =>
    (s: number): number =>
      meanC + (swingK / 2) * Math.cos((2 * Math.PI * s) / periodS),
  /** Falls for `1 - duty` of its period and rises for the rest. */
  sawtooth:
    (meanC: number, swingK: number, periodS: number, duty = 0.3) =>
    (s: number): number => {
      const part = (s / periodS) % 1;
      const down = part < 1 - duty ? part / (1 - duty) : (1 - part) / duty;
      return meanC + swingK / 2 - swingK * down;
    },
  square:
    (meanC: number, swingK: number, periodS: number) =>
    (s: number): number =>
      meanC + ((s / periodS) % 1 < 0.5 ? swingK / 2 : -swingK / 2),
} as const;
