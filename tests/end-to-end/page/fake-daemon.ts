import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { type WebSocket, WebSocketServer } from 'ws';
import type { Item } from '../../../shared/messages/items.ts';
import type { Live } from '../../../shared/messages/live.ts';
import type { StreamMessage } from '../../../shared/messages/stream.ts';
import { FakeAir } from './fake-air.ts';
import { FakeCements } from './fake-cements.ts';
import { FakeCoats } from './fake-coats.ts';
import { type Answer, FakePieces } from './fake-pieces.ts';

/** A stand-in for the daemon: serves the built page and says on the stream what a test wants said. */

export interface Posted {
  readonly path: string;
  readonly body: Readonly<Record<string, unknown>>;
}

/** What the stand-in answers to a command; null: it hangs up without an answer. */
export type Answering = (posted: Posted) => Answer | null;

type Said = StreamMessage extends infer M
  ? M extends StreamMessage
    ? Omit<M, 'epoch' | 'seq'>
    : never
  : never;

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.map': 'application/json',
};

/** As strict as the daemon's own, and named by the same directives. */
const policy = "default-src 'self'; script-src 'self'; style-src 'self'; connect-src 'self'; base-uri 'none'";

export const agreeing: Answering = ({ path, body }) =>
  path === '/api/source' || path.endsWith('/notes')
    ? { status: 204, body: null }
    : { status: 200, body: { commandId: body['commandId'], session: null, kept: true } };

async function bodyOf(request: IncomingMessage): Promise<Posted['body']> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  return JSON.parse(Buffer.concat(chunks).toString('utf8'));
}

const answer = (response: ServerResponse, { status, body }: Answer): void => {
  response
    .writeHead(status, { 'content-type': 'application/json' })
    .end(status === 204 ? undefined : JSON.stringify(body));
};

export class FakeDaemon {
  readonly posted: Posted[] = [];
  readonly connections: string[] = [];
  /** What pages have said over the stream. */
  readonly heard: string[] = [];
  answering: Answering = agreeing;
  readonly pieces = new FakePieces();
  readonly coats = new FakeCoats();
  readonly cements = new FakeCements();
  readonly air = new FakeAir();
  /** How often pages have told of somebody's presence. */
  presences = 0;
  /** Areas suspect, as the book has them. */
  items: readonly Item[] = [];
  #http: Server | null = null;
  #sockets: WebSocketServer | null = null;
  #beats: ReturnType<typeof setInterval> | undefined;
  #live: Live;
  #epoch = 1;
  #seq = 0;
  #port = 0;
  readonly #pages: string;

  /** `pages`: the folder of the built page. */
  constructor(pages: string, live: Live) {
    this.#pages = pages;
    this.#live = live;
  }

  get address(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  async start(): Promise<void> {
    const http = createServer((request, response) => void this.#serve(request, response));
    const sockets = new WebSocketServer({ server: http, path: '/stream' });
    sockets.on('connection', (socket, request) => {
      this.connections.push(request.url ?? '');
      socket.on('message', (data: Buffer) => this.heard.push(data.toString()));
      this.#sendTo(socket, { kind: 'snapshot', live: this.#live });
    });
    await new Promise<void>((done) => http.listen(this.#port, '127.0.0.1', done));
    this.#port = (http.address() as AddressInfo).port;
    this.#http = http;
    this.#sockets = sockets;
    this.#beats = setInterval(() => this.say({ kind: 'readings', probes: this.#live.probes }), 400);
  }

  /** Gone without a goodbye; `start` brings it back at the same address as another run. */
  async stop(): Promise<void> {
    clearInterval(this.#beats);
    for (const socket of this.#sockets?.clients ?? []) socket.terminate();
    this.#sockets?.close();
    this.#http?.closeAllConnections();
    await new Promise((done) => (this.#http === null ? done(null) : this.#http.close(done)));
    this.#http = null;
    this.#epoch += 1;
    this.#seq = 0;
  }

  /** Stays connected and falls silent. */
  freeze(): void {
    clearInterval(this.#beats);
  }

  /**
   * Everything is now like this; pages that are connected get a snapshot.
   * @returns what tells whether a page has got that one, or a later one
   */
  show(live: Live): Pick<StreamMessage, 'epoch' | 'seq'> {
    this.#live = live;
    this.say({ kind: 'snapshot', live });
    return { epoch: this.#run, seq: this.#seq };
  }

  say(said: Said): void {
    this.#seq += 1;
    for (const socket of this.#sockets?.clients ?? []) this.#sendTo(socket, said);
  }

  get #run(): string {
    return `run-${this.#epoch}`;
  }

  /** Sends any text at all. */
  sayRaw(text: string): void {
    for (const socket of this.#sockets?.clients ?? []) socket.send(text);
  }

  #sendTo(socket: WebSocket, said: Said): void {
    socket.send(JSON.stringify({ epoch: this.#run, seq: this.#seq, ...said }));
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = new URL(request.url ?? '/', 'http://page').pathname;
    const parts = [this.pieces, this.cements, this.air, this.coats];
    const kept = parts.map((one) => one.get(path)).find((one) => one !== null) ?? null;
    if (request.method === 'POST') await this.#take(path, request, response);
    else if (request.method === 'PUT') answer(response, this.#put(path, await bodyOf(request)));
    else if (kept !== null) answer(response, kept);
    else if (path === '/api/items') response.end(JSON.stringify({ items: this.items }));
    else await this.#giveFile(path, response);
  }

  #put(path: string, body: unknown): Answer {
    return this.cements.put(path, body) ?? this.air.put(path, body) ?? this.pieces.put(path, body);
  }

  async #take(path: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const posted = { path, body: await bodyOf(request) };
    if (path === '/api/presence') {
      this.presences += 1;
      response.writeHead(204).end();
      return;
    }
    this.posted.push(posted);
    const answered = this.cements.post(posted) ?? this.air.post(posted) ?? this.answering(posted);
    if (answered === null) request.socket.destroy();
    else answer(response, answered);
  }

  async #giveFile(path: string, response: ServerResponse): Promise<void> {
    const file = normalize(join(this.#pages, path === '/' ? 'index.html' : path));
    try {
      if (!file.startsWith(normalize(this.#pages))) throw new RangeError(file);
      const content = await readFile(file);
      const type = types[extname(file)] ?? 'application/octet-stream';
      response.writeHead(200, { 'content-type': type, 'content-security-policy': policy }).end(content);
    } catch {
      response.writeHead(404).end();
    }
  }
}
