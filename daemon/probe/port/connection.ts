import { type LineStack, lineStack, type StackOptions } from '../wire/stack.ts';
import type { OpenPort, Port, PortAddress } from './open.ts';

export interface ConnectionEnd {
  /** False where the port never opened. */
  readonly wasOpen: boolean;
  readonly error: Error | null;
}

export interface ConnectionOptions {
  readonly address: PortAddress;
  readonly open: OpenPort;
  readonly stack: StackOptions;
  readonly mayReset: (reason: string) => void;
  /** Comes once; never after `close`. */
  readonly ended: (end: ConnectionEnd) => void;
}

/** One port from its opening to its end, with the line stack that belongs to it alone. */
export class Connection {
  readonly path: string;
  readonly #port: Port;
  readonly #ended: ConnectionOptions['ended'];
  #stack: LineStack | null = null;
  #heard = false;
  #over = false;

  constructor({ address, open, stack, mayReset, ended }: ConnectionOptions) {
    this.path = address.path;
    this.#ended = ended;
    this.#port = open(address, {
      opened: () => {
        if (!this.#over) this.#stack = lineStack(stack);
      },
      data: (bytes) => {
        this.#heard = true;
        this.#stack?.write(bytes);
      },
      mayReset,
      ended: (error) => this.end(error),
    });
  }

  send(line: string): void {
    if (this.#stack !== null && !this.#over) this.#port.write(`${line}\n`);
  }

  /** Whether anything came since this was last asked: a device that sends is there. */
  heardSince(): boolean {
    const heard = this.#heard;
    this.#heard = false;
    return heard;
  }

  /** Lets the time of boot text run out. */
  settle(): void {
    if (!this.#over) this.#stack?.settle();
  }

  /** Ends it as its port's own end would: for a device whose node is gone though nothing else told of it. */
  end(error: Error | null): void {
    if (this.#over) return;
    this.#over = true;
    this.#stack?.end();
    this.#ended({ wasOpen: this.#stack !== null, error });
  }

  /** Settles when the system has the port back. */
  async close(): Promise<void> {
    if (!this.#over) {
      this.#over = true;
      this.#stack?.end();
    }
    await this.#port.close();
  }
}
