import type { DeviceLink } from '../../shared/watch/input.ts';
import { serialWords } from '../../shared/words/serial.ts';
import { Connection, type ConnectionEnd } from './port/connection.ts';
import { FolderWatch } from './port/folders.ts';
import { findDevice, identifyDevice } from './port/identity.ts';
import { Looker } from './port/looker.ts';
import { isThere, type Machine, thisMachine } from './port/machine.ts';
import { type OpenPort, openPort } from './port/open.ts';
import { portProblem, troubleWords } from './port/trouble.ts';
import type { Device, ProbeSource, SourceEvent, SourceStatus, Wire } from './source.ts';
import { LineTally } from './wire/tally.ts';

export interface SerialOptions {
  /** As `identifyDevice` gives it. */
  readonly device: Device;
  readonly baudRate: number;
  /** The watch's clock, ms; stamps each event. */
  readonly nowMs: () => number;
  readonly open?: OpenPort;
  readonly machine?: Machine;
}

/** Opening a port that another program has locked touches that program's settings: leave out so many looks. */
const LOOKS_AFTER_BUSY = 3;

/**
 * A probe's board on a serial port: opens it, reads it, and opens it again whenever the device comes back, at the same
 * path or another. One connection at a time, each used once.
 */
export class SerialSource implements ProbeSource {
  readonly #options: Required<SerialOptions>;
  readonly #tally = new LineTally();
  readonly wire: Wire = this.#tally;
  readonly #looker = new Looker(() => this.#look());
  readonly #folders: FolderWatch;
  #device: Device;
  #listen: (event: SourceEvent) => void = () => undefined;
  #connection: Connection | null = null;
  /** Ports that are being given back to the system. */
  readonly #closing = new Set<Promise<void>>();
  #link: DeviceLink = 'lost';
  #detail: string;
  /** What is worth knowing of the open port though it works. */
  #note = '';
  #told = false;
  #wasOpen = false;
  #stopped = false;

  constructor({ open = openPort, machine = thisMachine, ...options }: SerialOptions) {
    this.#options = { ...options, open, machine };
    this.#device = options.device;
    this.#detail = serialWords.looking(options.device.path);
    this.#folders = new FolderWatch(options.device.path, machine.dev);
  }

  /** A device that was not there at the start gets its id when it is first seen, ahead of its first connection. */
  get device(): Device {
    return this.#device;
  }

  start(listen: (event: SourceEvent) => void): void {
    this.#listen = listen;
    this.#looker.start();
  }

  send(line: string): void {
    this.#connection?.send(line);
  }

  status(): SourceStatus {
    return { device: this.#device, link: this.#link, detail: this.#detail, ...this.#tally.counts() };
  }

  async stop(): Promise<void> {
    this.#stopped = true;
    await this.#looker.stop();
    this.#folders.close();
    this.#release();
    await Promise.all(this.#closing);
  }

  /** Seeks the device while it is lost; sees whether it is still there while it is not. */
  async #look(): Promise<void> {
    const connection = this.#connection;
    const { machine } = this.#options;
    if (connection === null) {
      await this.#seek().catch((error: unknown) => this.#tellTrouble(this.#device.path, String(error)));
      return;
    }
    connection.settle();
    // Not every system tells when a device is pulled: a node that is gone tells too.
    if (!connection.heardSince() && !(await isThere(connection.path, machine.platform))) connection.end(null);
  }

  async #seek(): Promise<void> {
    this.#folders.open(() => this.#looker.soon());
    const { path } = this.#device;
    const found = await findDevice(this.#options.machine, this.#device);
    if (found.kind === 'at') await this.#connect(found.path);
    else if (found.kind === 'other-device')
      this.#tell('lost', serialWords.otherDevice(path, this.#device.id));
    else this.#tell('lost', this.#wasOpen ? serialWords.unplugged(path) : serialWords.missing(path));
  }

  async #connect(path: string): Promise<void> {
    const { device } = this.#options;
    const unknown = device.id === device.path && !this.#wasOpen;
    this.#device = unknown ? await identifyDevice(this.#options.machine, path) : { ...this.#device, path };
    if (!this.#stopped) this.#connection = this.#newConnection(path);
  }

  #newConnection(path: string): Connection {
    const { baudRate, nowMs, open } = this.#options;
    const emit = (event: SourceEvent): void => this.#onEvent(event);
    this.#note = '';
    return new Connection({
      address: { path, baudRate },
      open,
      stack: { deviceId: this.#device.id, nowMs, emit, tally: this.#tally },
      mayReset: (reason) => this.#onNote(serialWords.mayReset(path, reason)),
      ended: (end) => this.#onEnd(path, end),
    });
  }

  #onEvent(event: SourceEvent): void {
    if (event.kind === 'link') {
      this.#wasOpen = true;
      this.#folders.close();
      this.#tell(event.link, event.link === 'connected' ? this.#note : event.detail);
    } else if (!this.#stopped) {
      this.#listen(event);
    }
  }

  #onNote(note: string): void {
    this.#note = note;
    if (this.#link === 'connected') this.#tell('connected', note);
  }

  #onEnd(path: string, { wasOpen, error }: ConnectionEnd): void {
    this.#release();
    if (!wasOpen) {
      void this.#tellTrouble(path, reasonOf(error));
    } else if (isUnplugged(error)) {
      this.#tell('lost', serialWords.unplugged(path));
    } else {
      this.#tell('lost', serialWords.broke(path, reasonOf(error)));
    }
    // It is looked for at the next look, not at once: a port that breaks as soon as it opens must not spin.
    if (!this.#stopped) this.#folders.open(() => this.#looker.soon());
  }

  async #tellTrouble(path: string, reason: string): Promise<void> {
    const problem = portProblem(reason);
    if (problem === 'busy') this.#looker.pause(LOOKS_AFTER_BUSY);
    const gone = problem === 'missing' && this.#wasOpen;
    const words = gone
      ? serialWords.unplugged(path)
      : await troubleWords(this.#options.machine, path, reason);
    if (this.#connection === null || this.#link === 'lost') this.#tell('lost', words);
  }

  #tell(link: DeviceLink, detail: string): void {
    if (this.#stopped || (this.#told && link === this.#link && detail === this.#detail)) return;
    this.#told = true;
    this.#link = link;
    this.#detail = detail;
    this.#listen({ kind: 'link', link, detail, tMs: this.#options.nowMs() });
  }

  #release(): void {
    const connection = this.#connection;
    this.#connection = null;
    if (connection === null) return;
    const closed = connection.close().finally(() => this.#closing.delete(closed));
    this.#closing.add(closed);
  }
}

const reasonOf = (error: Error | null): string => error?.message ?? 'closed';

/** The ways in which the serial library and the system tell that a device was pulled. */
function isUnplugged(error: Error | null): boolean {
  return (
    error === null || 'disconnected' in error || /EIO|ENXIO|ENODEV|bad file descriptor/i.test(error.message)
  );
}
