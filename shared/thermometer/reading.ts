import type { ProbeId } from './sample.ts';

/** A sample turned into a temperature, or into a named fault. */

export const faults = [
  'open',
  'short-to-ground',
  'short-to-supply',
  'cold-junction',
  'not-a-number',
  'impossible',
  'out-of-range',
  'jump',
  'frozen',
  'silent',
  'garbled',
  'device-lost',
  'starting',
] as const;
export type Fault = (typeof faults)[number];
export type Quality = 'ok' | Fault;

export interface OkReading {
  readonly probe: ProbeId;
  readonly quality: 'ok';
  /** When it was measured, ms of the watch's clock, free of the host's jitter where the device has a clock. */
  readonly atMs: number;
  readonly plateC: number;
}

export interface FaultReading {
  readonly probe: ProbeId;
  readonly quality: Fault;
  readonly atMs: number;
}

/** A reading is `ok`, or it is a named fault. There is no third. */
export type Reading = OkReading | FaultReading;
