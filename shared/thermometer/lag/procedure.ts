import type { Mounting } from '../../calibration/calibration.ts';
import type { MadeWith } from '../../calibration/procedure.ts';
import { heardInStep, type StepHeard, type StepKind, type StepWatch, startStep } from './step-watch.ts';

/** The measuring of a probe's lag while it is under way. Survives JSON. */
export interface LagProcedure {
  readonly mounting: Mounting;
  readonly madeWith: MadeWith;
  /** Null between steps. */
  readonly step: StepWatch | null;
}

export const beginLag = (mounting: Mounting, madeWith: MadeWith): LagProcedure => ({
  mounting,
  madeWith,
  step: null,
});

/** How a probe may be given a step. One that belongs on an iron meets no water: a mains iron never does. */
export const stepsFor = (mounting: Mounting): readonly StepKind[] =>
  mounting === 'loose' ? ['plunge', 'clip'] : ['clip'];

/** Waits for a step, anew where one was waited for already; null where a probe so mounted may not be given it. */
export const waitForStep = (procedure: LagProcedure, kind: StepKind, nowMs: number): LagProcedure | null =>
  stepsFor(procedure.mounting).includes(kind) ? { ...procedure, step: startStep(kind, nowMs) } : null;

/** Takes one uncorrected reading in; without a step to wait for it is of no account. */
export const heardInLag = (procedure: LagProcedure, heard: StepHeard): LagProcedure =>
  procedure.step === null ? procedure : { ...procedure, step: heardInStep(procedure.step, heard) };
