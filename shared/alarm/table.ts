import { alarmWords } from '../words/alarms.ts';
import type { AlarmTiming } from './machine.ts';
import type { AlarmKind, Priority } from './record.ts';

/** The one table that defines each alarm: page, API and documents are made from it. */
export interface AlarmRule extends AlarmTiming {
  readonly priority: Priority;
  /** Where the iron is marked as on its rest; null: the same. */
  readonly priorityOnRest: Priority | null;
  /** How far back inside its limit the plate must be before the condition counts as gone, K; 0 where it has none. */
  readonly deadbandK: number;
  readonly title: string;
  readonly cause: string;
  readonly consequence: string;
  readonly action: string;
}

const s = (seconds: number): number => seconds * 1000;

/** Delays and deadbands are our own choices; the longest silence of priority 3 is 60 s by decision. */
export const alarmTable: Readonly<Record<AlarmKind, AlarmRule>> = {
  'over-limit': {
    priority: 3,
    priorityOnRest: 2,
    onDelayMs: s(0.5),
    offDelayMs: s(5),
    deadbandK: 3,
    reAlarmMs: s(120),
    longestSilenceMs: s(60),
    ...alarmWords['over-limit'],
  },
  'over-cement-limit': {
    priority: 3,
    priorityOnRest: null,
    onDelayMs: s(0.5),
    offDelayMs: s(5),
    deadbandK: 3,
    reAlarmMs: s(120),
    longestSilenceMs: s(60),
    ...alarmWords['over-cement-limit'],
  },
  'no-reading': {
    priority: 3,
    priorityOnRest: null,
    onDelayMs: s(1.5),
    offDelayMs: s(2),
    deadbandK: 0,
    reAlarmMs: s(120),
    longestSilenceMs: s(60),
    ...alarmWords['no-reading'],
  },
  'fire-hazard': {
    priority: 3,
    priorityOnRest: null,
    // So long there is to answer the question before it is called out.
    onDelayMs: s(20),
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: s(120),
    longestSilenceMs: s(60),
    ...alarmWords['fire-hazard'],
  },
  'suspect-probe': {
    priority: 2,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: s(600),
    longestSilenceMs: s(120),
    ...alarmWords['suspect-probe'],
  },
  'heading-for-limit': {
    priority: 2,
    priorityOnRest: 1,
    onDelayMs: s(1),
    offDelayMs: s(3),
    deadbandK: 0,
    reAlarmMs: null,
    longestSilenceMs: s(120),
    ...alarmWords['heading-for-limit'],
  },
  dwell: {
    priority: 2,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: s(1),
    deadbandK: 0,
    reAlarmMs: s(30),
    longestSilenceMs: s(60),
    ...alarmWords.dwell,
  },
  'wet-cement': {
    priority: 2,
    priorityOnRest: null,
    onDelayMs: s(1),
    offDelayMs: s(3),
    deadbandK: 0,
    reAlarmMs: s(120),
    longestSilenceMs: s(120),
    ...alarmWords['wet-cement'],
  },
  'wrong-order': {
    priority: 2,
    priorityOnRest: null,
    onDelayMs: s(3),
    offDelayMs: s(5),
    deadbandK: 0,
    reAlarmMs: s(300),
    longestSilenceMs: s(120),
    ...alarmWords['wrong-order'],
  },
  'left-alone': {
    priority: 2,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: s(300),
    longestSilenceMs: s(300),
    ...alarmWords['left-alone'],
  },
  'not-recording': {
    priority: 2,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: s(600),
    longestSilenceMs: s(600),
    ...alarmWords['not-recording'],
  },
  'long-on-area': {
    priority: 1,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: null,
    longestSilenceMs: s(600),
    ...alarmWords['long-on-area'],
  },
  imbalance: {
    priority: 1,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: s(600),
    longestSilenceMs: s(600),
    ...alarmWords.imbalance,
  },
  unattended: {
    priority: 1,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: null,
    longestSilenceMs: s(600),
    ...alarmWords.unattended,
  },
  'above-band': {
    priority: 1,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 1,
    reAlarmMs: s(600),
    longestSilenceMs: s(600),
    ...alarmWords['above-band'],
  },
  'below-band': {
    priority: 1,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 1,
    reAlarmMs: s(600),
    longestSilenceMs: s(600),
    ...alarmWords['below-band'],
  },
  drift: {
    priority: 1,
    priorityOnRest: null,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandK: 0,
    reAlarmMs: null,
    longestSilenceMs: s(600),
    ...alarmWords.drift,
  },
};

/** The priority of an alarm, given whether its iron is on its rest. */
export const priorityOf = (kind: AlarmKind, onRest: boolean): Priority =>
  (onRest ? alarmTable[kind].priorityOnRest : null) ?? alarmTable[kind].priority;
