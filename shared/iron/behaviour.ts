import { type Smooth, smooth } from '../thermometer/smooth.ts';
import { type Cycle, cycleBetween } from './cycle.ts';
import { hasMoved, type IronPhase, nextPhase } from './phase.ts';
import { type Swing, turnThresholdK, widen } from './swing.ts';
import { follow, type Point, startTurning, type Turned, type Turning } from './turning.ts';

/** What an iron is doing, from the temperature of its plate alone, as one probe reads it. */
export interface Behaviour {
  readonly phase: IronPhase;
  readonly smooth: Smooth | null;
  readonly turning: Turning | null;
  /** While it is regulated. */
  readonly swing: Swing | null;
  readonly trough: Point | null;
  readonly peak: Point | null;
  /** The last whole cycles since the plate began to be regulated, oldest first, at most `KEEP_CYCLES`. */
  readonly cycles: readonly Cycle[];
  /** The last peaks, degC, oldest first, at most `KEEP_PEAKS`. */
  readonly peaksC: readonly number[];
  /** The highest peak at this setting of the dial, as far as that is known, degC. */
  readonly highestPeakC: number | null;
  readonly held: { readonly plateC: number; readonly sinceMs: number } | null;
}

/** Short cycles must span the two minutes over which a band is judged. */
const KEEP_CYCLES = 16;
const KEEP_PEAKS = 4;
/** Peaks that all stay this far under the highest one tell of a dial that was turned down, K (our own choice). */
const TURNED_DOWN_K = 15;
/** After so long without a reading, what the plate did is not known, ms. */
const GAP_MS = 30_000;

export const noBehaviour: Behaviour = {
  phase: 'unknown',
  smooth: null,
  turning: null,
  swing: null,
  trough: null,
  peak: null,
  cycles: [],
  peaksC: [],
  highestPeakC: null,
  held: null,
};

export interface Behaved {
  readonly behaviour: Behaviour;
  readonly cycle: Cycle | null;
}

/** Takes one more valid reading of the probe. */
export function observe(known: Behaviour, tMs: number, plateC: number): Behaved {
  const before = known.smooth !== null && tMs - known.smooth.tMs > GAP_MS ? afterGap(known) : known;
  const smoothed = smooth(before.smooth, tMs, plateC);
  const { levelC } = smoothed;
  const swing =
    before.phase === 'regulating' ? widen(before.swing, tMs, levelC, before.cycles.length > 0) : null;
  const { turning, turn } =
    before.turning === null
      ? { turning: startTurning(tMs, levelC), turn: null }
      : follow(before.turning, tMs, levelC, turnThresholdK(swing));
  const turned = takeTurn(before, turn);
  const held =
    before.held === null || hasMoved(levelC, before.held.plateC)
      ? { plateC: levelC, sinceMs: tMs }
      : before.held;
  const phase = nextPhase(before.phase, {
    plateC: levelC,
    tMs,
    turn: turn?.kind ?? null,
    direction: turning.direction,
    lowestTroughC: lowestTroughOf(turned),
    highestPeakC: turned.peaksC.length === 0 ? null : Math.max(...turned.peaksC),
    lastPeakC: turned.peak?.plateC ?? null,
    heldSinceMs: held.sinceMs,
  });
  const { cycle, ...turnsAfter } = turned;
  const moved = { ...before, ...turnsAfter, smooth: smoothed, turning, swing, held };
  return { behaviour: enterPhase(moved, phase), cycle };
}

interface Turns extends Pick<Behaviour, 'trough' | 'peak' | 'cycles' | 'peaksC' | 'highestPeakC'> {
  readonly cycle: Cycle | null;
}

function takeTurn(before: Behaviour, turn: Turned['turn']): Turns {
  const { trough, peak, cycles, peaksC, highestPeakC } = before;
  const same = { trough, peak, cycles, peaksC, highestPeakC, cycle: null };
  if (turn === null) return same;
  if (turn.kind === 'peak') return { ...same, peak: turn.point, ...addPeak(before, turn.point.plateC) };
  if (trough === null || peak === null || peak.tMs < trough.tMs) return { ...same, trough: turn.point };
  const cycle = cycleBetween(trough, peak, turn.point);
  return { ...same, trough: turn.point, cycles: [...cycles, cycle].slice(-KEEP_CYCLES), cycle };
}

function addPeak(
  { peaksC, highestPeakC }: Behaviour,
  peakC: number,
): Pick<Behaviour, 'peaksC' | 'highestPeakC'> {
  const last = [...peaksC, peakC].slice(-KEEP_PEAKS);
  const highestC = Math.max(peakC, highestPeakC ?? peakC);
  const lastC = Math.max(...last);
  const turnedDown = last.length === KEEP_PEAKS && lastC < highestC - TURNED_DOWN_K;
  return { peaksC: last, highestPeakC: turnedDown ? lastC : highestC };
}

function lowestTroughOf({ trough, cycles }: Turns): number | null {
  if (cycles.length > 0) return Math.min(...cycles.map((c) => c.troughC));
  return trough?.plateC ?? null;
}

/** While the plate is brought up or let down its turns say nothing of the thermostat. */
function enterPhase(b: Behaviour, phase: IronPhase): Behaviour {
  if (phase === b.phase) return b;
  const turns = phase === 'regulating' ? {} : { cycles: [], trough: null, swing: null };
  const peaks = phase === 'cold' ? { peaksC: [], highestPeakC: null } : {};
  return { ...b, ...turns, ...peaks, phase };
}

/** What the thermostat does at its peaks still holds after a gap; where the plate is in its swing does not. */
const afterGap = ({ peaksC, highestPeakC }: Behaviour): Behaviour => ({
  ...noBehaviour,
  peaksC,
  highestPeakC,
});

/** The dial has been turned for another stage: neither cycles nor, on the way down, peaks may be held against it. */
export function retuned(
  b: Behaviour,
  stage: { readonly lowC: number; readonly highC: number },
  down: boolean,
): Behaviour {
  const peaks = down ? { peaksC: [], highestPeakC: null } : {};
  const known = { ...b, ...peaks, cycles: [], trough: null, swing: null };
  if (b.phase !== 'regulating' || b.smooth === null) return known;
  if (b.smooth.levelC < stage.lowC) return { ...known, phase: 'warming' };
  return b.smooth.levelC > stage.highC ? { ...known, phase: 'cooling' } : known;
}

/**
 * The highest plate temperature to expect of this thermostat, degC; null until it has turned once by itself. The first
 * peak counts: coming up, the plate goes furthest.
 */
export const expectedPeakC = (b: Behaviour): number | null => b.highestPeakC;
