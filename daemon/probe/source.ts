import type { Sample } from '../../shared/thermometer/sample.ts';
import type { DeviceLink } from '../../shared/watch/input.ts';
import type { LineReader } from './wire/forms/form-read.ts';
import type { RejectCause } from './wire/reject.ts';

/**
 * A probe source yields samples: a serial port, the simulated iron or a recorded trace. All are interchangeable
 * and pass one contract suite. Nothing downstream is asked by a source, and a source asks nothing downstream.
 */
export interface ProbeSource {
  readonly device: Device;
  /** Where its samples come in lines whose form can be settled; else left out. */
  readonly wire?: Wire;
  /** Begins to yield events; called once. Errors become events, never exceptions. */
  start(listen: (event: SourceEvent) => void): void;
  /** Writes one line to the device (`alarm=2`, `ack=1`), without its line end; nothing happens where it can't. */
  send(line: string): void;
  /** What the page shows of it. */
  status(): SourceStatus;
  /** Stops for good, the port closed when the promise settles. No event follows. */
  stop(): Promise<void>;
}

/** The lines of a device as they came, and how they are read. */
export interface Wire {
  /** The last few, the newest first, without their line ends, a character a byte. */
  recentLines(): readonly string[];
  /** Takes effect with the next line, on an open connection too. */
  readAs(reader: LineReader): void;
}

export interface Device {
  /** USB serial number, else the physical port, else the path: the same device keeps it under another path. */
  readonly id: string;
  /** Where it is now, for people. */
  readonly path: string;
  readonly simulated: boolean;
}

export type SourceEvent =
  | { readonly kind: 'link'; readonly link: DeviceLink; readonly detail: string; readonly tMs: number }
  | { readonly kind: 'sample'; readonly sample: Sample; readonly tMs: number }
  | { readonly kind: 'rejected'; readonly cause: RejectCause; readonly raw: string; readonly tMs: number };

export interface SourceStatus {
  readonly device: Device;
  readonly link: DeviceLink;
  /** What is wrong and what to do, as a sentence; empty while all is well. */
  readonly detail: string;
  /** What the device said of itself (`id`, `fw`, `probes`), if it did. */
  readonly hello: Readonly<Record<string, string>> | null;
  readonly linesAccepted: number;
  /** Samples missing by the device's own sequence numbers. */
  readonly samplesMissed: number;
  /** False where no line of it so far carried a checksum: only plausibility guards such a probe. */
  readonly checksummed: boolean;
  readonly rejected: readonly RejectedLines[];
  /** The last line as it came, for showing. */
  readonly lastLine: string;
}

export interface RejectedLines {
  readonly cause: RejectCause;
  readonly count: number;
  /** The last one of this cause, made printable, at most 256 characters. */
  readonly lastRaw: string;
}
