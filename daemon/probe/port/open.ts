import { SerialPort } from 'serialport';
import { endOnEmptyRead } from './end-of-read.ts';
import { keepFromHangingUp } from './hang-up.ts';

export interface PortAddress {
  readonly path: string;
  readonly baudRate: number;
}

/** What becomes of a port. `ended` comes once, whether it ever opened or not, and nothing after it. */
export interface PortListener {
  opened(): void;
  data(bytes: Uint8Array): void;
  /** It works, but closing it may reset the board; why. */
  mayReset(reason: string): void;
  ended(error: Error | null): void;
}

/** A port that is opening or open. Used once: after its end another is made. */
export interface Port {
  /** Nothing happens where it can't be written to. */
  write(text: string): void;
  /** Settles when the system has the port back. */
  close(): Promise<void>;
}

export type OpenPort = (address: PortAddress, listener: PortListener) => Port;

/** A device that reads nothing must not pile up what is sent to it; the newest words to it don't matter more. */
const MAX_UNSENT_BYTES = 1024;

class RealPort implements Port {
  readonly #port: SerialPort;
  readonly #listener: PortListener;
  readonly #whenOpenedOrNot: Promise<void>;
  #unhooked: Promise<void> = Promise.resolve();
  #ended = false;

  constructor({ path, baudRate }: PortAddress, listener: PortListener) {
    this.#listener = listener;
    // On Windows this setting is whether DTR is raised at all, which boards with USB of their own wait for.
    const hupcl = process.platform === 'win32';
    const port = new SerialPort({ path, baudRate, autoOpen: false, lock: true, hupcl });
    this.#port = port;
    // Ahead of the first read, which also waits for the port to open.
    port.once('open', () => endOnEmptyRead(port.port));
    port.on('data', (bytes: Uint8Array) => {
      if (!this.#ended) listener.data(bytes);
    });
    port.on('close', (error: Error | null | undefined) => this.#end(error ?? null));
    port.on('error', (error) => this.#end(error));
    this.#whenOpenedOrNot = new Promise((resolve) => {
      port.open((error) => {
        if (error) this.#end(error);
        else if (!this.#ended) this.#opened(path);
        resolve();
      });
    });
  }

  write(text: string): void {
    const port = this.#port;
    if (this.#ended || !port.isOpen || port.writableLength > MAX_UNSENT_BYTES) return;
    // A failed write also comes as an error event, which ends this port.
    port.write(text, 'latin1');
  }

  async close(): Promise<void> {
    this.#ended = true;
    await this.#whenOpenedOrNot;
    await this.#unhooked;
    const port = this.#port;
    if (!port.isOpen && !port.closing) return;
    await new Promise<void>((resolve) => {
      // Closing may already be under way, or fail on a device that is gone: either is the end of it.
      port.once('close', () => resolve());
      port.once('error', () => resolve());
      if (port.isOpen) port.close();
    });
  }

  #opened(path: string): void {
    this.#unhooked = this.#keepFromHangingUp(path);
    this.#listener.opened();
  }

  async #keepFromHangingUp(path: string): Promise<void> {
    const reason = await keepFromHangingUp(path, process.platform);
    if (reason !== '' && !this.#ended) this.#listener.mayReset(reason);
  }

  #end(error: Error | null): void {
    if (this.#ended) return;
    this.#ended = true;
    this.#listener.ended(error);
  }
}

/** Opens a real port. Settings that the library refuses end it like any other failure. */
export const openPort: OpenPort = (address, listener) => {
  try {
    return new RealPort(address, listener);
  } catch (error) {
    queueMicrotask(() => listener.ended(error instanceof Error ? error : new Error(String(error))));
    return { write: () => undefined, close: () => Promise.resolve() };
  }
};
