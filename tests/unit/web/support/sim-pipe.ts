import type { Pipe } from '../../../../daemon/web/stream/client.ts';
import { type StreamMessage, streamMessageSchema } from '../../../../shared/messages/stream.ts';

type Item = { readonly text: Buffer; readonly done: () => void } | { readonly ping: string };

/** A connection whose far end reads only when a test says so. */
export class SimPipe implements Pipe {
  readonly #queue: Item[] = [];
  waitingBytes = 0;
  mostWaitingBytes = 0;
  open = true;
  goodbye: { readonly code: number; readonly why: string } | null = null;
  pings = 0;
  /** Where the far end's answers to pings go. */
  answer: (id: string) => void = () => {};
  /** Called once nothing waits any more, as a socket's "drain" is. */
  drained: () => void = () => {};

  send(text: Buffer, done: () => void): void {
    this.#queue.push({ text, done });
    this.waitingBytes += text.length;
    this.mostWaitingBytes = Math.max(this.mostWaitingBytes, this.waitingBytes);
  }

  ping(id: string): void {
    this.pings += 1;
    this.#queue.push({ ping: id });
  }

  close(code: number, why: string): void {
    this.goodbye = { code, why };
    this.open = false;
  }

  drop(): void {
    this.open = false;
  }

  /** Reads up to `most` messages, answering the pings between them. */
  read(most = Number.POSITIVE_INFINITY): StreamMessage[] {
    const messages: StreamMessage[] = [];
    const waited = this.waitingBytes > 0;
    while (messages.length < most) {
      const item = this.#queue.shift();
      if (item === undefined) break;
      if ('ping' in item) this.answer(item.ping);
      else {
        this.waitingBytes -= item.text.length;
        item.done();
        messages.push(streamMessageSchema.parse(JSON.parse(item.text.toString())));
      }
    }
    if (waited && this.waitingBytes === 0) this.drained();
    return messages;
  }
}
