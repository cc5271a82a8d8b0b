import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import { unknownProbe } from '../../../../shared/thermometer/probe.ts';
import { emptySample, type ProbeId, type Sample } from '../../../../shared/thermometer/sample.ts';
import { restingGuardBandK } from '../../../../shared/thermometer/trust.ts';
import { USUAL_CONFIDENCE } from '../../../../shared/thermometer/uncertainty.ts';
import type { WatchedProbe } from '../../../../shared/thermometer/watched-probe.ts';
import type { Carried, WatchSettings } from '../../../../shared/watch/input.ts';

export const PROBE: ProbeId = 'board/1';

export const probeSettings = (id: ProbeId = PROBE, more: Partial<WatchedProbe> = {}): WatchedProbe => ({
  id,
  label: id,
  ...unknownProbe,
  calibration: null,
  ...more,
});

/** The shipped schedule and one iron with these probes. */
export const watchSettings = (
  probes: readonly WatchedProbe[] = [probeSettings()],
  schedule: Partial<WatchSettings['schedule']> = {},
): WatchSettings => ({
  iron: {
    id: 'iron',
    name: 'Demo iron',
    probes: probes.map((p) => p.id),
    scheduleId: 'shipped',
    confidence: USUAL_CONFIDENCE,
    simulated: true,
  },
  probes,
  schedule: { ...shippedSchedule, ...schedule },
});

export const carried = (settings: WatchSettings, more: Partial<Carried> = {}): Carried => ({
  settings,
  alarms: [],
  stageId: null,
  place: 'unknown',
  hot: false,
  fromSession: null,
  state: null,
  ...more,
});

/** The limit of the shipped schedule less the guard band of `probeSettings` at rest, degC. */
export const LIMIT_C =
  shippedSchedule.fabricLimitC -
  restingGuardBandK(
    { probe: probeSettings(), iron: { id: 'iron', confidence: USUAL_CONFIDENCE } },
    shippedSchedule.fabricLimitC,
  );

export const reads = (tC: number, more: Partial<Sample> = {}): Sample => ({
  ...emptySample(PROBE),
  tC,
  ...more,
});
