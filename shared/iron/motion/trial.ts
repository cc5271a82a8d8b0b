import { judgeMotion, type MotionJudged } from './check.ts';

/** The check as it is led: still for 5 s, then moved for 5 s, with time to let go and to take hold. Survives JSON. */
export interface MotionTrial {
  readonly startedMs: number;
  /** Values read while it stood and while it was moved, g. */
  readonly still: readonly number[];
  readonly moved: readonly number[];
  readonly end: MotionJudged | null;
}

/** What the user is to do now. */
export const trialAsksKinds = ['let-stand', 'move', 'nothing'] as const;
export type TrialAsks = (typeof trialAsksKinds)[number];

/** The hand goes away first, and takes hold again, ms. */
const LET_GO_MS = 1500;
const TAKE_HOLD_MS = 2500;
/** How long each is looked at, ms. */
const TRIAL_SPAN_MS = 5000;

const STOOD_MS = LET_GO_MS + TRIAL_SPAN_MS;
const MOVED_FROM_MS = STOOD_MS + TAKE_HOLD_MS;
const MOVED_MS = MOVED_FROM_MS + TRIAL_SPAN_MS;

export const startTrial = (nowMs: number): MotionTrial => ({
  startedMs: nowMs,
  still: [],
  moved: [],
  end: null,
});

/** What is asked of the user at `tMs`. */
export function trialAsks({ startedMs, end }: MotionTrial, tMs: number): TrialAsks {
  if (end !== null) return 'nothing';
  return tMs - startedMs < STOOD_MS ? 'let-stand' : 'move';
}

/** How long is left of what is asked for now, ms. */
export function trialLeftMs(trial: MotionTrial, tMs: number): number {
  const sinceMs = tMs - trial.startedMs;
  switch (trialAsks(trial, tMs)) {
    case 'let-stand':
      return STOOD_MS - sinceMs;
    case 'move':
      return Math.max(0, MOVED_MS - sinceMs);
    case 'nothing':
      return 0;
  }
}

/**
 * Takes in a line of the iron's probe, or a moment without one.
 * @param motionG null where no motion value came
 */
export function heardInTrial(before: MotionTrial, tMs: number, motionG: number | null): MotionTrial {
  if (before.end !== null) return before;
  const sinceMs = tMs - before.startedMs;
  if (sinceMs >= MOVED_MS) return { ...before, end: judgeMotion(before.still, before.moved) };
  if (motionG === null || !Number.isFinite(motionG)) return before;
  if (sinceMs >= LET_GO_MS && sinceMs < STOOD_MS) return { ...before, still: [...before.still, motionG] };
  return sinceMs >= MOVED_FROM_MS ? { ...before, moved: [...before.moved, motionG] } : before;
}
