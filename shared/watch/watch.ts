import { alarmKeyText } from '../alarm/record.ts';
import { startBand } from '../heat/band.ts';
import { refusals } from '../words/refusals.ts';
import { commandAlarm, watchAlarms } from './alarms.ts';
import type { Finding, FoundEntry } from './finding.ts';
import type { Carried, WatchInput, WatchSettings } from './input.ts';
import { stepIron } from './iron.ts';
import { initialWatch, type WatchState } from './state.ts';
import { fitThermometers, stepThermometers } from './thermometers.ts';

/** Raised whenever the same inputs can give other findings: replay compares exactly only within one version. */
export const FOLD_VERSION = 1;

export interface Step {
  readonly state: WatchState;
  readonly found: readonly FoundEntry[];
}

/**
 * The fold: one input at its sequence number and time. Live watching, replay and what-if all run this and nothing else.
 * Before its first settings a watch only counts.
 */
export function fold(before: WatchState, input: WatchInput, seq: number, tMs: number): Step {
  const found: Finding[] = [];
  let state: WatchState = { ...before, seq, tMs };
  if (input.kind === 'settings') state = withSettings(state, input.settings, false);
  if (state.settings === null) return { state, found: [] };
  const read = stepThermometers(state, input, state.settings, tMs);
  state = { ...state, ...read.slice };
  found.push(...read.found);
  if (input.kind === 'sample') {
    const iron = stepIron(state, input.sample.probe);
    state = { ...state, ...iron.slice };
    found.push(...iron.found);
  }
  const told = hearUser(state, input);
  state = told.state;
  found.push(...told.found);
  const alarmed = watchAlarms(state, input);
  found.push(...alarmed.found);
  state = { ...state, alarms: alarmed.alarms };
  return { state, found: found.map((finding) => ({ seq, tMs, finding })) };
}

interface Told {
  readonly state: WatchState;
  readonly found: readonly Finding[];
}

function hearUser(state: WatchState, input: WatchInput): Told {
  switch (input.kind) {
    case 'mark':
      return hearMark(state, input);
    case 'acknowledge':
    case 'silence': {
      const { alarms, found } = commandAlarm(state.alarms, input, state.tMs);
      return { state: { ...state, alarms }, found };
    }
    case 'start':
    case 'stop':
      return { state: { ...state, work: { ...state.work, recording: input.kind === 'start' } }, found: [] };
    case 'keeping':
      return { state: { ...state, keeping: { kept: input.kept, detail: input.detail } }, found: [] };
    default:
      return { state, found: [] };
  }
}

function hearMark(state: WatchState, { mark, commandId }: Extract<WatchInput, { kind: 'mark' }>): Told {
  switch (mark.kind) {
    case 'place':
      return { state: { ...state, work: { ...state.work, place: mark.place } }, found: [] };
    case 'note':
      return { state, found: [] };
    case 'stage': {
      const known =
        mark.stageId === null || state.settings?.schedule.stages.some((s) => s.id === mark.stageId);
      if (!known) return { state, found: [{ kind: 'refused', commandId, reason: refusals.noSuchStage }] };
      const work = { ...state.work, stageId: mark.stageId };
      // The dial is turned for a new stage: neither cycles nor peaks of the old one may be held against it.
      const behaviour = { ...state.behaviour, cycles: [], peaksC: [], trough: null };
      return { state: { ...state, work, behaviour, band: startBand(state.tMs) }, found: [] };
    }
  }
}

function withSettings(state: WatchState, settings: WatchSettings, hot: boolean): WatchState {
  const own = settings.probes.filter((p) => settings.iron.probes.includes(p.id));
  return { ...state, settings, ...fitThermometers(state, own, { tMs: state.tMs, hot }) };
}

/**
 * A watch that goes on from what was carried over; `carried` has the sequence number of the state it goes on from. The
 * whole state is taken where there is one and `exact` allows it (the same fold version).
 */
export function resume(carried: Carried, seq: number, tMs: number, exact = true): WatchState {
  if (exact && carried.state !== null) return carried.state;
  const state = withSettings(initialWatch(seq, tMs), carried.settings, carried.hot);
  const alarms = Object.fromEntries(
    carried.alarms.map((a) => [alarmKeyText(a), { ...a, pendingSinceMs: null }]),
  );
  const { stageId, place, hot, fromSession } = carried;
  // A plate that was hot ends its session once it has been measured cold, in this run of the program as in the last.
  const behaviour = { ...state.behaviour, heat: hot ? ('hot' as const) : ('cold' as const) };
  return { ...state, alarms, behaviour, work: { stageId, place, recording: fromSession !== null } };
}
