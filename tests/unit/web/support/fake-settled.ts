import { linesRead } from '../../../../daemon/probe/wire/forms/lines-read.ts';
import { Refusal } from '../../../../daemon/refusal.ts';
import type { Desk, SettingsDesk } from '../../../../daemon/web/desk.ts';
import type { HeatSchedule } from '../../../../shared/heat/schedule.ts';
import { protocolForm } from '../../../../shared/messages/line-form.ts';
import { unknownProbe } from '../../../../shared/thermometer/probe.ts';
import { USUAL_CONFIDENCE } from '../../../../shared/thermometer/uncertainty.ts';
import { settingsWords } from '../../../../shared/words/settings.ts';
import { calibrations, ironDial, ironEvenness, probeLag, probeMotion } from './measured-samples.ts';
import { iron, probe, schedule } from './samples.ts';

type Settled = Pick<Desk, 'settings' | 'devices' | 'calibrations' | 'lags' | 'motions' | 'dials' | 'plates'>;

/** Where irons, probes and devices are settled and measured. */
export const fakeSettled = (calls: unknown[][]): Settled => ({
  settings: fakeSettings(calls),
  devices: {
    devices: () => [{ id: '/dev/ttyUSB0', name: 'left handle', form: protocolForm }],
    lines: async (id, form) => {
      if (id !== '/dev/ttyUSB0') throw new Refusal('unknown', `No device "${id}".`, 'id');
      return linesRead(['t=21.5'], { form: form ?? protocolForm, deviceId: id, unitOf: () => '°C' });
    },
    putName: async (id, name) => ({ id, name, form: protocolForm }),
    putForm: async (id, form) => ({ id, name: '', form }),
  },
  calibrations: {
    calibrations: (id) => {
      knownProbe(id);
      return calibrations;
    },
    calibrate: async (id, act, unit) => {
      knownProbe(id);
      if (act.act === 'wait' && act.kind === 'ice') throw new Refusal('invalid', 'No water here.', 'kind');
      calls.push(['calibrate', id, act, unit]);
      return calibrations;
    },
  },
  lags: {
    lag: (id) => {
      knownProbe(id);
      return probeLag;
    },
    measureLag: async (id, act, unit) => {
      knownProbe(id);
      if (act.act === 'step' && act.kind === 'plunge') throw new Refusal('invalid', 'No water here.', 'kind');
      calls.push(['measureLag', id, act, unit]);
      return probeLag;
    },
  },
  motions: {
    motion: (id) => {
      knownProbe(id);
      return probeMotion;
    },
    begin: () => probeMotion,
    giveUp: () => probeMotion,
  },
  dials: {
    dial: (id) => {
      knownIron(id);
      return ironDial;
    },
    addTypedPoint: async (id, typed) => {
      calls.push(['addTypedPoint', id, typed]);
      return ironDial;
    },
    removePoint: async (id, mark) => {
      calls.push(['removeDialPoint', id, mark]);
      return ironDial;
    },
    accept: async (id) => {
      calls.push(['acceptDial', id]);
      return ironDial;
    },
  },
  plates: {
    evenness: (id) => {
      knownIron(id);
      return ironEvenness;
    },
    addSpot: async (id, spot) => {
      calls.push(['addSpot', id, spot]);
      return ironEvenness;
    },
    removeSpot: async (id, place) => {
      calls.push(['removeSpot', id, place]);
      return ironEvenness;
    },
    forget: async (id) => {
      calls.push(['forgetSpots', id]);
      return ironEvenness;
    },
  },
});

function fakeSettings(calls: unknown[][]): SettingsDesk {
  const schedules = new Map<string, HeatSchedule>([[schedule.id, schedule]]);
  return {
    schedules: () => [...schedules.values()],
    scheduleVersions: (id) => (id === schedule.id ? [schedule] : []),
    irons: () => [iron],
    probes: () => [probe],
    putSchedule: async (id, draft, basedOn) => {
      const now = schedules.get(id)?.version ?? 0;
      if (now !== basedOn)
        throw new Refusal('conflict', settingsWords.scheduleChanged(id, now, basedOn), 'basedOn');
      const made = { ...draft, id, version: now + 1, madeAt: '2026-03-02T08:00:00Z' };
      schedules.set(id, made);
      return made;
    },
    putIron: async (id, draft) => {
      if (draft.scheduleId !== schedule.id)
        throw new Refusal('invalid', `There is no heat schedule "${draft.scheduleId}".`, 'scheduleId');
      return { ...draft, id, confidence: draft.confidence ?? USUAL_CONFIDENCE, simulated: false };
    },
    putProbe: async (
      id,
      { toleranceClass = unknownProbe.toleranceClass, mountingK = null, lag = null, ...draft },
    ) => ({ ...draft, id, toleranceClass, mountingK, lag }),
    putPlace: async (id, is) => {
      knownProbe(id);
      return { probe: id, iron: iron.id, toldAt: '2026-03-01T09:00:00.000Z', is };
    },
    removeIron: async (id) => {
      calls.push(['removeIron', id]);
    },
  };
}

/** Refuses any iron but the one that there is. */
export function knownIron(id: string): void {
  if (id !== iron.id) throw new Refusal('unknown', `There is no iron "${id}".`, 'iron');
}

function knownProbe(id: string): void {
  if (id !== probe.id) throw new Refusal('unknown', `There is no probe "${id}".`, 'id');
}
