import { rectangularU } from '../calibration/rectangular.ts';
import { type CheckFound, emptyPad, onPad, type Pad, type PadStep, padSilent } from '../iron/check/pad.ts';
import { seatOf } from '../thermometer/place.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import type { Thermometer } from '../thermometer/thermometer.ts';
import { budgetOf } from '../thermometer/trust.ts';
import { handGuardBandK } from '../thermometer/uncertainty.ts';
import type { WatchedProbe } from '../thermometer/watched-probe.ts';
import type { Finding } from './finding.ts';
import type { WatchInput, WatchSettings } from './input.ts';

/** The slice of what is known of a plate from one moment only: checks on a pad, and readings that were typed. */
export interface Checks {
  readonly pads: Readonly<Record<ProbeId, Pad>>;
  /** The last check that has settled; goes on while the iron still lies there. */
  readonly last: Check | null;
  /** The last one that did not, where it is newer. */
  readonly missed: Check | null;
  readonly typed: Typed | null;
}

export interface Check extends CheckFound {
  readonly probe: ProbeId;
  /** How much under a limit its hottest must be for the plate to have been under it, at the iron's confidence, K. */
  readonly guardBandK: number;
}

/** Read from a hand thermometer and typed. */
export interface Typed {
  readonly atMs: number;
  readonly plateC: number;
  readonly guardBandK: number;
  /** Whether the plate may have been over the fabric limit. */
  readonly over: boolean;
}

export const noChecks: Checks = { pads: {}, last: null, missed: null, typed: null };

export interface ChecksStep {
  readonly checks: Checks;
  readonly found: readonly Finding[];
}

export interface ChecksFacts {
  readonly tMs: number;
  readonly settings: WatchSettings;
  readonly thermometers: Readonly<Record<ProbeId, Thermometer>>;
}

const none: readonly Finding[] = [];

/** Folds one input into the slice. */
export function stepChecks(before: Checks, input: WatchInput, facts: ChecksFacts): ChecksStep {
  switch (input.kind) {
    case 'sample':
      return hearPad(before, input.sample.probe, facts);
    case 'tick':
      return lookAtClock(before, facts);
    case 'settings':
      return { checks: withoutGone(before, facts.settings), found: none };
    case 'mark':
      return input.mark.kind === 'typed'
        ? hearTyped(before, input.mark.plateC, facts)
        : { checks: before, found: none };
    default:
      return { checks: before, found: none };
  }
}

/** A pad is looked at no closer than this, K: a thermostat's swing and noise are there however well it was calibrated. */
const LEAST_U_K = 1;

function hearPad(before: Checks, id: ProbeId, { tMs, settings, thermometers }: ChecksFacts): ChecksStep {
  const probe = settings.probes.find((p) => p.id === id);
  const t = thermometers[id];
  if (probe === undefined || t === undefined || seatOf(probe, settings.iron.id) !== 'check-pad')
    return { checks: before, found: none };
  if (t.reading.quality !== 'ok' || t.lastOk === null) return { checks: before, found: none };
  const was = before.pads[id] ?? emptyPad;
  const uK = Math.max(LEAST_U_K, padBudget(probe, t, settings, 0).uK);
  const tauS = probe.lag === null ? null : probe.lag.tauS + 2 * probe.lag.standardS;
  return put(
    before,
    id,
    onPad(was, { tMs: Math.min(t.reading.atMs, tMs), padC: t.reading.plateC, tauS, uK }),
    { settings, thermometers },
  );
}

const padBudget = (probe: WatchedProbe, t: Thermometer, { iron }: WatchSettings, remainingK: number) =>
  budgetOf(
    { probe, iron },
    {
      readC: t.lastOk?.readC ?? 0,
      resolutionK: t.filter?.noise.stepK ?? null,
      // What is left of the way is taken for a limit.
      lagUK: rectangularU(remainingK),
    },
  );

function put(
  before: Checks,
  probe: ProbeId,
  { pad, found }: PadStep,
  facts: Pick<ChecksFacts, 'settings' | 'thermometers'>,
): ChecksStep {
  const told = found.map((one) => checkOf(one, probe, facts));
  const { contact } = pad;
  const going = contact === null ? null : checkOf({ ...contact, ended: null }, probe, facts);
  let { last, missed } = before;
  for (const one of going === null ? told : [...told, going]) {
    if (one.settledMs === null && one.ended !== null) missed = one;
    if (one.settledMs === null) continue;
    last = one;
    missed = null;
  }
  return {
    checks: { ...before, pads: { ...before.pads, [probe]: pad }, last, missed },
    found: told.map((check) => ({ kind: 'check', check })),
  };
}

function checkOf(
  found: CheckFound,
  probe: ProbeId,
  { settings, thermometers }: Pick<ChecksFacts, 'settings' | 'thermometers'>,
): Check {
  const own = settings.probes.find((p) => p.id === probe);
  const t = thermometers[probe];
  const guardBandK =
    own === undefined || t === undefined ? 0 : padBudget(own, t, settings, found.remainingK ?? 0).guardBandK;
  return { ...found, probe, guardBandK };
}

function lookAtClock(before: Checks, facts: ChecksFacts): ChecksStep {
  let checks = before;
  const found: Finding[] = [];
  for (const [probe, pad] of Object.entries(before.pads)) {
    const step = padSilent(pad, facts.tMs);
    if (step.pad === pad) continue;
    const after = put(checks, probe, step, facts);
    checks = after.checks;
    found.push(...after.found);
  }
  return { checks, found };
}

/** A probe that is no check pad of this iron any more; what it has told stays told. */
function withoutGone(before: Checks, { iron, probes }: WatchSettings): Checks {
  const pads = Object.entries(before.pads).filter(([id]) => {
    const probe = probes.find((p) => p.id === id);
    return probe !== undefined && iron.probes.includes(id) && seatOf(probe, iron.id) === 'check-pad';
  });
  return pads.length === Object.keys(before.pads).length
    ? before
    : { ...before, pads: Object.fromEntries(pads) };
}

function hearTyped(before: Checks, plateC: number, { tMs, settings }: ChecksFacts): ChecksStep {
  const guardBandK = handGuardBandK(plateC, settings.iron.confidence);
  const over = plateC >= settings.schedule.fabricLimitC - guardBandK;
  const typed = { atMs: tMs, plateC, guardBandK, over };
  return { checks: { ...before, typed }, found: [{ kind: 'typed', typed }] };
}
