import type { HeatSchedule } from '../../../../shared/heat/schedule.ts';
import type { Iron } from '../../../../shared/iron/iron.ts';
import type { AlarmLive, ProbeLive, Situation } from '../../../../shared/messages/live.ts';
import type { ProbeSettings } from '../../../../shared/thermometer/probe.ts';
import { unknownProbe } from '../../../../shared/thermometer/probe.ts';
import { USUAL_CONFIDENCE } from '../../../../shared/thermometer/uncertainty.ts';

/** Invented values for tests of the web side. */

export const schedule: HeatSchedule = {
  id: 'trial',
  version: 3,
  madeAt: '2026-03-01T08:00:00Z',
  name: 'Trial schedule',
  fabric: 'test cloth',
  stages: [{ id: 'tack', name: 'Tack', lowC: 110, targetC: 121, highC: 132, standing: 'test value' }],
  fabricLimitC: 190.5,
  cementLimitC: null,
  limitStanding: 'test value',
  source: null,
};

export const iron: Iron = {
  id: 'small',
  name: 'Small iron',
  probes: ['/dev/ttyT0/1'],
  scheduleId: 'trial',
  confidence: USUAL_CONFIDENCE,
  simulated: true,
};

export const probe: ProbeSettings = {
  id: '/dev/ttyT0/1',
  label: 'Sole plate',
  ...unknownProbe,
};

export const probeLive = (plateC: number, id = probe.id): ProbeLive => ({
  id,
  label: 'Sole plate',
  iron: iron.id,
  simulated: true,
  quality: 'ok',
  seat: 'fitted',
  place: null,
  readC: plateC,
  plateC,
  standing: { kind: 'in-stage', stages: ['Tack'] },
  ageMs: 12,
  trend: 'steady',
  slopeKPerS: 0,
  guardBandK: 2.2,
  overK: 0,
  measured: false,
  hot: plateC >= 43,
});

export const alarmLive = (over: Partial<AlarmLive> = {}): AlarmLive => ({
  iron: iron.id,
  kind: 'over-limit',
  probe: probe.id,
  priority: 3,
  state: 'unacknowledged',
  since: '2026-03-01T09:00:00.000Z',
  peakC: 193.4,
  detail: '',
  silencedUntil: null,
  ...over,
});

export const situation = (over: Partial<Situation> = {}): Situation => ({
  irons: [
    {
      id: iron.id,
      name: iron.name,
      simulated: true,
      probes: iron.probes,
      phase: 'regulating',
      hot: true,
      watched: 'monitored',
      check: null,
      typed: null,
      chart: null,
      place: 'unknown',
      at: null,
      stageId: 'tack',
      dial: null,
      evenness: null,
      session: '018f0000-0000-7000-8000-000000000001',
      schedule,
    },
  ],
  devices: [],
  keeping: { kept: true, detail: '' },
  hearing: { armedPages: 1, unheard: false },
  work: { inHand: null, recent: [], heatRevision: 0, coatRevision: 0, ready: true },
  choice: null,
  viewOnly: false,
  settingsRevision: 0,
  simulated: true,
  ...over,
});
