import type { Sample } from '../../shared/thermometer/sample.ts';
import type { DeviceLink } from '../../shared/watch/input.ts';
import { serialWords } from '../../shared/words/serial.ts';
import type { Device, ProbeSource, SourceEvent, SourceStatus } from './source.ts';

/** One sample of a recorded trace; times never decrease, ms, from whatever origin. */
export interface Recorded {
  readonly tMs: number;
  readonly sample: Sample;
}

/** Tells the time and wakes up at one. */
export interface Schedule {
  nowMs(): number;
  /** Calls `wake` once, `delayMs` from now or later; gives what cancels it. */
  after(delayMs: number, wake: () => void): () => void;
}

/** Follows a clock in real time. */
export const realSchedule = (nowMs: () => number): Schedule => ({
  nowMs,
  after: (delayMs, wake) => {
    const timer = setTimeout(wake, delayMs);
    return () => clearTimeout(timer);
  },
});

export interface RecordedOptions {
  /** Whose samples these are; `simulated` says whether a simulated iron gave them. */
  readonly device: Device;
  readonly trace: Iterable<Recorded>;
  readonly schedule: Schedule;
}

/** Plays a recorded trace, each sample as long after the first as it was then. */
export class RecordedSource implements ProbeSource {
  readonly device: Device;
  readonly #schedule: Schedule;
  readonly #trace: Iterator<Recorded>;
  #listen: ((event: SourceEvent) => void) | null = null;
  #cancel: () => void = () => undefined;
  #link: DeviceLink = 'lost';
  #detail = '';
  #accepted = 0;
  /** From the recording's time to the schedule's. */
  #shiftMs: number | null = null;

  constructor({ device, trace, schedule }: RecordedOptions) {
    this.device = device;
    this.#schedule = schedule;
    this.#trace = trace[Symbol.iterator]();
  }

  start(listen: (event: SourceEvent) => void): void {
    this.#listen = listen;
    this.#tell('connected', '');
    this.#next();
  }

  /** A recording hears nothing. */
  send(): void {}

  status(): SourceStatus {
    return {
      device: this.device,
      link: this.#link,
      detail: this.#detail,
      hello: null,
      linesAccepted: this.#accepted,
      samplesMissed: 0,
      // What was kept had passed the checks of its lines when it came.
      checksummed: true,
      rejected: [],
      lastLine: '',
    };
  }

  async stop(): Promise<void> {
    this.#listen = null;
    this.#cancel();
    this.#trace.return?.();
  }

  /** Plays all that is due and waits for what is not. */
  #next(): void {
    while (this.#listen !== null) {
      const recorded = this.#take();
      if (recorded === null) return;
      const nowMs = this.#schedule.nowMs();
      this.#shiftMs ??= nowMs - recorded.tMs;
      const dueMs = recorded.tMs + this.#shiftMs;
      if (dueMs > nowMs) {
        this.#cancel = this.#schedule.after(dueMs - nowMs, () => this.#wake(recorded, dueMs));
        return;
      }
      this.#play(recorded, dueMs);
    }
  }

  #wake(recorded: Recorded, dueMs: number): void {
    this.#play(recorded, dueMs);
    this.#next();
  }

  #take(): Recorded | null {
    try {
      const next = this.#trace.next();
      if (next.done !== true) return next.value;
      this.#tell('lost', serialWords.recordingEnded);
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      this.#tell('lost', serialWords.recordingBroke(reason));
    }
    return null;
  }

  #play({ sample }: Recorded, tMs: number): void {
    if (this.#listen === null) return;
    this.#accepted += 1;
    this.#listen({ kind: 'sample', sample, tMs });
  }

  #tell(link: DeviceLink, detail: string): void {
    this.#link = link;
    this.#detail = detail;
    this.#listen?.({ kind: 'link', link, detail, tMs: this.#schedule.nowMs() });
  }
}
