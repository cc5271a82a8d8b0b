import type { BookReader } from '../../../../daemon/book/book.ts';
import { linesRead } from '../../../../daemon/probe/wire/forms/lines-read.ts';
import { Refusal } from '../../../../daemon/refusal.ts';
import type { Desk, LiveChange } from '../../../../daemon/web/desk.ts';
import type { HeatSchedule } from '../../../../shared/heat/schedule.ts';
import type { Outcome } from '../../../../shared/messages/command.ts';
import { protocolForm } from '../../../../shared/messages/line-form.ts';
import type { AlarmLive, Live, ProbeLive, Situation } from '../../../../shared/messages/live.ts';
import { unknownProbe } from '../../../../shared/thermometer/probe.ts';
import { USUAL_CONFIDENCE } from '../../../../shared/thermometer/uncertainty.ts';
import { usualUnattended } from '../../../../shared/watch/attended.ts';
import { settingsWords } from '../../../../shared/words/settings.ts';
import {
  calibrations,
  cement,
  found,
  iron,
  ironDial,
  ironEvenness,
  item,
  piece,
  pieceHeat,
  probe,
  probeLag,
  probeMotion,
  schedule,
  situation,
  summary,
  trace,
  verification,
} from './samples.ts';

export interface FakeDesk extends Desk {
  /** Applies a change and tells it, as the program would. */
  change(change: LiveChange): void;
  /** Every command that came through, with its arguments. */
  readonly calls: readonly (readonly unknown[])[];
  readonly listeners: number;
}

export const EPOCH = 'test-epoch';

const alarmId = (alarm: AlarmLive): string => `${alarm.iron} ${alarm.kind} ${alarm.probe ?? ''}`;

/** What one has heard of, folded: the same for the desk itself and for a client of its stream. */
export class Picture {
  probes = new Map<string, ProbeLive>();
  alarms = new Map<string, AlarmLive>();
  situation: Situation = situation();

  static of(live: Pick<Live, 'probes' | 'alarms' | 'situation'>): Picture {
    const picture = new Picture();
    for (const one of live.probes) picture.probes.set(one.id, one);
    for (const alarm of live.alarms) picture.alarms.set(alarmId(alarm), alarm);
    picture.situation = live.situation;
    return picture;
  }

  take(change: LiveChange): void {
    switch (change.kind) {
      case 'readings':
        for (const one of change.probes) this.probes.set(one.id, one);
        return;
      case 'alarm':
        if (change.alarm.state === 'normal') this.alarms.delete(alarmId(change.alarm));
        else this.alarms.set(alarmId(change.alarm), change.alarm);
        return;
      case 'situation': {
        this.situation = change.situation;
        const known = new Set(change.situation.irons.flatMap((one) => one.probes));
        for (const id of this.probes.keys()) if (!known.has(id)) this.probes.delete(id);
        return;
      }
      case 'mark':
    }
  }

  /** In one order, for comparing. */
  get state(): unknown {
    return { probes: sorted(this.probes), alarms: sorted(this.alarms), situation: this.situation };
  }
}

const sorted = <T>(map: ReadonlyMap<string, T>): T[] =>
  [...map.keys()].sort().flatMap((key) => map.get(key) ?? []);

function knownIron(id: string): void {
  if (id !== iron.id) throw new Refusal('unknown', `There is no iron "${id}".`, 'iron');
}

export const fakeReader = (over: Partial<BookReader> = {}): BookReader => ({
  sessions: async () => [summary],
  session: async (id) => (id === summary.id ? summary : null),
  findings: async () => found,
  readingsCsv: async function* (id) {
    yield 'utc,plateC\n';
    yield `2026-03-01T09:00:10.000Z,${id.length}\n`;
  },
  verify: async () => verification,
  trace: async () => trace,
  items: async () => [item],
  shop: async () => ({ visits: [], notes: [], entries: [], unreadable: 0 }),
  close: async () => {},
  ...over,
});

export function fakeDesk(over: Partial<Desk> = {}): FakeDesk {
  const picture = new Picture();
  const listeners = new Set<(change: LiveChange) => void>();
  const calls: unknown[][] = [];
  const schedules = new Map<string, HeatSchedule>([[schedule.id, schedule]]);
  const outcome = (session: string | null, commandId: string, ...what: unknown[]): Promise<Outcome> => {
    calls.push([...what, commandId]);
    return Promise.resolve({ commandId, session, kept: true });
  };
  return {
    calls,
    hearing: (armedPages) => {
      calls.push(['hearing', armedPages]);
    },
    get listeners() {
      return listeners.size;
    },
    change(change) {
      picture.take(change);
      for (const listener of listeners) listener(change);
    },
    live: () => ({
      program: { name: 'soleplate', version: '0.1.0', epoch: EPOCH },
      at: '2026-03-01T09:00:00.000Z',
      probes: [...picture.probes.values()],
      alarms: [...picture.alarms.values()],
      situation: picture.situation,
    }),
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    reader: fakeReader(),
    startSession: async (ironId, commandId) => {
      knownIron(ironId);
      return outcome(summary.id, commandId, 'start', ironId);
    },
    stopSession: (id, commandId) => outcome(id, commandId, 'stop', id),
    mark: (id, mark, commandId) => outcome(id, commandId, 'mark', id, mark),
    acknowledge: async (ironId, alarm, commandId) => {
      knownIron(ironId);
      return outcome(summary.id, commandId, 'acknowledge', ironId, alarm);
    },
    silence: async (ironId, alarm, forMs, commandId) => {
      knownIron(ironId);
      return outcome(summary.id, commandId, 'silence', ironId, alarm, forMs);
    },
    closeItem: async (id, { by, found: what, commandId }) => {
      if (id !== item.id) throw new Refusal('unknown', `There is no item "${id}".`, 'id');
      calls.push(['closeItem', id, by, what, commandId]);
      return {
        ...item,
        closing: { item: id, by, found: what, commandId, atUtc: '2026-03-02T08:00:00.000Z' },
      };
    },
    choose: async (choice) => {
      if (choice.kind === 'serial') throw new Refusal('conflict', 'The choice is made already.');
      calls.push(['choose', choice]);
    },
    schedules: () => [...schedules.values()],
    scheduleVersions: (id) => (id === schedule.id ? [schedule] : []),
    devices: () => [{ id: '/dev/ttyUSB0', name: 'left handle', form: protocolForm }],
    deviceLines: (id, form) => {
      if (id !== '/dev/ttyUSB0') throw new Refusal('unknown', `No device "${id}".`, 'id');
      return linesRead(['t=21.5'], { form: form ?? protocolForm, deviceId: id, unitOf: () => '°C' });
    },
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
      if (id !== probe.id) throw new Refusal('unknown', `There is no probe "${id}".`, 'id');
      return { probe: id, iron: iron.id, toldAt: '2026-03-01T09:00:00.000Z', is };
    },
    addTypedReading: async (ironId, plateC, commandId) => {
      calls.push(['addTypedReading', ironId, plateC, commandId]);
      return { commandId, session: summary.id, kept: true };
    },
    presence: () => {
      calls.push(['presence']);
    },
    pieces: {
      pieces: () => [piece],
      putPiece: async (id, draft, basedOn) => ({
        ...draft,
        id,
        version: basedOn + 1,
        madeAt: '2026-03-02T08:00:00Z',
      }),
      heat: async (id) => {
        if (id !== piece.id) throw new Refusal('unknown', `There is no piece "${id}".`, 'id');
        return pieceHeat;
      },
      note: async (id, note, commandId) => {
        calls.push(['note', id, note, commandId]);
      },
      act: (said, commandId) => outcome(summary.id, commandId, 'act', said),
    },
    motions: {
      motion: (id) => {
        if (id !== probe.id) throw new Refusal('unknown', `There is no probe "${id}".`, 'id');
        return probeMotion;
      },
      begin: () => probeMotion,
      giveUp: () => probeMotion,
    },
    attended: { after: () => usualUnattended, put: async (after) => after },
    cure: {
      cements: () => ({ cements: [cement], learned: {} }),
      putCement: async (id, draft, basedOn) => ({
        ...draft,
        id,
        version: basedOn + 1,
        madeAt: '2026-03-02T08:00:00Z',
      }),
      learnAnew: async (id, commandId) => {
        if (id !== cement.id) throw new Refusal('unknown', `There is no cement "${id}".`, 'cement');
        calls.push(['learnAnew', id, commandId]);
      },
      coats: () => ({ revision: 0, coats: [], fire: [], clock: null, amiss: [] }),
      act: (act, commandId) => outcome(null, commandId, 'coat', act),
      air: () => ({ now: null, concerns: [], history: [], forecast: [] }),
      sayAir: async (air, commandId) => {
        calls.push(['sayAir', air, commandId]);
      },
      sayForecast: async (forecast, commandId) => {
        calls.push(['sayForecast', forecast, commandId]);
      },
    },
    removeIron: async (id) => {
      calls.push(['removeIron', id]);
    },
    calibrations: (id) => {
      if (id !== probe.id) throw new Refusal('unknown', `There is no probe "${id}".`, 'id');
      return calibrations;
    },
    calibrate: async (id, act, unit) => {
      if (id !== probe.id) throw new Refusal('unknown', `There is no probe "${id}".`, 'id');
      if (act.act === 'wait' && act.kind === 'ice') throw new Refusal('invalid', 'No water here.', 'kind');
      calls.push(['calibrate', id, act, unit]);
      return calibrations;
    },
    lag: (id) => {
      if (id !== probe.id) throw new Refusal('unknown', `There is no probe "${id}".`, 'id');
      return probeLag;
    },
    measureLag: async (id, act, unit) => {
      if (id !== probe.id) throw new Refusal('unknown', `There is no probe "${id}".`, 'id');
      if (act.act === 'step' && act.kind === 'plunge') throw new Refusal('invalid', 'No water here.', 'kind');
      calls.push(['measureLag', id, act, unit]);
      return probeLag;
    },
    putDeviceName: async (id, name) => ({ id, name, form: protocolForm }),
    dial: (id) => {
      knownIron(id);
      return ironDial;
    },
    addTypedPoint: async (id, typed) => {
      calls.push(['addTypedPoint', id, typed]);
      return ironDial;
    },
    removeDialPoint: async (id, mark) => {
      calls.push(['removeDialPoint', id, mark]);
      return ironDial;
    },
    acceptDial: async (id) => {
      calls.push(['acceptDial', id]);
      return ironDial;
    },
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
    forgetSpots: async (id) => {
      calls.push(['forgetSpots', id]);
      return ironEvenness;
    },
    putDeviceForm: async (id, form) => ({ id, name: '', form }),
    ...over,
  };
}
