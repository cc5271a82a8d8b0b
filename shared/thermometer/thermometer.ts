import { corrected } from '../calibration/correction.ts';
import { temperatureOf } from './convert.ts';
import { type DeviceClock, placeInTime } from './device-clock.ts';
import {
  type KnownProbe,
  type LagFilter,
  type PlateEstimate,
  plateEstimate,
  trackPlate,
} from './lag/filter.ts';
import { type Held, hold, isFrozen, judgeJump, type Level } from './plausible.ts';
import type { Fault, Quality, Reading } from './reading.ts';
import type { ProbeId, Sample } from './sample.ts';
import { addToSlope, type SlopeState, slopeKPerS } from './slope.ts';
import type { WatchedProbe } from './watched-probe.ts';

/** One probe as the watch follows it. */
export interface Thermometer {
  readonly reading: Reading;
  /** The last valid reading, also as it was before its correction, and when it arrived, ms of the watch's clock. */
  readonly lastOk: { readonly plateC: number; readonly readC: number; readonly tMs: number } | null;
  readonly heardMs: number;
  readonly level: Level | null;
  readonly held: Held | null;
  readonly slope: SlopeState | null;
  /** The plate behind the readings, with its slope; null while there is no reading to go by. */
  readonly filter: LagFilter | null;
  /** Whether the plate may be hot: `hot` until a valid reading is under `COLD_C`. */
  readonly heat: 'unknown' | 'hot' | 'cold';
}

/** Under this a plate may be called measured cold, degC (ISO 13732-1: 43 degC for 8 h of contact; recalled). */
export const COLD_C = 43;
/** No water is hotter where people work, with a probe that reads some too much, degC (our own choice). */
const DIPPED_MOST_C = 110;
/** Without a line for this long a probe is silent, ms: a page must not show an old number for 2 s. */
export const SILENT_AFTER_MS = 1500;
/** A device may be starting for so long before its silence counts as a fault, ms (two seconds of boot text, and some). */
const STARTING_MS = 5000;
/** One that starts again and again without ever being heard gets no more than this, ms. */
const UNHEARD_MS = 10_000;

/** The pace at which heat changes is known from so much of it on, s: of less, a coarse probe's one step looks like one. */
const PACE_SPAN_S = 10;

/** A probe that has never been heard; `hot` where a session that broke off left it so. */
export const unheard = (probe: ProbeId, tMs: number, hot: boolean): Thermometer => ({
  reading: { probe, quality: 'silent', atMs: tMs },
  lastOk: null,
  heardMs: tMs,
  level: null,
  held: null,
  slope: null,
  filter: null,
  heat: hot ? 'hot' : 'unknown',
});

/** Another conversion holds from now on: what was learned from numbers of the old one says nothing about new ones. */
export const converted = (t: Thermometer): Thermometer => ({
  ...t,
  level: null,
  held: null,
  slope: null,
  filter: null,
});

export interface Heard {
  readonly thermometer: Thermometer;
  readonly clock: DeviceClock | undefined;
}

interface HeardAt {
  readonly tMs: number;
  /** At or above this a value is never hidden behind a doubt, degC: the limit with its guard band. */
  readonly overC: number;
  /** Whether the probe is in a check pad. */
  readonly onPad?: boolean;
}

/**
 * Takes one sample in.
 * @returns null where the sample carries no temperature
 */
export function hear(
  was: Thermometer,
  sample: Sample,
  at: HeardAt & { readonly clock: DeviceClock | undefined },
  settings: WatchedProbe,
): Heard | null {
  const tC = temperatureOf(sample, settings);
  if (tC === null) return null;
  const timed = sample.deviceMs === null ? null : placeInTime(at.clock, sample.deviceMs, at.tMs);
  const thermometer =
    typeof tC === 'number'
      ? hearNumber(was, tC, timed?.atMs ?? at.tMs, at, settings)
      : withFault({ ...was, heardMs: at.tMs, held: null }, tC, at.tMs);
  return { thermometer, clock: timed?.clock ?? at.clock };
}

function hearNumber(
  was: Thermometer,
  readC: number,
  atMs: number,
  at: HeardAt,
  settings: WatchedProbe,
): Thermometer {
  const { calibration, lag } = settings;
  const plateC = calibration === null ? readC : corrected(readC, calibration.correction);
  if (isOffPlate(settings, plateC, at)) return hearOffPlate(was, { plateC, readC }, atMs, at.tMs);
  if (at.onPad === true) return hearPad(was, { plateC, readC }, atMs, at.tMs);
  const { level, jump } = judgeJump(was.level, plateC, at.tMs);
  const goesOn = was.reading.quality === 'ok' && !isBroken(was, at.tMs) && !jump;
  const slope = addToSlope(goesOn ? was.slope : null, atMs, plateC);
  // Nothing can be said of a value that was not sent without a break.
  const held = hold(isBroken(was, at.tMs) ? null : was.held, plateC, at.tMs, slopeKPerS(slope, PACE_SPAN_S));
  const heard = { ...was, level, held, heardMs: at.tMs };
  const over = plateC >= at.overC;
  if (jump && !over) return withFault(heard, 'jump', at.tMs);
  if (isFrozen(held, at.tMs) && !over) return withFault(heard, 'frozen', at.tMs);
  return {
    ...heard,
    reading: { probe: was.reading.probe, quality: 'ok', atMs, plateC },
    lastOk: { plateC, readC, tMs: at.tMs },
    slope: jump ? null : slope,
    filter: trackPlate(goesOn ? was.filter : null, atMs, plateC, traitsOf(lag)),
    heat: plateC < COLD_C ? 'cold' : 'hot',
  };
}

/**
 * In ice and water, and when it is clipped onto a hot plate, a probe jumps and then holds one value, and neither its pace
 * nor its lag tells of a plate. Above `DIPPED_MOST_C` it is in no water, whatever was said of it, and is judged as ever;
 * so is one that is clipped on as soon as it passes the limit, or its time is over.
 */
const isOffPlate = (
  { dipped, clippedUntilMs = 0 }: WatchedProbe,
  plateC: number,
  at: { readonly tMs: number; readonly overC: number },
): boolean => (dipped === true && plateC <= DIPPED_MOST_C) || (at.tMs < clippedUntilMs && plateC < at.overC);

/** A number that is taken as it is: nothing that holds for a plate is asked of it. */
function hearOffPlate(
  was: Thermometer,
  { plateC, readC }: { readonly plateC: number; readonly readC: number },
  atMs: number,
  tMs: number,
): Thermometer {
  return {
    ...was,
    heardMs: tMs,
    level: { plateC, tMs, doubted: null },
    held: null,
    reading: { probe: was.reading.probe, quality: 'ok', atMs, plateC },
    lastOk: { plateC, readC, tMs },
    slope: null,
    filter: null,
    heat: plateC < COLD_C ? 'cold' : 'hot',
  };
}

/**
 * A check pad is cold between checks, jumps as an iron is parked on it and holds one value then: neither says anything
 * against its numbers. That it is cold says nothing of its iron, so the plate it was of stays as hot as it was.
 */
function hearPad(
  was: Thermometer,
  { plateC, readC }: { readonly plateC: number; readonly readC: number },
  atMs: number,
  tMs: number,
): Thermometer {
  const heard = hearOffPlate(was, { plateC, readC }, atMs, tMs);
  return {
    ...heard,
    filter: trackPlate(isBroken(was, tMs) ? null : was.filter, atMs, plateC, traitsOf(null)),
    heat: plateC < COLD_C ? was.heat : heard.heat,
  };
}

const isBroken = (was: Thermometer, tMs: number): boolean => tMs - was.heardMs >= SILENT_AFTER_MS;

function withFault(t: Thermometer, quality: Fault, tMs: number): Thermometer {
  if (t.reading.quality === quality) return t;
  return { ...t, reading: { probe: t.reading.probe, quality, atMs: tMs }, slope: null, filter: null };
}

/** What is known of the link to a device, and how its lines have been. */
export interface LinkState {
  readonly link: 'connected' | 'starting' | 'lost';
  /** Since when the link has been so, ms of the watch's clock. */
  readonly sinceMs: number;
  readonly lastRejectedMs: number | null;
}

/** Looks at the clock: a probe that has not been heard, or whose device is gone, has no reading. */
export function listenOn(t: Thermometer, link: LinkState | undefined, tMs: number): Thermometer {
  if (link?.link === 'lost') return withFault(t, 'device-lost', tMs);
  const { quality } = t.reading;
  const quiet = tMs - t.heardMs >= SILENT_AFTER_MS;
  const unheardYet = quiet || quality === 'silent' || quality === 'device-lost';
  if (!unheardYet) return t;
  const mayStart = tMs - t.heardMs < UNHEARD_MS;
  if (link?.link === 'starting' && mayStart && tMs - link.sinceMs < STARTING_MS)
    return withFault(t, 'starting', tMs);
  if (!quiet) return t;
  const garbled =
    link !== undefined && link.lastRejectedMs !== null && tMs - link.lastRejectedMs < SILENT_AFTER_MS;
  return withFault(t, garbled ? 'garbled' : 'silent', tMs);
}

export const qualityOf = (t: Thermometer | undefined): Quality => t?.reading.quality ?? 'silent';

const traitsOf = (lag: WatchedProbe['lag']): KnownProbe => ({ noiseK: null, resolutionK: null, lag });

/** The plate as a probe's readings tell of it; null where there is no valid one. */
export const estimateOf = (
  { reading, filter }: Thermometer,
  { lag }: Pick<WatchedProbe, 'lag'>,
): PlateEstimate | null =>
  reading.quality !== 'ok' || filter === null ? null : plateEstimate(filter, traitsOf(lag));

/** The slope of a probe that reads, K/s; null where there is none. */
export const slopeOf = (t: Thermometer): number | null =>
  t.reading.quality === 'ok' ? slopeKPerS(t.slope) : null;
