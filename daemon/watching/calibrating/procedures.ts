import { heardIn, type Procedure } from '../../../shared/calibration/procedure.ts';
import { temperatureOf } from '../../../shared/thermometer/convert.ts';
import { heardInLag, type LagProcedure } from '../../../shared/thermometer/lag/procedure.ts';
import { STEP_LASTS_MS } from '../../../shared/thermometer/lag/step-watch.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import type { ProbeId, Sample } from '../../../shared/thermometer/sample.ts';
import type { OffPlate } from '../../../shared/thermometer/watched-probe.ts';

/**
 * The calibrations that are being made and the lags that are being measured, one of them a probe at most. They are held
 * here and not by a page, so that a reload or another page goes on where the last one was.
 */
export class Procedures {
  readonly calibrations = new Map<ProbeId, Procedure>();
  readonly lags = new Map<ProbeId, LagProcedure>();

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
}
