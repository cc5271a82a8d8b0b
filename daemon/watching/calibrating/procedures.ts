import { heardIn, type Procedure } from '../../../shared/calibration/procedure.ts';
import type { MotionLevels } from '../../../shared/iron/motion/check.ts';
import { heardInTrial, type MotionTrial } from '../../../shared/iron/motion/trial.ts';
import { temperatureOf } from '../../../shared/thermometer/convert.ts';
import { heardInLag, type LagProcedure } from '../../../shared/thermometer/lag/procedure.ts';
import { STEP_LASTS_MS } from '../../../shared/thermometer/lag/step-watch.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import type { ProbeId, Sample } from '../../../shared/thermometer/sample.ts';
import type { OffPlate } from '../../../shared/thermometer/watched-probe.ts';

/**
 * The calibrations that are being made, the lags that are being measured and the checks of still and moving, one of them a
 * probe at most. They are held
 * here and not by a page, so that a reload or another page goes on where the last one was.
 */
export class Procedures {
  readonly calibrations = new Map<ProbeId, Procedure>();
  readonly lags = new Map<ProbeId, LagProcedure>();
  readonly trials = new Map<ProbeId, MotionTrial>();
  /** Probes whose line has carried a motion value. */
  readonly motionHeard = new Set<ProbeId>();
  #motionFound: (probe: ProbeId, levels: MotionLevels) => void = () => undefined;

  /** Who keeps what a check of still and moving has found; told once for each. */
  onMotionFound(found: (probe: ProbeId, levels: MotionLevels) => void): void {
    this.#motionFound = found;
  }

  /** What the watch has to know of a probe that is off its iron for a procedure. */
  readonly offPlateOf = (probe: ProbeId): OffPlate => {
    const lag = this.lags.get(probe);
    if (lag === undefined) return this.calibrations.get(probe)?.mounting === 'loose' ? { dipped: true } : {};
    const { step } = lag;
    return step?.kind === 'clip' && step.end === null
      ? { dipped: true, clippedUntilMs: step.startedMs + STEP_LASTS_MS }
      : { dipped: true };
  };

  /**
   * Follows the uncorrected readings straight from the samples: that a plunged probe jumps, or holds one value in ice, is
   * a doubt elsewhere and what is waited for here.
   * @returns true where this reading has ended a step
   */
  heard(sample: Sample, probes: readonly ProbeSettings[], tMs: number): boolean {
    const { probe, deviceMs } = sample;
    this.#heardMotion(sample, tMs);
    const procedure = this.calibrations.get(probe);
    const lag = this.lags.get(probe);
    if (!procedure?.waiting && !lag?.step) return false;
    const settled = probes.find((p) => p.id === probe);
    const readC = settled === undefined ? null : temperatureOf(sample, settled);
    if (typeof readC !== 'number') return false;
    if (procedure !== undefined) this.calibrations.set(probe, heardIn(procedure, tMs, readC));
    if (lag === undefined) return false;
    const next = heardInLag(lag, { tMs, deviceMs, readC });
    this.lags.set(probe, next);
    return lag.step?.end === null && next.step?.end !== null;
  }

  #heardMotion({ probe, motionG }: Sample, tMs: number): void {
    if (motionG !== null) this.motionHeard.add(probe);
    const trial = this.trials.get(probe);
    if (trial === undefined || trial.end !== null) return;
    const next = heardInTrial(trial, tMs, motionG);
    this.trials.set(probe, next);
    if (next.end?.kind === 'found') this.#motionFound(probe, next.end.levels);
  }
}
