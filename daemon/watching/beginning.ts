import { watchedHow } from '../../shared/thermometer/place.ts';
import { isHot } from '../../shared/watch/hot.ts';
import type { Carried, StartReason, WatchSettings } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { FOLD_VERSION } from '../../shared/watch/watch.ts';
import { newId } from '../ids.ts';
import type { Beginning } from './recorder.ts';

/** What is the same for every session of a run of the program. */
export interface Run {
  /** UTC at the clock's zero, ms since 1970. */
  readonly originUtcMs: number;
  readonly programVersion: string;
}

/**
 * A new session that begins at `from` with what is carried into it.
 * @param now where that lies behind: the state in which it was begun
 */
export function beginning(
  why: StartReason,
  carried: Carried,
  from: WatchState,
  run: Run,
  now: WatchState = from,
): Beginning {
  const { iron } = carried.settings;
  const head = {
    id: newId(),
    ironId: iron.id,
    ironName: iron.name,
    simulated: iron.simulated,
    watched: watchedHow((now.settings ?? carried.settings).probes, iron.id),
    foldVersion: FOLD_VERSION,
    programVersion: run.programVersion,
    why,
    originUtcMs: run.originUtcMs,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    firstSeq: from.seq,
    firstMs: from.tMs,
    fromSession: carried.fromSession,
  };
  return { head, carried, from };
}

/** What is carried into a session that begins while its watch runs. */
export function carriedFrom(state: WatchState, fromSession: string | null): Carried {
  return {
    settings: settingsOf(state),
    alarms: Object.values(state.alarms).filter((a) => a.state !== 'normal'),
    stageId: state.work.stageId,
    place: state.work.place,
    at: state.work.at,
    dial: state.work.dial?.mark ?? null,
    hot: isHot(state),
    fromSession,
    state,
  };
}

/** The settings of a watch that runs: it never runs without. */
export function settingsOf(state: WatchState): WatchSettings {
  if (state.settings === null) throw new Error('A watch runs without settings.');
  return state.settings;
}
