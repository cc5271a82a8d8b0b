import {
  type AlarmStep,
  acknowledge,
  isSounding,
  normalAlarm,
  observeCondition,
  silence,
} from '../alarm/machine.ts';
import { type AlarmRecord, alarmKeyText } from '../alarm/record.ts';
import { alarmTable } from '../alarm/table.ts';
import { refusals } from '../words/refusals.ts';
import type { Finding } from './finding.ts';
import type { WatchInput } from './input.ts';
import type { Seen } from './seen.ts';

/** The slice of the alarms: conditions and commands to states. */
export type Alarms = Readonly<Record<string, AlarmRecord>>;

export interface AlarmsStep {
  readonly alarms: Alarms;
  readonly found: readonly Finding[];
}

/** A press of the button or pedal silences for so long, ms, or for the kind's longest silence if that is shorter. */
const BUTTON_SILENCE_MS = 60_000;

/** Takes in what is seen of the conditions; those that are not among `seen` stay as they are. */
export function watchAlarms(before: Alarms, seen: readonly Seen[], tMs: number): AlarmsStep {
  let alarms = before;
  const found: Finding[] = [];
  for (const one of seen) {
    const key = alarmKeyText(one);
    const alarm = alarms[key];
    if (alarm === undefined && one.condition !== 'beyond') continue;
    const step = observeOne(alarm ?? normalAlarm(one), one, tMs);
    if (step.alarm !== alarm) alarms = { ...alarms, [key]: step.alarm };
    if (step.change !== null) found.push({ kind: 'alarm', change: step.change, alarm: step.alarm });
  }
  return { alarms, found };
}

function observeOne(before: AlarmRecord, seen: Seen, tMs: number): AlarmStep {
  const beyond = seen.condition === 'beyond';
  const fresh = before.state === 'normal' && before.pendingSinceMs === null;
  const plateC = beyond ? (seen.plateC ?? null) : null;
  const peakBefore = fresh && beyond ? null : before.peakC;
  const peakC = plateC === null ? peakBefore : Math.max(plateC, peakBefore ?? plateC);
  const detail = beyond && seen.detail !== undefined ? seen.detail : before.detail;
  const noted = peakC === before.peakC && detail === before.detail ? before : { ...before, peakC, detail };
  return observeCondition(noted, seen.condition, alarmTable[seen.kind], tMs);
}

/** Carries out what the user asks for, on the page or at the handle. */
export function commandAlarms(alarms: Alarms, input: WatchInput, tMs: number): AlarmsStep {
  switch (input.kind) {
    case 'acknowledge':
    case 'silence':
      return commandOne(alarms, input, tMs);
    case 'sample':
      return input.sample.button === null ? { alarms, found: [] } : silenceSounding(alarms, tMs);
    default:
      return { alarms, found: [] };
  }
}

function commandOne(
  alarms: Alarms,
  input: Extract<WatchInput, { kind: 'acknowledge' | 'silence' }>,
  tMs: number,
): AlarmsStep {
  const key = alarmKeyText(input.alarm);
  const before = alarms[key];
  const timing = alarmTable[input.alarm.kind];
  const refuse = (reason: string): AlarmsStep => ({
    alarms,
    found: [{ kind: 'refused', commandId: input.commandId, reason }],
  });
  if (before === undefined) return refuse(refusals.noSuchAlarm);
  const step =
    input.kind === 'acknowledge'
      ? acknowledge(before, timing, tMs)
      : silence(before, input.forMs, timing, tMs);
  if (step === null)
    return refuse(input.kind === 'acknowledge' ? refusals.alreadySeen : refusals.notSounding);
  return put(alarms, step);
}

/** A press is about what sounds; a double press holds a first one, so it silences too. */
function silenceSounding(before: Alarms, tMs: number): AlarmsStep {
  let alarms = before;
  const found: Finding[] = [];
  for (const alarm of Object.values(before)) {
    const step = isSounding(alarm) ? silence(alarm, BUTTON_SILENCE_MS, alarmTable[alarm.kind], tMs) : null;
    if (step === null) continue;
    const after = put(alarms, step);
    alarms = after.alarms;
    found.push(...after.found);
  }
  return { alarms, found };
}

function put(alarms: Alarms, { alarm, change }: AlarmStep): AlarmsStep {
  const found: readonly Finding[] = change === null ? [] : [{ kind: 'alarm', change, alarm }];
  return { alarms: { ...alarms, [alarmKeyText(alarm)]: alarm }, found };
}
