import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { type WebSocket, WebSocketServer } from 'ws';
import type { Live } from '../../../shared/messages/live.ts';
import type { StreamMessage } from '../../../shared/messages/stream.ts';

/** A stand-in for the daemon: serves the built page and says on the stream what a test wants said. */

export interface Posted {
  readonly path: string;
  readonly body: Readonly<Record<string, unknown>>;
}

/** What the stand-in answers to a command; null: it hangs up without an answer. */
export type Answering = (posted: Posted) => { readonly status: number; readonly body: unknown } | null;

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
  path === '/api/source'
    ? { status: 204, body: null }
    : { status: 200, body: { commandId: body['commandId'], session: null, kept: true } };

export class FakeDaemon {
  readonly posted: Posted[] = [];
  readonly connections: string[] = [];
  /** What pages have said over the stream. */
  readonly heard: string[] = [];
  answering: Answering = agreeing;
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

  /** Everything is now like this; pages that are connected get a snapshot. */
  show(live: Live): void {
    this.#live = live;
    this.say({ kind: 'snapshot', live });
  }

  say(said: Said): void {
    this.#seq += 1;
    for (const socket of this.#sockets?.clients ?? []) this.#sendTo(socket, said);
  }

  /** Sends any text at all. */
  sayRaw(text: string): void {
    for (const socket of this.#sockets?.clients ?? []) socket.send(text);
  }

  #sendTo(socket: WebSocket, said: Said): void {
    socket.send(JSON.stringify({ epoch: `run-${this.#epoch}`, seq: this.#seq, ...said }));
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = new URL(request.url ?? '/', 'http://page').pathname;
    if (request.method === 'POST') await this.#take(path, request, response);
    else if (path === '/api/items') response.end(JSON.stringify({ items: [] }));
    else await this.#giveFile(path, response);
  }

  async #take(path: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk as Buffer);
    const posted = { path, body: JSON.parse(Buffer.concat(chunks).toString('utf8')) };
    this.posted.push(posted);
    const answer = this.answering(posted);
    if (answer === null) request.socket.destroy();
    else
      response
        .writeHead(answer.status, { 'content-type': 'application/json' })
        .end(JSON.stringify(answer.body));
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
