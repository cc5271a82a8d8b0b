import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import { WebSocket } from 'ws';
import { startWeb, type Web, type WebSetup } from '../../../../daemon/web/web.ts';
import { healthSchema } from '../../../../shared/messages/health.ts';
import { type StreamMessage, streamMessageSchema } from '../../../../shared/messages/stream.ts';
import { EPOCH, type FakeDesk, fakeDesk } from './fake-desk.ts';

export interface Running {
  readonly web: Web;
  readonly desk: FakeDesk;
  /** Where it can be reached, whatever it listens on. */
  readonly url: string;
}

/** The web side over a real socket, with a desk that is not real. */
export async function running(over: Partial<WebSetup> = {}, desk: FakeDesk = fakeDesk()): Promise<Running> {
  const web = await startWeb({
    desk,
    listen: { host: '127.0.0.1', port: 0 },
    pageDir: mkdtempSync(join(tmpdir(), 'page-')),
    log: pino({ level: 'silent' }),
    version: '0.1.0',
    epoch: EPOCH,
    nowMs: () => performance.now(),
    ...over,
  });
  return { web, desk, url: `http://127.0.0.1:${web.port}` };
}

/** A client of the stream that checks every message and remembers it. */
export class TestClient {
  readonly messages: StreamMessage[] = [];
  readonly closed: Promise<{ readonly code: number; readonly why: string }>;
  readonly #socket: WebSocket;
  #heard: () => void = () => {};

  constructor(web: Web, query = '', headers: Record<string, string> = {}) {
    this.#socket = new WebSocket(`ws://127.0.0.1:${web.port}/stream${query}`, { headers });
    this.#socket.on('message', (data: Buffer) => {
      this.messages.push(streamMessageSchema.parse(JSON.parse(data.toString())));
      this.#heard();
    });
    this.#socket.on('error', () => {});
    this.closed = new Promise((closed) => {
      this.#socket.on('close', (code, why) => {
        closed({ code, why: why.toString() });
        this.#heard();
      });
    });
  }

  get socket(): WebSocket {
    return this.#socket;
  }

  /** All messages, once `enough` of them are there. */
  async until(enough: (messages: readonly StreamMessage[]) => boolean): Promise<readonly StreamMessage[]> {
    while (!enough(this.messages)) {
      if (this.#socket.readyState === WebSocket.CLOSED) throw new Error('the stream closed before that');
      await new Promise<void>((heard) => {
        this.#heard = heard;
      });
    }
    return this.messages;
  }

  kinds(): string[] {
    return this.messages.map((message) => message.kind);
  }

  async end(): Promise<void> {
    this.#socket.close();
    await this.closed;
  }
}

/** Waits for what has no event of its own, looking again at every turn of the event loop. */
export async function eventually(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((next) => setTimeout(next, 2));
}

/** How many clients the stream says it has. */
export async function streamClients({ url }: Running): Promise<number> {
  return healthSchema.parse(await (await fetch(`${url}/api/health`)).json()).streamClients;
}
