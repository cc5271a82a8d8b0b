import { carriedOver } from '../alarm/machine.ts';
import { alarmKeyText } from '../alarm/record.ts';
import { alarmTable } from '../alarm/table.ts';
import { doubtfulBand } from '../heat/band.ts';
import { commandAlarms, watchAlarms } from './alarms.ts';
import { stepAttended } from './attended.ts';
import { stepChecks } from './checks.ts';
import { stepDoubts } from './doubts.ts';
import { after, contactFacts, ironFacts } from './facts.ts';
import type { Finding, FoundEntry } from './finding.ts';
import type { Carried, WatchInput, WatchSettings } from './input.ts';
import { followedAnew, type IronSlice, stepIron } from './iron.ts';
import { ironingFrom, stepIroning, unconfirmed } from './ironing.ts';
import { stepMotions } from './motions.ts';
import { completed } from './older.ts';
import { initialWatch, type WatchState } from './state.ts';
import { convertedAnew, fitThermometers, stepThermometers, type ThermometersSlice } from './thermometers.ts';
import { newWork, stepWork } from './work.ts';

/** Raised whenever the same inputs can give other findings: replay compares exactly only within one version. */
export const FOLD_VERSION = 6;

export interface Step {
  readonly state: WatchState;
  readonly found: readonly FoundEntry[];
}

const nothing: readonly FoundEntry[] = [];

/**
 * The fold: one input at its sequence number and time. Live watching, replay and what-if all run this and nothing else.
 * Before its first settings a watch only counts.
 */
export function fold(before: WatchState, input: WatchInput, seq: number, tMs: number): Step {
  const fitted =
    input.kind === 'settings' ? withSettings(before, completed(input.settings), { tMs, hot: false }) : before;
  const { settings } = fitted;
  if (settings === null || isForeign(fitted, input))
    return { state: { ...fitted, seq, tMs }, found: nothing };
  const read = stepThermometers(thermometersOf(fitted), input, settings, tMs);
  const told = stepWork(fitted.work, input, settings.schedule.stages, tMs);
  const { thermometers } = read.slice;
  const checked = stepChecks(fitted.checks, input, { tMs, settings, thermometers });
  const facts = ironFacts({ tMs, settings, thermometers, work: told.work, checks: checked.checks });
  const iron = stepIron(ironOf(fitted), input, facts);
  const { leader } = iron.slice;
  const doubts = stepDoubts(fitted.doubts, input, {
    tMs,
    settings,
    before: before.settings,
    readings: read.slice.readings,
    leader,
    meansC: iron.slice.behaviour.cycles.map((c) => c.meanC),
    found: iron.found,
  });
  const onWork = fitted.work.place === 'on-work' || told.work.place === 'on-work';
  const motions = stepMotions(fitted.motions, input, settings, tMs);
  const contact = contactFacts({ tMs, settings, thermometers, work: told.work, leader, motions }, onWork);
  const ironing = stepIroning(fitted.ironing, input, { ...contact, before: fitted.work, work: told.work });
  const commanded = commandAlarms(fitted.alarms, input, tMs);
  const state: WatchState = {
    seq,
    tMs,
    settings,
    ...read.slice,
    ...iron.slice,
    work: told.work,
    ironing: ironing.ironing,
    attended: stepAttended(fitted.attended, input, tMs, contact.moving),
    motions,
    checks: checked.checks,
    reach: fitted.reach,
    doubts,
    alarms: commanded.alarms,
    keeping: keepingAfter(fitted.keeping, input),
  };
  const { seen, reach } = after(state, input);
  const alarmed = watchAlarms(state.alarms, seen, tMs);
  return {
    state: { ...state, alarms: alarmed.alarms, reach },
    found: numbered(
      [read.found, told.found, checked.found, iron.found, ironing.found, commanded.found, alarmed.found],
      seq,
      tMs,
    ),
  };
}

const thermometersOf = ({ thermometers, readings, clocks, links }: WatchState): ThermometersSlice => ({
  thermometers,
  readings,
  clocks,
  links,
});

const ironOf = ({ leader, behaviour, others, heat, band, sitting }: WatchState): IronSlice => ({
  leader,
  behaviour,
  others,
  heat,
  band,
  sitting,
});

function numbered(found: readonly (readonly Finding[])[], seq: number, tMs: number): readonly FoundEntry[] {
  if (found.every((f) => f.length === 0)) return nothing;
  return found.flat().map((finding) => ({ seq, tMs, finding }));
}

/** A sample of a probe that doesn't sit on this iron says nothing of it, and a press of its button neither. */
const isForeign = ({ thermometers }: WatchState, input: WatchInput): boolean =>
  input.kind === 'sample' && thermometers[input.sample.probe] === undefined;

const keepingAfter = (before: WatchState['keeping'], input: WatchInput): WatchState['keeping'] =>
  input.kind === 'keeping' ? { kept: input.kept, detail: input.detail } : before;

function withSettings(
  state: WatchState,
  settings: WatchSettings,
  at: { readonly tMs: number; readonly hot: boolean },
): WatchState {
  const own = settings.probes.filter((p) => settings.iron.probes.includes(p.id));
  const before = state.settings?.probes ?? [];
  const turned = convertedAnew(own, before);
  const reach = Object.fromEntries(Object.entries(state.reach).filter(([p]) => !turned.includes(p)));
  const iron = followedAnew(ironOf(state), turned);
  return { ...state, ...iron, reach, settings, ...fitThermometers(thermometersOf(state), own, before, at) };
}

/**
 * A watch that goes on from what was carried over; `carried` has the sequence number of the state it goes on from. The
 * whole state is taken where there is one and `exact` allows it (the same fold version).
 */
export function resume(carried: Carried, seq: number, tMs: number, exact = true): WatchState {
  if (exact && carried.state !== null) return carried.state;
  const { stageId, place, at: before = null, dial = null, hot, fromSession } = carried;
  const at = unconfirmed(before);
  const settings = completed(carried.settings);
  const state = withSettings(initialWatch(seq, tMs), settings, { tMs, hot });
  const stage = settings.schedule.stages.find((s) => s.id === stageId) ?? null;
  return {
    ...state,
    alarms: Object.fromEntries(
      carried.alarms.map((a) => [alarmKeyText(a), carriedOver(a, alarmTable[a.kind], tMs)]),
    ),
    // A plate that was hot ends its session once it has been measured cold, in this run of the program as in the last.
    heat: { ...state.heat, is: hot ? 'hot' : 'cold' },
    band: doubtfulBand(stage, tMs),
    work: {
      ...newWork,
      stageId,
      place,
      at,
      dial: dial === null ? null : { mark: dial, toldMs: tMs },
      recording: fromSession !== null,
    },
    ironing: ironingFrom({ place, at }, tMs),
  };
}
