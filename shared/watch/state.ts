import type { Reach } from '../alarm/heading.ts';
import type { AlarmRecord } from '../alarm/record.ts';
import type { DeviceClock } from '../thermometer/device-clock.ts';
import type { Reading } from '../thermometer/reading.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import type { LinkState, Thermometer } from '../thermometer/thermometer.ts';
import type { Attended } from './attended.ts';
import { type Checks, noChecks } from './checks.ts';
import type { Doubts } from './doubts.ts';
import type { WatchSettings } from './input.ts';
import { type IronSlice, newIron } from './iron.ts';
import { type Ironing, noIroning } from './ironing.ts';
import { type Motions, noMotions } from './motions.ts';
import { newWork, type Work } from './work.ts';

/** All that a watch knows: plain data that survives JSON unchanged. */
export interface WatchState extends IronSlice {
  /** Of the last input or tick that was folded. */
  readonly seq: number;
  readonly tMs: number;
  /** Null before the first settings. */
  readonly settings: WatchSettings | null;
  /** The latest reading of each probe. */
  readonly readings: Readonly<Record<ProbeId, Reading>>;
  readonly thermometers: Readonly<Record<ProbeId, Thermometer>>;
  readonly clocks: Readonly<Record<string, DeviceClock>>;
  readonly links: Readonly<Record<string, LinkState>>;
  readonly work: Work;
  readonly ironing: Ironing;
  readonly attended: Attended;
  readonly motions: Motions;
  readonly checks: Checks;
  /** How far each probe's plate usually gets in its thermostat's rises. */
  readonly reach: Readonly<Record<ProbeId, Reach>>;
  /** What is suspected of its probes. */
  readonly doubts: Doubts;
  readonly alarms: Readonly<Record<string, AlarmRecord>>;
  readonly keeping: { readonly kept: boolean; readonly detail: string };
}

/** A watch that knows nothing yet, at a point of its clock. */
export const initialWatch = (seq: number, tMs: number): WatchState => ({
  seq,
  tMs,
  settings: null,
  readings: {},
  thermometers: {},
  clocks: {},
  links: {},
  ...newIron,
  work: newWork,
  ironing: noIroning,
  attended: { seenMs: tMs },
  motions: noMotions,
  checks: noChecks,
  reach: {},
  doubts: {},
  alarms: {},
  keeping: { kept: true, detail: '' },
});
