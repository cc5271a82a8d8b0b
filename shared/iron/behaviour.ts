import { COLD_C } from '../thermometer/thermometer.ts';
import { type Cycle, cycleBetween } from './cycle.ts';
import { hasMoved, type IronPhase, nextPhase } from './phase.ts';
import { follow, type Point, startTurning, type Turning } from './turning.ts';

/** What an iron is doing, from the temperature of its plate alone. */
export interface Behaviour {
  readonly phase: IronPhase;
  readonly turning: Turning | null;
  readonly trough: Point | null;
  readonly peak: Point | null;
  /** The last whole cycles since the plate began to be regulated, oldest first, at most `KEEP`. */
  readonly cycles: readonly Cycle[];
  /** The last peaks at this dial setting as far as that is known, degC, oldest first, at most `KEEP`. */
  readonly peaksC: readonly number[];
  readonly held: { readonly plateC: number; readonly sinceMs: number } | null;
  /** A session is due from `hot` on; `cold` once the plate has been measured cold for a while. */
  readonly heat: 'cold' | 'hot';
  readonly coldSinceMs: number | null;
}

const KEEP = 4;
/** A plate that passes this is coming up, degC; above `COLD_C` so that it doesn't flutter. */
const HOT_C = 45;
/** A plate measured cold for so long has ended its work, ms. */
const COLD_FOR_MS = 60_000;

export const noBehaviour: Behaviour = {
  phase: 'unknown',
  turning: null,
  trough: null,
  peak: null,
  cycles: [],
  peaksC: [],
  held: null,
  heat: 'cold',
  coldSinceMs: null,
};

export interface Behaved {
  readonly behaviour: Behaviour;
  readonly cycle: Cycle | null;
  readonly heat: 'hot' | 'cold' | null;
}

/** Takes one more valid reading of the iron's leading probe. */
export function observe(before: Behaviour, tMs: number, plateC: number): Behaved {
  const turned =
    before.turning === null
      ? { turning: startTurning(tMs, plateC), turn: null }
      : follow(before.turning, tMs, plateC);
  const held =
    before.held === null || hasMoved(plateC, before.held.plateC) ? { plateC, sinceMs: tMs } : before.held;
  const turns = takeTurn(before, turned.turn);
  const phase = nextPhase(before.phase, {
    plateC,
    tMs,
    turn: turned.turn?.kind ?? null,
    direction: turned.turning.direction,
    cycles: turns.cycles,
    lastPeakC: turns.peak?.plateC ?? null,
    heldSinceMs: held.sinceMs,
  });
  const heat = judgeHeat(before, tMs, plateC);
  const { cycle, ...turnsAfter } = turns;
  const moved = { ...before, ...turnsAfter, ...heat.after, turning: turned.turning, held };
  return { behaviour: enterPhase(moved, phase), cycle, heat: heat.change };
}

interface Turns extends Pick<Behaviour, 'trough' | 'peak' | 'cycles' | 'peaksC'> {
  readonly cycle: Cycle | null;
}

function takeTurn(
  before: Behaviour,
  turn: { readonly kind: 'peak' | 'trough'; readonly point: Point } | null,
): Turns {
  const same = { trough: before.trough, peak: before.peak, cycles: before.cycles, peaksC: before.peaksC };
  if (turn === null) return { ...same, cycle: null };
  if (turn.kind === 'peak') {
    return {
      ...same,
      peak: turn.point,
      peaksC: [...before.peaksC, turn.point.plateC].slice(-KEEP),
      cycle: null,
    };
  }
  const { trough, peak } = before;
  if (trough === null || peak === null || peak.tMs < trough.tMs)
    return { ...same, trough: turn.point, cycle: null };
  const cycle = cycleBetween(trough, peak, turn.point);
  return { ...same, trough: turn.point, cycles: [...before.cycles, cycle].slice(-KEEP), cycle };
}

/** While the plate is brought up or let down its cycles say nothing of the thermostat. */
function enterPhase(b: Behaviour, phase: IronPhase): Behaviour {
  if (phase === b.phase) return b;
  const fresh = phase === 'regulating' ? {} : { cycles: [], trough: null };
  return { ...b, ...fresh, phase, peaksC: phase === 'cold' ? [] : b.peaksC };
}

function judgeHeat(
  before: Behaviour,
  tMs: number,
  plateC: number,
): { readonly after: Pick<Behaviour, 'heat' | 'coldSinceMs'>; readonly change: 'hot' | 'cold' | null } {
  if (before.heat === 'cold') {
    const hot = plateC >= HOT_C;
    return { after: { heat: hot ? 'hot' : 'cold', coldSinceMs: null }, change: hot ? 'hot' : null };
  }
  if (plateC >= COLD_C) return { after: { heat: 'hot', coldSinceMs: null }, change: null };
  const coldSinceMs = before.coldSinceMs ?? tMs;
  const cold = tMs - coldSinceMs >= COLD_FOR_MS;
  return { after: { heat: cold ? 'cold' : 'hot', coldSinceMs }, change: cold ? 'cold' : null };
}

/** Another probe leads now, or the dial was turned: what was learned of the swing no longer holds. */
export const forget = (b: Behaviour): Behaviour => ({
  ...noBehaviour,
  phase: b.phase,
  heat: b.heat,
  coldSinceMs: b.coldSinceMs,
});

/** The highest plate temperature to expect of this thermostat, degC; null until a whole cycle is known. */
export function expectedPeakC(b: Behaviour): number | null {
  return b.cycles.length === 0 && b.peaksC.length < 2 ? null : Math.max(...b.peaksC);
}
