import { BEAT_MS } from '../../../shared/messages/stream.ts';

/** How much the stream holds for a client, and for how long. All are our own choices. */
export interface StreamLimits {
  /** Clients at a time. */
  readonly clients: number;
  /** At most one message of readings in this time, ms; the first after a pause goes at once. */
  readonly readingsGapMs: number;
  /** Where more readings than this come in a second, over all probes … */
  readonly manyReadings: number;
  /** … the gap is this, ms: about a frame of a screen, which shows no more. */
  readonly manyGapMs: number;
  /** From so many bytes waiting, a client gets the newest state only … */
  readonly slowFromBytes: number;
  /** … until so few are waiting. */
  readonly slowUntilBytes: number;
  /** With more bytes or messages than this waiting it is dropped: alarms and marks are never left out. */
  readonly dropOverBytes: number;
  readonly dropOverMessages: number;
  /** Alarms and marks kept for clients that come back. */
  readonly keptEvents: number;
  readonly keptBytes: number;
  /** How often each client is looked after; half a beat, so that no pause exceeds a beat. */
  readonly pulseMs: number;
  readonly pingEveryMs: number;
  /** A ping unanswered for this long: the client counts as slow, whatever the system's buffers took … */
  readonly lateAfterMs: number;
  /** … and for this long: as dead. With ping interval and pulse, noticed within 10 s. */
  readonly deadAfterMs: number;
  /** Control frames that a client may send between two of our pings. */
  readonly framesIn: number;
  /** Messages that it may send in the same time. */
  readonly saidIn: number;
}

export const streamLimits: StreamLimits = {
  clients: 250,
  readingsGapMs: 1,
  manyReadings: 400,
  manyGapMs: 16,
  slowFromBytes: 64 * 1024,
  slowUntilBytes: 16 * 1024,
  dropOverBytes: 1024 * 1024,
  dropOverMessages: 2000,
  keptEvents: 1000,
  keptBytes: 512 * 1024,
  pulseMs: BEAT_MS / 2,
  pingEveryMs: 1000,
  lateAfterMs: 1500,
  deadAfterMs: 8000,
  framesIn: 50,
  saidIn: 10,
};
