import type { Sample } from '../../shared/thermometer/sample.ts';
import type { WatchInput } from '../../shared/watch/input.ts';
import type { ProbeSource, SourceEvent } from '../probe/source.ts';
import type { LineReader } from '../probe/wire/forms/form-read.ts';
import { protocolReader } from '../probe/wire/forms/reader.ts';

/** What the devices tell the rest of the program. */
export interface DeviceListener {
  sample(sample: Sample, source: ProbeSource, tMs: number): void;
  /** For every watch that has a probe of this device. */
  aboutDevice(device: string, input: WatchInput, tMs: number): void;
  /** The link or the counters of a device changed. */
  changed(): void;
}

/** Rejected lines are told at most this often, ms. */
const REJECTED_MS = 1000;

/** The sources that run: turns their events into inputs of the watches. */
export class Devices {
  readonly #sources: ProbeSource[] = [];
  readonly #listener: DeviceListener;
  #readers: ReadonlyMap<string, LineReader> = new Map();
  readonly #rejected = new Map<string, { count: number; toldMs: number }>();
  #lamp = 0;
  #heard = true;

  constructor(listener: DeviceListener) {
    this.#listener = listener;
  }

  get sources(): readonly ProbeSource[] {
    return this.#sources;
  }

  has(device: string): boolean {
    return this.#sources.some((s) => s.device.id === device);
  }

  /** From now on the lines of each device are read so; those of one that is not named as our own protocol has them. */
  readBy(readers: ReadonlyMap<string, LineReader>): void {
    this.#readers = readers;
    for (const source of this.#sources) this.#settleForm(source);
    this.#listener.changed();
  }

  add(source: ProbeSource): void {
    this.#sources.push(source);
    this.#settleForm(source);
    source.start((event) => this.#onEvent(source, event));
    this.#listener.changed();
  }

  /** Says on every handle how loud to be: 0 quiet to 3. */
  lamp(priority: 0 | 1 | 2 | 3): void {
    if (priority === this.#lamp) return;
    this.#lamp = priority;
    for (const source of this.#sources) source.send(`alarm=${priority}`);
  }

  /** Tells every handle that an alarm was acknowledged. */
  acknowledged(): void {
    for (const source of this.#sources) source.send('ack=1');
  }

  /** Tells every handle whether any page could sound an alarm: where none could, its own buzzer is all there is. */
  heard(heard: boolean): void {
    if (heard === this.#heard) return;
    this.#heard = heard;
    for (const source of this.#sources) source.send(heardLine(heard));
  }

  async stop(): Promise<void> {
    await Promise.all(this.#sources.map((s) => s.stop()));
  }

  #onEvent(source: ProbeSource, event: SourceEvent): void {
    const device = source.device.id;
    switch (event.kind) {
      case 'sample':
        this.#listener.sample(event.sample, source, event.tMs);
        break;
      case 'link': {
        // A device that was not there at the start is known by its id only now.
        this.#settleForm(source);
        const { link, detail, tMs } = event;
        this.#listener.aboutDevice(device, { kind: 'device', device, link, detail }, tMs);
        // A board that was reset has forgotten that an alarm sounds.
        if (link === 'connected' && this.#lamp > 0) source.send(`alarm=${this.#lamp}`);
        if (link === 'connected' && !this.#heard) source.send(heardLine(false));
        this.#listener.changed();
        break;
      }
      case 'rejected':
        this.#countRejected(device, event.tMs);
        break;
    }
  }

  #settleForm({ device, wire }: ProbeSource): void {
    wire?.readAs(this.#readers.get(device.id) ?? protocolReader);
  }

  #countRejected(device: string, tMs: number): void {
    const before = this.#rejected.get(device);
    const count = (before?.count ?? 0) + 1;
    if (before !== undefined && tMs - before.toldMs < REJECTED_MS) {
      before.count = count;
      return;
    }
    this.#rejected.set(device, { count: 0, toldMs: tMs });
    this.#listener.aboutDevice(device, { kind: 'rejected', device, count }, tMs);
    this.#listener.changed();
  }
}

const heardLine = (heard: boolean): string => `heard=${heard ? 1 : 0}`;
