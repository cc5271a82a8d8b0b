import { type Calibration, isDue } from '../../../shared/calibration/calibration.ts';
import { type Correction, trustAlong } from '../../../shared/calibration/correction.ts';
import { residualsK } from '../../../shared/calibration/fit.ts';
import { kindsFor } from '../../../shared/calibration/points.ts';
import {
  goesOnWith,
  type MadeWith,
  outcomeOf,
  type Procedure,
} from '../../../shared/calibration/procedure.ts';
import { isRefusal } from '../../../shared/calibration/refusals.ts';
import { waitingNow } from '../../../shared/calibration/steadiness.ts';
import type {
  OutcomeShown,
  ProbeCalibrations,
  ProcedureShown,
} from '../../../shared/messages/calibration.ts';
import type { Placed } from '../../../shared/thermometer/place.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import type { Thermometer } from '../../../shared/thermometer/thermometer.ts';
import { budgetOf, budgetOfNow, type TrustedProbe } from '../../../shared/thermometer/trust.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import type { WatchSettings } from '../../../shared/watch/input.ts';
import { procedureRefusals } from '../../../shared/words/calibrating.ts';
import { refusalText } from '../../../shared/words/calibration.ts';

/** From what is known of a probe's calibrations to what is shown of them. */

export interface Known {
  readonly probe: ProbeSettings & Placed;
  /** All of this probe, the newest first. */
  readonly versions: readonly Calibration[];
  readonly procedure: Procedure | null;
  /** What is settled of the iron that it sits on; null: it sits on none. */
  readonly sits: WatchSettings | null;
  /** Null while its iron is not watched. */
  readonly thermometer: Thermometer | null;
  readonly nowMs: number;
  readonly nowUtcMs: number;
}

export function shown(known: Known, unit: TemperatureUnit): ProbeCalibrations {
  const { probe, versions, procedure, sits, thermometer, nowUtcMs } = known;
  const [inForce = null] = versions;
  const uneven = unevennessIn(known);
  return {
    probe: probe.id,
    versions: versions.map((calibration) => ({
      calibration,
      residualsK: residualsK(calibration.points, calibration.correction),
      along: trustAlong(calibration.correction),
    })),
    due: inForce !== null && isDue(inForce, nowUtcMs),
    budget:
      sits === null || thermometer === null
        ? null
        : budgetOfNow({ probe: { ...probe, ...uneven, calibration: inForce }, iron: sits.iron }, thermometer),
    procedure: procedure === null ? null : procedureShown(procedure, known, unit),
  };
}

/** What is known of the plate that the probe sits on. */
const unevennessIn = ({ probe, sits }: Pick<Known, 'probe' | 'sits'>): Pick<TrustedProbe, 'unevenness'> => {
  const unevenness = sits?.probes.find((p) => p.id === probe.id)?.unevenness;
  return unevenness === undefined ? {} : { unevenness };
};

/** @param iron id of the one that it sits on; null: none */
export const madeWith = ({ thermocouple, unit }: ProbeSettings, iron: string | null): MadeWith => ({
  thermocouple,
  unit,
  iron,
});

export const madeNow = ({ probe, sits }: Pick<Known, 'probe' | 'sits'>): MadeWith =>
  madeWith(probe, sits?.iron.id ?? null);

function procedureShown(procedure: Procedure, known: Known, unit: TemperatureUnit): ProcedureShown {
  const { mounting, points, waiting } = procedure;
  return {
    mounting,
    kinds: kindsFor(mounting),
    points,
    waiting: waiting === null ? null : { kind: waiting.kind, ...waitingNow(waiting, known.nowMs) },
    outcome: points.length === 0 ? null : outcomeShown(procedure, known, unit),
    trouble: goesOnWith(procedure, madeNow(known)) ? '' : procedureRefusals.changed,
  };
}

function outcomeShown(procedure: Procedure, known: Known, unit: TemperatureUnit): OutcomeShown {
  const correction = outcomeOf(procedure);
  if (isRefusal(correction)) return { kind: 'refused', ...refusalText(correction, unit) };
  return {
    kind: 'correction',
    correction,
    residualsK: residualsK(procedure.points, correction),
    along: trustAlong(correction),
    at: guardBands(procedure, correction, known),
  };
}

/** The guard band at the stages and at the limit of the iron, plate at rest: with this correction, and as it is now. */
function guardBands(
  { mounting, points }: Procedure,
  correction: Correction,
  { probe, versions, sits }: Known,
): Extract<OutcomeShown, { kind: 'correction' }>['at'] {
  if (sits === null) return [];
  const { iron, schedule } = sits;
  const steps = points.flatMap(({ resolutionK }) => resolutionK ?? []);
  const resolutionK = steps.length === 0 ? null : Math.max(...steps);
  const [inForce = null] = versions;
  const bandK = (made: TrustedProbe['calibration'], readC: number): number =>
    budgetOf({ probe: { ...probe, calibration: made }, iron }, { readC, resolutionK, lagUK: 0 }).guardBandK;
  const temperatures = new Set([...schedule.stages.map((s) => s.targetC), schedule.fabricLimitC]);
  return [...temperatures]
    .toSorted((a, b) => a - b)
    .map((atC) => ({
      atC,
      guardBandK: bandK({ mounting, iron: iron.id, correction }, atC),
      inForceK: bandK(inForce, atC),
    }));
}
