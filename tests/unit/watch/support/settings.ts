import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import type { ProbeSettings } from '../../../../shared/thermometer/probe.ts';
import { emptySample, type ProbeId, type Sample } from '../../../../shared/thermometer/sample.ts';
import type { Carried, WatchSettings } from '../../../../shared/watch/input.ts';

export const PROBE: ProbeId = 'board/1';

export const probeSettings = (id: ProbeId = PROBE, more: Partial<ProbeSettings> = {}): ProbeSettings => ({
  id,
  label: id,
  thermocouple: 'K',
  unit: 'degC',
  guardBandK: 2.2,
  ...more,
});

/** The shipped schedule and one iron with these probes. */
export const watchSettings = (
  probes: readonly ProbeSettings[] = [probeSettings()],
  schedule: Partial<WatchSettings['schedule']> = {},
): WatchSettings => ({
  iron: {
    id: 'iron',
    name: 'Demo iron',
    probes: probes.map((p) => p.id),
    scheduleId: 'shipped',
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

/** The limit of the shipped schedule less the guard band of `probeSettings`, degC: 375 degF less 2.2 K. */
export const LIMIT_C = shippedSchedule.fabricLimitC - 2.2;

export const reads = (tC: number, more: Partial<Sample> = {}): Sample => ({
  ...emptySample(PROBE),
  tC,
  ...more,
});
