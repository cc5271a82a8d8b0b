import { type Air, airTemperatureC, relativeHumidityPct } from '../../../shared/cure/air.ts';
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
/** Another probe is listened to once the one that tells the air has been silent for so long, ms. */
const SILENT_MS = 120_000;

export interface HeardAir extends Air {
  readonly probe: ProbeId;
  readonly atMs: number;
}

/** What a probe has told of the air; its two parts may come in lines of their own. */
interface Heard {
  readonly probe: ProbeId;
  readonly airC: Part | null;
  readonly rhPct: Part | null;
}

interface Part {
  readonly value: number;
  readonly atMs: number;
}

/** Listens to what lines tell of the air: of several probes to one, and only as often as the air changes. */
export class AirHearing {
  /** What was told last, worth keeping or not. */
  #last: HeardAir | null = null;
  #heard: Heard | null = null;
  #kept: HeardAir | null = null;

  /** @returns what is to be kept; null: nothing is */
  hear(sample: Sample, atMs: number): HeardAir | null {
    const { probe } = sample;
    if (sample.airC !== null && !airTemperatureC.safeParse(sample.airC).success) return null;
    if (sample.rhPct !== null && !relativeHumidityPct.safeParse(sample.rhPct).success) return null;
    const last = this.#last;
    if (last !== null && last.probe !== probe && atMs - last.atMs < SILENT_MS) return null;
    const { airC, rhPct } = this.#together(sample, atMs);
    if (airC === null) return null;
    const heard = { probe, airC: airC.value, rhPct: rhPct?.value ?? null, atMs };
    this.#last = heard;
    if (!isWorthKeeping(heard, this.#kept)) return null;
    this.#kept = heard;
    return heard;
  }

  /** What this line tells, with what the same probe told of the other part not long ago. */
  #together({ probe, airC, rhPct }: Sample, atMs: number): Heard {
    const before = this.#heard?.probe === probe ? this.#heard : null;
    const part = (value: number | null, told: Part | null | undefined): Part | null => {
      if (value !== null) return { value, atMs };
      return told !== null && told !== undefined && atMs - told.atMs <= TOGETHER_MS ? told : null;
    };
    const heard = { probe, airC: part(airC, before?.airC), rhPct: part(rhPct, before?.rhPct) };
    this.#heard = heard;
    return heard;
  }

  /** Something else has told the air meanwhile: what a probe tells next is kept. */
  forget(): void {
    this.#kept = null;
  }
}

function isWorthKeeping(heard: HeardAir, kept: HeardAir | null): boolean {
  if (kept === null || kept.probe !== heard.probe) return true;
  const sinceMs = heard.atMs - kept.atMs;
  if (sinceMs >= LATEST_MS) return true;
  const byK = Math.abs(heard.airC - kept.airC);
  const byRhPct = Math.abs((heard.rhPct ?? -1) - (kept.rhPct ?? -1));
  return CHANGES.some(({ airK, rhPct, afterMs }) => sinceMs >= afterMs && (byK >= airK || byRhPct >= rhPct));
}
