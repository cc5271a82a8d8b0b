import { simulateIron } from '../../../daemon/probe/simulated/simulated-iron.ts';
import { parseLine } from '../../../daemon/probe/wire/line.ts';
import { alarmTable } from '../../../shared/alarm/table.ts';
import {
  type Behaviour,
  expectedPeakC,
  noBehaviour,
  observe,
  retuned,
} from '../../../shared/iron/behaviour.ts';
import type { KnownLag } from '../../../shared/thermometer/lag/filter.ts';
import { lagRule, type Rule, slopeRule, Warner, type Warning } from './rules.ts';
import { FABRIC_LIMIT_C, GUARDED_LIMIT_C, type WorkSession } from './sessions.ts';

/** Watches sessions of known truth by several rules side by side, and counts what each was worth. */

export interface Outcome {
  readonly name: string;
  /** True crossings of the fabric limit, and how long before each the warning stood, s; null where none did. */
  readonly leadsS: readonly (number | null)[];
  /** How many of those without a warning the limit's own alarm, guard-banded, told of before they came true. */
  readonly toldByLimit: number;
  /** Warnings after which the plate stayed under the limit. */
  readonly falseWarnings: readonly FalseWarning[];
}

export interface FalseWarning {
  readonly seed: number;
  readonly atS: number;
  /** Before this thermostat's first peak, or after its dial was turned up and before the next. */
  readonly peakUnknown: boolean;
  /** The plate came so far under the limit that it got into the guard band, where the limit's own alarm comes. */
  readonly inGuardBand: boolean;
  /** The thermostat's contacts were stuck, but came free before the limit: no false alarm in substance. */
  readonly stuck: boolean;
}

/** A crossing within this time after a warning makes it a true one, and the warning counts for it, ms. */
const COUNTS_MS = 60_000;
/** Passing again counts as another crossing once the plate has been this far under the limit, K. */
const BACK_K = 5;

/** After contacts came free the heater's own heat still drives the plate up, ms. */
const STUCK_MS = 15_000;

const LAG_SHARE = 0.05;

/** The rules: as it was, with the lag known to 5 %, and with it unknown. */
function rulesFor({ traits }: WorkSession): Readonly<Record<string, Rule>> {
  const lag: KnownLag = { tauS: traits.probe.lagS, standardS: LAG_SHARE * traits.probe.lagS };
  return {
    slope: slopeRule(),
    'filter, lag known': lagRule({ noiseK: null, resolutionK: null, lag }),
    'filter, lag unknown': lagRule({ noiseK: null, resolutionK: null, lag: null }),
  };
}

interface Truth {
  readonly crossingsMs: number[];
  /** Spans in which the reading to be expected was over the guarded limit, ms. */
  readonly guardedMs: number[];
  /** When a reading was over the guarded limit, ms. */
  readonly readOverMs: number[];
  /** When the contacts were stuck, ms. */
  readonly stuckMs: number[];
  /** When the first peak of a setting was known, and when the dial was turned up, ms. */
  readonly turnedUpMs: number[];
  readonly peakKnownMs: number[];
}

/** Watches one session; an outcome a rule. */
export function watchSession(
  session: WorkSession,
  rules: Readonly<Record<string, Rule>> = rulesFor(session),
): readonly Outcome[] {
  const warners = Object.entries(rules).map(([name, rule]) => ({ name, warner: new Warner(rule) }));
  const truth = live(session, (read) => {
    for (const { warner } of warners) warner.hear(read);
  });
  return warners.map(({ name, warner }) => ({
    name,
    leadsS: truth.crossingsMs.map((ms) => leadS(warner.warnings, ms)),
    toldByLimit: truth.crossingsMs.filter((ms) => leadS(warner.warnings, ms) === null && isTold(truth, ms))
      .length,
    falseWarnings: warner.warnings
      .filter((w) => !truth.crossingsMs.some((ms) => isFor(w, ms)))
      .map((w) => falseWarning(session.seed, w, truth)),
  }));
}

function live(session: WorkSession, hear: (read: Parameters<Rule>[0]) => void): Truth {
  const { traits, scenario, lastsS, seed } = session;
  const iron = simulateIron(traits, scenario, seed);
  const truth: Truth = {
    crossingsMs: [],
    guardedMs: [],
    readOverMs: [],
    stuckMs: [],
    turnedUpMs: [0],
    peakKnownMs: [],
  };
  let behaviour: Behaviour = noBehaviour;
  let dialC: number | null = null;
  let armed = true;
  for (let at = iron.start; at.tMs < lastsS * 1000; ) {
    const { said, state } = iron.next(at);
    at = state;
    const { tMs } = said;
    const { plateC } = said.truth;
    if (armed && plateC >= FABRIC_LIMIT_C) truth.crossingsMs.push(tMs);
    armed = plateC < FABRIC_LIMIT_C - BACK_K || (armed && plateC < FABRIC_LIMIT_C);
    if (plateC + traits.probe.offsetK >= GUARDED_LIMIT_C) truth.guardedMs.push(tMs);
    if (said.truth.faults.includes('runaway')) truth.stuckMs.push(tMs);
    if (said.truth.dialC !== dialC) {
      if ((said.truth.dialC ?? 0) > (dialC ?? 0)) truth.turnedUpMs.push(tMs);
      if (session.tellsStage && dialC !== null) behaviour = toldStage(behaviour, said.truth.dialC, dialC);
      ({ dialC } = said.truth);
    }
    for (const line of said.lines) {
      const parsed = parseLine(line, 'board');
      if (parsed.kind !== 'sample' || parsed.sample.tC === null) continue;
      const readC = parsed.sample.tC;
      if (readC >= GUARDED_LIMIT_C) truth.readOverMs.push(tMs);
      const before = expectedPeakC(behaviour);
      ({ behaviour } = observe(behaviour, tMs, readC));
      const peakC = expectedPeakC(behaviour);
      if (peakC !== null && peakC !== before) truth.peakKnownMs.push(tMs);
      hear({ tMs, readC, limitC: GUARDED_LIMIT_C, expectedPeakC: peakC });
    }
  }
  return truth;
}

function toldStage(behaviour: Behaviour, toC: number | null, fromC: number): Behaviour {
  if (toC === null) return behaviour;
  return retuned(behaviour, { lowC: toC - 8, highC: toC + 8 }, toC < fromC);
}

/** The limit's own alarm comes after its on-delay. */
const isTold = ({ readOverMs }: Truth, crossingMs: number): boolean =>
  readOverMs.some(
    (ms) => crossingMs - COUNTS_MS < ms && ms + alarmTable['over-limit'].onDelayMs < crossingMs,
  );

/** A warning is for a crossing that comes while it stands, or soon after it was raised. */
const isFor = (w: Warning, crossingMs: number): boolean =>
  w.raisedMs < crossingMs && (crossingMs - w.raisedMs <= COUNTS_MS || crossingMs <= w.clearedMs);

/** From the first of the warnings that led up to a crossing without a break of more than a few seconds. */
function leadS(warnings: readonly Warning[], crossingMs: number): number | null {
  const standing = warnings.filter((w) => w.raisedMs < crossingMs && crossingMs <= w.clearedMs + 5000);
  const first = standing[0];
  return first === undefined ? null : (crossingMs - first.raisedMs) / 1000;
}

function falseWarning(seed: number, w: Warning, truth: Truth): FalseWarning {
  const turnedUpMs = truth.turnedUpMs.findLast((ms) => ms <= w.raisedMs) ?? 0;
  return {
    seed,
    atS: w.raisedMs / 1000,
    peakUnknown: !truth.peakKnownMs.some((ms) => turnedUpMs < ms && ms <= w.raisedMs),
    inGuardBand: truth.guardedMs.some((ms) => w.raisedMs <= ms && ms <= w.raisedMs + COUNTS_MS),
    stuck: truth.stuckMs.some((ms) => w.raisedMs - STUCK_MS <= ms && ms <= w.raisedMs),
  };
}
