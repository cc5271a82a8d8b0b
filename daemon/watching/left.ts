import { carriedOver } from '../../shared/alarm/machine.ts';
import { type AlarmRecord, alarmKeyText } from '../../shared/alarm/record.ts';
import { alarmTable } from '../../shared/alarm/table.ts';
import type { Iron } from '../../shared/iron/iron.ts';
import type { Carried, WatchSettings } from '../../shared/watch/input.ts';
import { ironingFrom, unconfirmed } from '../../shared/watch/ironing.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import type { InterruptedSession } from '../book/book.ts';

/** What sessions that broke off in an earlier run of the program left, by iron, until a watch goes on with it. */
export class Leftovers {
  readonly #byIron = new Map<string, InterruptedSession>();
  readonly #noted = new Set<string>();
  readonly #originUtcMs: number;

  /** `originUtcMs`: UTC at the zero of this run's clock, ms since 1970. */
  constructor(originUtcMs: number) {
    this.#originUtcMs = originUtcMs;
  }

  /** Notes what was left (newest first) and gives the irons that it is of; a session is gone on with once only. */
  note(interrupted: readonly InterruptedSession[], irons: readonly Iron[]): readonly Iron[] {
    return irons.filter(({ id }) => {
      const left = interrupted.find((one) => one.ironId === id);
      if (left === undefined || this.#noted.has(left.id)) return false;
      this.#noted.add(left.id);
      this.#byIron.set(id, left);
      return true;
    });
  }

  /** Whether the iron was not measured cold when it was left, or an alarm of it stood. */
  mayBeHot(iron: string): boolean {
    const left = this.#byIron.get(iron);
    return left !== undefined && (left.hot || left.alarms.length > 0);
  }

  /** What a watch of these settings begins with: as a rule nothing; what was left is given once. */
  carriedInto(settings: WatchSettings): Carried {
    const left = this.#byIron.get(settings.iron.id);
    this.#byIron.delete(settings.iron.id);
    return left === undefined ? afresh(settings) : carriedFromLeft(left, settings, this.#originUtcMs);
  }
}

const afresh = (settings: WatchSettings): Carried => ({
  settings,
  alarms: [],
  stageId: null,
  place: 'unknown',
  at: null,
  dial: null,
  hot: false,
  fromSession: null,
  state: null,
});

/** What is carried on from a session that broke off, in the times of a clock whose zero is at `originUtcMs`. */
const carriedFromLeft = (
  left: InterruptedSession,
  settings: WatchSettings,
  originUtcMs: number,
): Carried => ({
  settings,
  alarms: left.alarms.map((a) => shifted(a, left.originUtcMs - originUtcMs)),
  stageId: left.stageId,
  place: left.place,
  at: left.at,
  dial: left.dial,
  hot: left.hot,
  fromSession: left.id,
  state: null,
});

const later = (tMs: number | null, byMs: number): number | null => (tMs === null ? null : tMs + byMs);

const shifted = (alarm: AlarmRecord, byMs: number): AlarmRecord => ({
  ...alarm,
  raisedAtMs: later(alarm.raisedAtMs, byMs),
  pendingSinceMs: later(alarm.pendingSinceMs, byMs),
  acknowledgedAtMs: later(alarm.acknowledgedAtMs, byMs),
  reAlarmAtMs: later(alarm.reAlarmAtMs, byMs),
  silencedUntilMs: later(alarm.silencedUntilMs, byMs),
});

/**
 * A watch that runs already takes over what was left, since the book could not be read when it began. What the watch has
 * seen and been told itself counts before what was left.
 */
export function takenOver(state: WatchState, left: Carried): WatchState {
  const own = Object.values(state.alarms).filter((a) => a.state !== 'normal');
  const alarms = [...left.alarms.map((a) => carriedOver(a, alarmTable[a.kind], state.tMs)), ...own];
  const { stageId, place, at, dial } = state.work;
  const leftDial = left.dial ?? null;
  const work = {
    ...state.work,
    recording: true,
    stageId: stageId ?? left.stageId,
    place: place === 'unknown' ? left.place : place,
    at: at ?? unconfirmed(left.at ?? null),
    dial: dial ?? (leftDial === null ? null : { mark: leftDial, toldMs: state.tMs }),
  };
  // A watch that has visits already goes on with its own.
  const ironing = state.ironing.visits === 0 ? ironingFrom(work, state.tMs) : state.ironing;
  return { ...state, ...(left.hot ? asHot(state) : {}), work, ironing, alarms: byKey(alarms) };
}

const byKey = (alarms: readonly AlarmRecord[]): WatchState['alarms'] =>
  Object.fromEntries(alarms.map((a) => [alarmKeyText(a), a]));

/** A plate that has not been measured yet is as hot as it was left. */
function asHot({ heat, thermometers }: WatchState): Pick<WatchState, 'heat' | 'thermometers'> {
  const fitted = Object.entries(thermometers).map(([id, t]) => [
    id,
    t.heat === 'unknown' ? { ...t, heat: 'hot' as const } : t,
  ]);
  return { heat: { ...heat, is: 'hot' }, thermometers: Object.fromEntries(fitted) };
}
