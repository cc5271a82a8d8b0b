import type { StreamMessage } from '../../../shared/messages/stream.ts';

/** A message with its number, turned into text at most once for all clients, and only where one gets it. */
export class Message {
  readonly seq: number;
  #text: Buffer | null = null;
  readonly #body: StreamMessage;

  constructor(body: StreamMessage) {
    this.seq = body.seq;
    this.#body = body;
  }

  get text(): Buffer {
    this.#text ??= Buffer.from(JSON.stringify(this.#body));
    return this.#text;
  }
}
