import { goesOnWith, type MadeWith } from '../../../shared/calibration/procedure.ts';
import { GAP_MS, waitingNow } from '../../../shared/calibration/steadiness.ts';
import type { ProbeLag, StepShown } from '../../../shared/messages/lag.ts';
import { UNMEASURED_LAG_S } from '../../../shared/thermometer/lag/filter.ts';
import { type LagProcedure, stepsFor } from '../../../shared/thermometer/lag/procedure.ts';
import type { StepWatch } from '../../../shared/thermometer/lag/step-watch.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { formatTemperatureDifference, type TemperatureUnit } from '../../../shared/units/temperature.ts';
import { procedureRefusals } from '../../../shared/words/calibrating.ts';
import { stepRefusalWords } from '../../../shared/words/lag.ts';

/** From what is known of a probe's lag to what is shown of it. */

export interface KnownLag {
  readonly probe: ProbeSettings;
  readonly procedure: LagProcedure | null;
  readonly now: MadeWith;
  readonly nowMs: number;
}

export const lagShown = ({ probe, procedure, now, nowMs }: KnownLag, unit: TemperatureUnit): ProbeLag => ({
  probe: probe.id,
  lag: probe.lag,
  allowanceS: UNMEASURED_LAG_S,
  procedure:
    procedure === null
      ? null
      : {
          mounting: procedure.mounting,
          kinds: stepsFor(procedure.mounting),
          step: procedure.step === null ? null : stepShown(procedure.step, nowMs, unit),
          trouble: goesOnWith(procedure, now) ? '' : procedureRefusals.changed,
        },
});

function stepShown(step: StepWatch, nowMs: number, unit: TemperatureUnit): StepShown {
  const { kind, steppedMs, resting, settling, end, record } = step;
  const isBefore = steppedMs === null;
  const waiting = waitingNow(isBefore ? resting : settling, nowMs);
  const last = record.at(-1);
  return {
    kind,
    state: end !== null ? end.kind : !isBefore ? 'settling' : waiting.steady ? 'ready' : 'resting',
    readC: last === undefined || nowMs - last.tMs > GAP_MS ? null : last.tC,
    progress: isBefore ? waiting.progress : 1,
    spreadK: waiting.spreadK,
    sinceS: isBefore ? null : (nowMs - steppedMs) / 1000,
    found: end?.kind === 'found' ? foundShown(end.found) : null,
    refused: end?.kind === 'refused' ? stepRefusalWords(end.refusal, differenceIn(unit)) : null,
  };
}

const foundShown = ({
  tauS,
  standardS,
  startC,
  endC,
  readings,
}: NonNullable<StepShown['found']>): StepShown['found'] => ({ tauS, standardS, startC, endC, readings });

const differenceIn =
  (unit: TemperatureUnit) =>
  (k: number): string =>
    formatTemperatureDifference(k, unit, 1);
