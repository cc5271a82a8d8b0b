import { headingForLimit, noReading, notRecording, outOfBand, overLimit } from '../alarm/conditions.ts';
import {
  type AlarmStep,
  acknowledge,
  type Condition,
  normalAlarm,
  observeCondition,
  silence,
} from '../alarm/machine.ts';
import { type AlarmKey, type AlarmRecord, alarmKeyText } from '../alarm/record.ts';
import { alarmTable } from '../alarm/table.ts';
import { expectedPeakC } from '../iron/behaviour.ts';
import { deviceOf, type ProbeId } from '../thermometer/sample.ts';
import { qualityOf, slopeOf } from '../thermometer/thermometer.ts';
import { refusals } from '../words/refusals.ts';
import type { Finding } from './finding.ts';
import type { WatchInput } from './input.ts';
import type { WatchState } from './state.ts';

/** The slice of the alarms: facts to conditions, conditions and commands to states. */

type Alarms = WatchState['alarms'];
export interface AlarmsStep {
  readonly alarms: Alarms;
  readonly found: readonly Finding[];
}

interface Seen extends AlarmKey {
  readonly condition: Condition;
  readonly detail?: string;
  readonly plateC?: number | null;
}

/**
 * Observes the conditions that an input can have changed: those of one probe after its sample, all of them otherwise.
 */
export function watchAlarms(state: WatchState, input: WatchInput): AlarmsStep {
  const seen =
    input.kind === 'sample'
      ? [...ofProbe(state, input.sample.probe), ...ofIron(state)]
      : [
          ...Object.keys(state.thermometers).flatMap((p) => ofProbe(state, p)),
          ...ofIron(state),
          ...ofGone(state),
        ];
  let alarms = state.alarms;
  const found: Finding[] = [];
  for (const one of seen) {
    const key = alarmKeyText(one);
    const before = alarms[key];
    if (before === undefined && one.condition !== 'beyond') continue;
    const step = observeOne(before ?? normalAlarm(one), one, state.tMs);
    if (step.alarm !== before) alarms = { ...alarms, [key]: step.alarm };
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

function ofProbe(state: WatchState, probe: ProbeId): readonly Seen[] {
  const { settings } = state;
  const t = state.thermometers[probe];
  const own = settings?.probes.find((p) => p.id === probe);
  if (settings === null || t === undefined || own === undefined) return [];
  const plateC = t.reading.quality === 'ok' ? t.reading.plateC : null;
  const limitC = settings.schedule.fabricLimitC - own.guardBandK;
  const facts = { plateC, slopeKPerS: slopeOf(t), limitC, expectedPeakC: expectedPeakC(state.behaviour) };
  const quality = qualityOf(t);
  const there = state.links[deviceOf(probe)]?.link === 'connected';
  const mayBeHot = t.heat === 'hot' || (t.heat === 'unknown' && there);
  return [
    { kind: 'over-limit', probe, condition: overLimit(facts, alarmTable['over-limit'].deadbandK), plateC },
    { kind: 'heading-for-limit', probe, condition: headingForLimit(facts), plateC },
    { kind: 'no-reading', probe, condition: noReading(quality, mayBeHot), detail: quality },
  ];
}

const ofIron = ({ band, keeping }: WatchState): readonly Seen[] => [
  { kind: 'above-band', probe: null, condition: outOfBand(band.verdict, 'above') },
  { kind: 'below-band', probe: null, condition: outOfBand(band.verdict, 'below') },
  { kind: 'not-recording', probe: null, condition: notRecording(keeping.kept), detail: keeping.detail },
];

/** A probe that was taken off this iron no longer tells anything of it. */
const ofGone = ({ alarms, thermometers }: WatchState): readonly Seen[] =>
  Object.values(alarms)
    .filter((a) => a.probe !== null && thermometers[a.probe] === undefined)
    .map(({ kind, probe }) => ({ kind, probe, condition: 'inside' }));

/** Carries out an acknowledgement or a silence. */
export function commandAlarm(
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
  const found: Finding[] =
    step.change === null ? [] : [{ kind: 'alarm', change: step.change, alarm: step.alarm }];
  return { alarms: { ...alarms, [key]: step.alarm }, found };
}
