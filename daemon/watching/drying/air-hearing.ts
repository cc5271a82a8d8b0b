import { type Air, type AirPart, airParts, partOf } from '../../../shared/cure/air.ts';
import { AIR_HOLDS_MS } from '../../../shared/cure/course.ts';
import type { ProbeId, Sample } from '../../../shared/thermometer/sample.ts';

/** Air is kept when it has changed by this much, and so long after the last, ms: a heater or an open door sooner. */
const CHANGES = [
  { airK: 1.5, rhPct: 6, afterMs: 10_000 },
  { airK: 0.3, rhPct: 1.5, afterMs: 120_000 },
];
/** It is kept at least so often, so that it doesn't count as old, ms. */
const LATEST_MS = 600_000;
/** What a probe told in one line goes together with what it tells in another for so long, ms. */
const TOGETHER_MS = 60_000;
/** A probe that has told no air for so long is silent, ms. */
const SILENT_MS = 120_000;
/** What a probe told that can't be air is said for so long at least, ms, and is told anew no more often. */
const REFUSED_MS = 60_000;
/** A silent probe is forgotten once what it told would be old, ms. */
const FORGOTTEN_MS = AIR_HOLDS_MS.probe;

export interface HeardAir extends Air {
  readonly probe: ProbeId;
  readonly atMs: number;
}

/** What a probe told of the air that no air is like. */
export interface RefusedPart {
  readonly part: AirPart;
  readonly value: number;
  readonly atMs: number;
}

/** How a probe that tells of the air stands. */
export interface AirProbe {
  readonly probe: ProbeId;
  /** The last that it told, as far as it differs from what was shown; null: nothing that can be air. */
  readonly told: HeardAir | null;
  readonly isSilent: boolean;
  /** What it tells next is taken for the air of the shop. */
  readonly isHeard: boolean;
  readonly refused: readonly RefusedPart[];
}

interface Part {
  readonly value: number;
  readonly atMs: number;
}

/** What one probe has told; its two parts may come in lines of their own. */
interface Told {
  /** The last of each that can be air. */
  readonly parts: Readonly<Record<AirPart, Part | null>>;
  readonly refused: Readonly<Record<AirPart, (Part & { readonly lastMs: number }) | null>>;
  readonly last: HeardAir | null;
  /** The same as it is shown: it changes only as often as air is kept. */
  readonly shown: HeardAir | null;
  /** When it told anything of the air last, whether that can be air or not. */
  readonly lastMs: number;
}

const nothing: Told = {
  parts: { airC: null, rhPct: null },
  refused: { airC: null, rhPct: null },
  last: null,
  shown: null,
  lastMs: 0,
};

/**
 * Listens to what lines tell of the air: of several probes to one, and only as often as the air changes. What can't be
 * air is taken for not told, and is told of.
 */
export class AirHearing {
  readonly #chosen: () => ProbeId | null;
  readonly #told = new Map<ProbeId, Told>();
  /** What was taken for the air last, worth keeping or not. */
  #last: HeardAir | null = null;
  #kept: HeardAir | null = null;

  /** @param chosen the one probe that is to be listened to; null: the first that is heard, until it is silent */
  constructor(chosen: () => ProbeId | null = () => null) {
    this.#chosen = chosen;
  }

  /** @returns what is to be kept; null: nothing is */
  hear(sample: Sample, atMs: number): HeardAir | null {
    const { probe } = sample;
    if (airParts.every((part) => sample[part] === null)) return null;
    const told = toldAfter(this.#told.get(probe) ?? nothing, sample, atMs);
    this.#told.set(probe, told);
    const heard = told.last;
    if (heard === null || heard.atMs !== atMs || !this.#listensTo(probe, atMs)) return null;
    this.#last = heard;
    if (!isWorthKeeping(heard, this.#kept)) return null;
    this.#kept = heard;
    return heard;
  }

  /** Something else has told the air meanwhile: what a probe tells next is kept. */
  forget(): void {
    this.#kept = null;
  }

  /** The probes that told of the air of late, and the one that was chosen, in the order of their ids. */
  probes(nowMs: number): readonly AirProbe[] {
    const chosen = this.#chosen();
    for (const [probe, { lastMs }] of this.#told)
      if (probe !== chosen && nowMs - lastMs >= FORGOTTEN_MS) this.#told.delete(probe);
    const ids = new Set([...this.#told.keys(), ...(chosen === null ? [] : [chosen])]);
    return [...ids]
      .toSorted()
      .map((probe) => this.#probe(probe, nowMs))
      .filter(({ probe, told, refused }) => told !== null || refused.length > 0 || probe === chosen);
  }

  #probe(probe: ProbeId, nowMs: number): AirProbe {
    const { last, shown, ...told } = this.#told.get(probe) ?? nothing;
    const isSilent = last === null || nowMs - last.atMs >= SILENT_MS;
    return {
      probe,
      told: isSilent ? last : shown,
      isSilent,
      isHeard: !isSilent && this.#listensTo(probe, nowMs),
      refused: airParts.flatMap((part) => standing(told, part, nowMs)),
    };
  }

  #listensTo(probe: ProbeId, atMs: number): boolean {
    const chosen = this.#chosen();
    if (chosen !== null) return probe === chosen;
    const last = this.#last;
    return last === null || last.probe === probe || atMs - last.atMs >= SILENT_MS;
  }
}

/** What a probe has told, after one more line of it. */
function toldAfter(before: Told, sample: Sample, atMs: number): Told {
  let { parts, refused } = before;
  let isTold = false;
  for (const part of airParts) {
    const said = sample[part];
    if (said === null) continue;
    const value = partOf(part, said);
    if (value === null) refused = { ...refused, [part]: refusedAfter(refused[part], said, atMs) };
    else parts = { ...parts, [part]: { value, atMs } };
    isTold ||= value !== null;
  }
  const heard = isTold ? together(sample.probe, parts, atMs) : null;
  const last = heard ?? before.last;
  const shown = heard !== null && isWorthKeeping(heard, before.shown) ? heard : before.shown;
  return { parts, refused, last, shown, lastMs: atMs };
}

function refusedAfter(before: Told['refused'][AirPart], value: number, atMs: number) {
  const isShown = before !== null && atMs - before.atMs < REFUSED_MS;
  return isShown ? { ...before, lastMs: atMs } : { value, atMs, lastMs: atMs };
}

/** What a line tells, with what the same probe told of the other part not long ago; null without a temperature. */
function together(probe: ProbeId, { airC, rhPct }: Told['parts'], atMs: number): HeardAir | null {
  const valueOf = (part: Part | null): number | null =>
    part !== null && atMs - part.atMs <= TOGETHER_MS ? part.value : null;
  const heardC = valueOf(airC);
  return heardC === null ? null : { probe, airC: heardC, rhPct: valueOf(rhPct), atMs };
}

/** What stands of what can't be air: until the probe has told that part rightly, or has been silent for long. */
function standing(
  { parts, refused }: Pick<Told, 'parts' | 'refused'>,
  part: AirPart,
  nowMs: number,
): readonly RefusedPart[] {
  const said = refused[part];
  if (said === null) return [];
  const isRightSince = (parts[part]?.atMs ?? Number.NEGATIVE_INFINITY) > said.lastMs;
  const { value, atMs, lastMs } = said;
  return nowMs - lastMs < (isRightSince ? REFUSED_MS : FORGOTTEN_MS) ? [{ part, value, atMs }] : [];
}

function isWorthKeeping(heard: HeardAir, kept: HeardAir | null): boolean {
  if (kept === null || kept.probe !== heard.probe) return true;
  const sinceMs = heard.atMs - kept.atMs;
  if (sinceMs >= LATEST_MS) return true;
  const byK = Math.abs(heard.airC - kept.airC);
  const byRhPct = Math.abs((heard.rhPct ?? -1) - (kept.rhPct ?? -1));
  return CHANGES.some(({ airK, rhPct, afterMs }) => sinceMs >= afterMs && (byK >= airK || byRhPct >= rhPct));
}
