import type { AlarmKey, AlarmRecord } from '../alarm/record.ts';
import type { CoatFacts } from '../cure/facts.ts';
import type { HeatSchedule } from '../heat/schedule.ts';
import type { At, PieceFacts } from '../heat/work/at.ts';
import type { Drift } from '../iron/dial/drift.ts';
import type { DialMark } from '../iron/dial/mark.ts';
import type { Iron } from '../iron/iron.ts';
import type { Place } from '../iron/place.ts';
import type { Sample } from '../thermometer/sample.ts';
import type { WatchedProbe } from '../thermometer/watched-probe.ts';
import type { UnattendedAfter } from './attended.ts';
import type { WatchState } from './state.ts';

/**
 * All that a watch can be told. Each input gets, at ingest, a sequence number and a time that never decreases;
 * that number is the only order. Times are whole milliseconds of the watch's own clock.
 */

/** The settings that a watch needs, whole: a change replaces all of them. */
export interface WatchSettings {
  readonly iron: Iron;
  readonly probes: readonly WatchedProbe[];
  readonly schedule: HeatSchedule;
  /** How far the iron has gone from its dial chart, null where it keeps to it or has none; older sessions lack it. */
  readonly drift?: Drift | null;
  /** What is known of marks of its dial from elsewhere than its own probes as they are read now; left out where nothing is. */
  readonly charted?: readonly { readonly mark: number; readonly meanC: number }[];
  /** After how long without a sign of anybody a hot iron is told of, and told of louder; left out: as usual. */
  readonly unattended?: UnattendedAfter;
}

/** What is taken over from before: the first input of every recorded session. */
export interface Carried {
  readonly settings: WatchSettings;
  /** Alarms that were not normal, and those that stood when a session broke off. */
  readonly alarms: readonly AlarmRecord[];
  /** The stage chosen by the user, and whether the iron was on its rest. */
  readonly stageId: string | null;
  readonly place: Place;
  /** Where on a piece it worked; sessions of before that could be said have none. */
  readonly at?: At | null;
  /** What the dial stands at, as far as the user said; sessions of before that could be said have none. */
  readonly dial?: DialMark | null;
  /** True where the plate was not measured cold when it was last watched: it is to be treated as hot. */
  readonly hot: boolean;
  /** The session that broke off and is gone on with, if one did. */
  readonly fromSession: string | null;
  /**
   * The whole state, where recording begins while the watch already runs; only a fold of the same version takes it.
   * Null after a restart.
   */
  readonly state: WatchState | null;
}

/** By which word of the user an iron came to be somewhere. */
export const atSaids = ['piece', 'area', 'next', 'turned', 'in-hand'] as const;
export type AtSaid = (typeof atSaids)[number];

/** What the user says of where the heat goes. */
export type WorkMark =
  /** Where on a piece the iron works; null: on none that was named. */
  | { readonly kind: 'at'; readonly said: AtSaid; readonly at: At | null }
  /** One lap over the whole side that is up. */
  | { readonly kind: 'lap-done' }
  /** The last of these two, or of the places, was a mistake. */
  | { readonly kind: 'undo' };

/** What the user says of the iron while working. */
export type IronMark =
  | { readonly kind: 'stage'; readonly stageId: string | null }
  | { readonly kind: 'place'; readonly place: Place }
  /** What the dial stands at; null: not said. The last one counts. */
  | { readonly kind: 'dial'; readonly mark: DialMark | null }
  /** What a hand thermometer reads on the plate now, degC. */
  | { readonly kind: 'typed'; readonly plateC: number }
  | { readonly kind: 'note'; readonly text: string };

export type Mark = WorkMark | IronMark;

export const isIronMark = (mark: Mark): mark is IronMark =>
  mark.kind !== 'at' && mark.kind !== 'lap-done' && mark.kind !== 'undo';

export type DeviceLink = 'connected' | 'starting' | 'lost';

export const startReasons = ['hot', 'by-hand', 'alarm', 'resumed'] as const;
export type StartReason = (typeof startReasons)[number];
export const stopReasons = ['cold', 'by-hand', 'shutdown'] as const;
export type StopReason = (typeof stopReasons)[number];

export type WatchInput =
  | { readonly kind: 'carried'; readonly carried: Carried }
  | { readonly kind: 'settings'; readonly settings: WatchSettings }
  | { readonly kind: 'sample'; readonly sample: Sample }
  /** The link to a device changed; `detail` says why in a few words. */
  | { readonly kind: 'device'; readonly device: string; readonly link: DeviceLink; readonly detail: string }
  /** Lines of this device were rejected since the last such input (told at most once a second). */
  | { readonly kind: 'rejected'; readonly device: string; readonly count: number }
  | { readonly kind: 'mark'; readonly commandId: string; readonly mark: Mark }
  | { readonly kind: 'acknowledge'; readonly commandId: string; readonly alarm: AlarmKey }
  | { readonly kind: 'silence'; readonly commandId: string; readonly alarm: AlarmKey; readonly forMs: number }
  | { readonly kind: 'start'; readonly commandId: string | null; readonly why: StartReason }
  | { readonly kind: 'stop'; readonly commandId: string | null; readonly why: StopReason }
  /** Whether what happens is being kept, and if not, why. */
  | { readonly kind: 'keeping'; readonly kept: boolean; readonly detail: string }
  /** What all sessions together tell of the piece in hand. */
  | { readonly kind: 'piece-facts'; readonly facts: PieceFacts }
  /** What dries where this iron works, and whose vapour burns beside it. */
  | { readonly kind: 'coat-facts'; readonly facts: CoatFacts }
  /** Somebody is there: a touch, a key, a mark on another iron. */
  | { readonly kind: 'presence' }
  /** The wall clock and the monotonic clock have come apart by so much. */
  | { readonly kind: 'clock'; readonly change: 'step' | 'suspend'; readonly byMs: number }
  /** Falls on the fixed grid; regenerated on replay and never stored. */
  | { readonly kind: 'tick' }
  /** Says only how far time has come: the last input of what is stored. */
  | { readonly kind: 'time' };

export interface Entry {
  readonly seq: number;
  readonly tMs: number;
  readonly input: WatchInput;
}
