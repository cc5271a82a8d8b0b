import type { AlarmChange, AlarmRecord, AlarmState } from '../../shared/alarm/record.ts';
import { priorityOf } from '../../shared/alarm/table.ts';
import { placeAmongStages } from '../../shared/heat/standing.ts';
import { isDoubted } from '../../shared/iron/dial/sitting.ts';
import type { AlarmLive, DeviceLive, IronLive, ProbeLive } from '../../shared/messages/live.ts';
import type { AtLive } from '../../shared/messages/piece.ts';
import { seatOf, watchedHow } from '../../shared/thermometer/place.ts';
import type { ProbeId } from '../../shared/thermometer/sample.ts';
import { trendOf } from '../../shared/thermometer/slope.ts';
import { slopeOf } from '../../shared/thermometer/thermometer.ts';
import { guardBandNowK } from '../../shared/thermometer/trust.ts';
import { countsAs, isCounted } from '../../shared/watch/counted.ts';
import { isHot } from '../../shared/watch/hot.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import type { SourceStatus } from '../probe/source.ts';
import { evennessShown } from './evenness.ts';
import type { IronWatch } from './iron-watch.ts';
import { momentsLive, type TellingOf } from './view-moments.ts';

/** From what the program knows to what is shown of it. */

export function probeLive(state: WatchState, probe: ProbeId, nowMs: number): ProbeLive | null {
  const { settings } = state;
  const own = settings?.probes.find((p) => p.id === probe);
  const thermometer = state.thermometers[probe];
  if (settings === null || own === undefined || thermometer === undefined) return null;
  const { reading, lastOk } = thermometer;
  const seat = seatOf(own, settings.iron.id);
  const readC = reading.quality === 'ok' ? reading.plateC : null;
  const plateC = isCounted(countsAs(state, probe)) ? readC : null;
  const slopeKPerS = slopeOf(thermometer);
  const trusting = { probe: own, iron: settings.iron };
  const { fabricLimitC } = settings.schedule;
  const guardBandK = guardBandNowK(trusting, thermometer, fabricLimitC);
  return {
    id: probe,
    label: own.label,
    iron: settings.iron.id,
    simulated: settings.iron.simulated,
    quality: reading.quality,
    seat,
    place: seat === 'not-told' ? null : (own.place?.is ?? null),
    readC,
    plateC,
    standing: placeAmongStages(plateC, settings.schedule, guardBandK),
    ageMs: lastOk === null ? null : Math.max(0, nowMs - lastOk.tMs),
    trend: trendOf(slopeKPerS),
    slopeKPerS,
    guardBandK,
    overK: own.unevenness?.overK ?? 0,
    measured: own.calibration !== null,
    hot: seat === 'check-pad' ? isHot(state) : seat === 'not-told' || thermometer.heat !== 'cold',
  };
}

export const probesLive = (state: WatchState, nowMs: number): readonly ProbeLive[] =>
  Object.keys(state.thermometers).flatMap((id) => probeLive(state, id, nowMs) ?? []);

export function alarmLive(state: WatchState, alarm: AlarmRecord, utcOf: (tMs: number) => string): AlarmLive {
  return {
    iron: state.settings?.iron.id ?? '',
    kind: alarm.kind,
    probe: alarm.probe,
    priority: priorityOf(alarm.kind, state.work.place === 'on-rest'),
    state: alarm.state,
    since: utcOf(alarm.raisedAtMs ?? state.tMs),
    peakC: alarm.peakC,
    detail: alarm.detail,
    silencedUntil: alarm.silencedUntilMs === null ? null : utcOf(alarm.silencedUntilMs),
  };
}

/** All alarms that are not normal, the most urgent first, then the oldest. */
export function alarmsLive(
  states: readonly WatchState[],
  utcOf: (tMs: number) => string,
): readonly AlarmLive[] {
  return states
    .flatMap((s) =>
      Object.values(s.alarms).flatMap((a) => (a.state === 'normal' ? [] : [alarmLive(s, a, utcOf)])),
    )
    .toSorted((a, b) => b.priority - a.priority || a.since.localeCompare(b.since));
}

export function ironLive(watch: IronWatch, told: TellingOf): IronLive | null {
  const { state, session } = watch;
  if (state.settings === null) return null;
  const { iron, schedule } = state.settings;
  const { dial } = state.work;
  return {
    id: iron.id,
    name: iron.name,
    simulated: iron.simulated,
    probes: iron.probes,
    phase: state.behaviour.phase,
    hot: isHot(state),
    watched: watchedHow(state.settings.probes, iron.id),
    ...momentsLive(state, told),
    place: state.work.place,
    at: atLive(state),
    stageId: state.work.stageId,
    dial: dial === null ? null : { mark: dial.mark, doubted: isDoubted(state.sitting, dial) },
    evenness: evennessShown(told.settings, iron, state),
    session,
    schedule,
  };
}

function atLive({ work: { at }, ironing: { visit } }: WatchState): AtLive | null {
  if (at === null) return null;
  const { version: _, ...place } = at;
  return {
    ...place,
    contactMs: visit?.contactMs ?? 0,
    contactBy: visit?.contactBy ?? 'marks',
    reached: visit?.reached?.name ?? null,
  };
}

export const deviceLive = ({ device, ...status }: SourceStatus): DeviceLive => ({ ...device, ...status });

/** The highest priority of an alarm that sounds now, for a buzzer: 0 where none does. */
export function loudest(states: readonly WatchState[]): 0 | 1 | 2 | 3 {
  let highest: 0 | 1 | 2 | 3 = 0;
  for (const s of states) {
    for (const a of Object.values(s.alarms)) {
      if (a.state !== 'unacknowledged' || a.silencedUntilMs !== null) continue;
      const priority = priorityOf(a.kind, s.work.place === 'on-rest');
      if (priority > highest) highest = priority;
    }
  }
  return highest;
}

/** The probes whose plates were hot when last measured. */
export const hotProbes = (states: readonly WatchState[]): ReadonlySet<ProbeId> =>
  new Set(
    states.flatMap((s) =>
      Object.entries(s.thermometers).flatMap(([id, { heat }]) => (heat === 'hot' ? [id] : [])),
    ),
  );

/** How an alarm that stands from before is told: as the change that brought it into its state. */
export const changeInto: Readonly<Record<AlarmState, AlarmChange | null>> = {
  normal: null,
  unacknowledged: 're-alarmed',
  acknowledged: 'acknowledged',
  'returned-unacknowledged': 'cleared',
};
