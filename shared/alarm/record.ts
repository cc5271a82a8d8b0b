import type { ProbeId } from '../thermometer/sample.ts';

/** The alarms of this program. Later kinds are added here and in the table beside this file. */
export const alarmKinds = [
  'over-limit',
  'over-cement-limit',
  'heading-for-limit',
  'no-reading',
  'fire-hazard',
  'suspect-probe',
  'dwell',
  'wet-cement',
  'wrong-order',
  'left-alone',
  'above-band',
  'below-band',
  'drift',
  'long-on-area',
  'imbalance',
  'unattended',
  'not-recording',
] as const;
export type AlarmKind = (typeof alarmKinds)[number];

/** States as in IEC 62682 / ISA-18.2 (NORM, UNACK, ACKED, RTNUN). */
export const alarmStates = ['normal', 'unacknowledged', 'acknowledged', 'returned-unacknowledged'] as const;
export type AlarmState = (typeof alarmStates)[number];

/** What may happen to an alarm. */
export const alarmChanges = [
  'raised',
  'cleared',
  'acknowledged',
  'silenced',
  'silence-ended',
  're-alarmed',
] as const;
export type AlarmChange = (typeof alarmChanges)[number];

/** 3 act now, 2 act soon, 1 know. */
export type Priority = 1 | 2 | 3;

/** One alarm of one subject: a kind with a probe, or with no probe where it concerns the whole iron. */
export interface AlarmRecord {
  readonly kind: AlarmKind;
  readonly probe: ProbeId | null;
  readonly state: AlarmState;
  /** When it was last raised, ms of the watch's clock; null before it ever was. */
  readonly raisedAtMs: number | null;
  /** Since when the opposite condition has been seen without break (on-delay or off-delay running). */
  readonly pendingSinceMs: number | null;
  readonly acknowledgedAtMs: number | null;
  /** When its re-alarm is next due while it stands acknowledged. */
  readonly reAlarmAtMs: number | null;
  readonly silencedUntilMs: number | null;
  readonly reAlarms: number;
  /** The highest plate temperature while it stood, degC; null where the kind has none. */
  readonly peakC: number | null;
  /** In the kind's own words, why: a fault's name, the reason that nothing is kept; empty where there is none. */
  readonly detail: string;
}

/** How an alarm is named in commands and addresses: its kind, and its probe where it has one. */
export interface AlarmKey {
  readonly kind: AlarmKind;
  readonly probe: ProbeId | null;
}

export const alarmKeyText = (key: AlarmKey): string =>
  key.probe === null ? key.kind : `${key.kind}:${key.probe}`;

/** How an alarm is told from those of all irons. */
export const alarmId = (iron: string, key: AlarmKey): string => `${iron}:${alarmKeyText(key)}`;
