import type { IncomingMessage } from 'node:http';
import { STATUS_CODES } from 'node:http';
import type { Duplex } from 'node:stream';
import type { Logger } from 'pino';
import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import { z } from 'zod';
import { type SoundFrame, soundFrameSchema } from '../../../shared/messages/hearing.ts';
import { webWords } from '../../../shared/words/web.ts';
import type { AccessRules } from '../access/rules.ts';
import { problemBody, readAs, Trouble } from '../problem.ts';
import type { Pipe } from './client.ts';
import type { Resume, Stream } from './stream.ts';

/** What may stand after the question mark of `/stream`. */
export const resumeQuerySchema = z.object({
  /** `epoch` of the last message seen. */
  epoch: z.string().max(100).optional(),
  /** `seq` of the last message seen. */
  after: z.coerce.number().int().min(0).optional(),
});

/** Why a socket is closed, as WebSocket close codes (RFC 6455, section 7.4.1). */
export const closeCodes = { goingAway: 1001, policy: 1008, failed: 1011 } as const;

/** Clients send pongs and whether their sound is on, and those are small. */
const socketOptions = {
  noServer: true,
  clientTracking: false,
  // Per-message compression makes the slowest messages many times slower.
  perMessageDeflate: false,
  maxPayload: 1024,
  maxFragments: 4,
  maxBufferedChunks: 64,
  // A client that doesn't answer a goodbye is let go after this, ms.
  closeTimeout: 1000,
};

/** Lets WebSocket clients in to the stream; whoever may not come in gets an ordinary HTTP answer that says why. */
export class StreamDoor {
  readonly #stream: Stream;
  readonly #access: AccessRules;
  readonly #log: Logger;
  readonly #sockets = new WebSocketServer(socketOptions);

  constructor(stream: Stream, access: AccessRules, log: Logger) {
    this.#stream = stream;
    this.#access = access;
    this.#log = log;
  }

  /** Handles an HTTP upgrade request. */
  knock(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    try {
      const resume = this.#admit(request);
      this.#sockets.handleUpgrade(request, socket, head, (ws) => this.#welcome(ws, socket, resume));
    } catch (error) {
      if (!(error instanceof Trouble)) this.#log.error({ err: error }, 'a request for the stream failed');
      refuse(socket, error instanceof Trouble ? error : new Trouble(500, webWords.failed));
    }
  }

  /** Where the client left off, if it may come in; throws the `Trouble` with it otherwise. */
  #admit(request: IncomingMessage): Resume | null {
    const refusal = this.#access.refusal(request.headers);
    if (refusal !== null) throw new Trouble(403, refusal);
    const [path = '', ...query] = (request.url ?? '').split('?');
    if (path !== '/stream') throw new Trouble(404, webWords.noSuchAddress(path.slice(0, 200)));
    const asked = Object.fromEntries(new URLSearchParams(query.join('?')));
    const { epoch, after } = readAs(resumeQuerySchema, asked, 'the address');
    if (this.#stream.full) throw new Trouble(503, webWords.streamFull(this.#stream.clients));
    return epoch === undefined || after === undefined ? null : { epoch, after };
  }

  #welcome(ws: WebSocket, socket: Duplex, resume: Resume | null): void {
    // A broken frame or connection: `close` follows and is what counts.
    ws.on('error', (error) => this.#log.debug({ err: error }, 'a client of the stream broke off'));
    try {
      const client = this.#stream.join(pipeOf(ws), resume);
      ws.on('close', () => this.#stream.leave(client));
      ws.on('pong', (data) => this.#stream.heard(client, data.toString('latin1')));
      ws.on('ping', () => this.#stream.heard(client, null));
      ws.on('message', (data, isBinary) => {
        const frame = isBinary ? null : soundFrame(data);
        if (frame === null) ws.close(closeCodes.policy, webWords.streamTakesOnly);
        else this.#stream.saysSound(client, frame.armed);
      });
      socket.on('drain', () => this.#stream.drained(client));
    } catch (error) {
      this.#log.error({ err: error }, 'a client of the stream could not be told how things stand');
      ws.close(closeCodes.failed, webWords.failed);
    }
  }
}

/** What a client said; null where it is anything else than it may say. */
function soundFrame(data: RawData): SoundFrame | null {
  try {
    const text = Buffer.isBuffer(data) ? data.toString() : '';
    return soundFrameSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

const pipeOf = (ws: WebSocket): Pipe => ({
  get waitingBytes() {
    return ws.bufferedAmount;
  },
  send: (text, done) => ws.send(text, { binary: false }, done),
  ping: (id) => ws.ping(id),
  close: (code, why) => ws.close(code, why),
  drop: () => ws.terminate(),
});

function refuse(socket: Duplex, trouble: Trouble): void {
  const body = JSON.stringify(problemBody(trouble));
  socket.on('error', () => socket.destroy());
  socket.once('finish', () => socket.destroy());
  socket.end(
    [
      `HTTP/1.1 ${trouble.status} ${STATUS_CODES[trouble.status] ?? ''}`,
      'Connection: close',
      'Content-Type: application/json; charset=utf-8',
      'Cache-Control: no-store',
      `Content-Length: ${Buffer.byteLength(body)}`,
      '',
      body,
    ].join('\r\n'),
  );
}
