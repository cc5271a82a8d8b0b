import type { AlarmRecord } from '../alarm/record.ts';
import { type BandWatch, idleBand } from '../heat/band.ts';
import { type Behaviour, noBehaviour } from '../iron/behaviour.ts';
import type { DeviceClock } from '../thermometer/device-clock.ts';
import type { Reading } from '../thermometer/reading.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import type { LinkState, Thermometer } from '../thermometer/thermometer.ts';
import type { Place, WatchSettings } from './input.ts';

/** All that a watch knows: plain data that survives JSON unchanged. */
export interface WatchState {
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
  /** The probe that the iron's behaviour is read from; null while none reads. */
  readonly leader: ProbeId | null;
  readonly behaviour: Behaviour;
  readonly band: BandWatch;
  readonly work: Work;
  readonly alarms: Readonly<Record<string, AlarmRecord>>;
  readonly keeping: { readonly kept: boolean; readonly detail: string };
}

/** What the user has said of the work in hand. */
export interface Work {
  readonly stageId: string | null;
  readonly place: Place;
  readonly recording: boolean;
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
  leader: null,
  behaviour: noBehaviour,
  band: idleBand,
  work: { stageId: null, place: 'unknown', recording: false },
  alarms: {},
  keeping: { kept: true, detail: '' },
});
