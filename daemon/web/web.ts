import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { hostname } from 'node:os';
import type { Logger } from 'pino';
import { webWords } from '../../shared/words/web.ts';
import { accessRules } from './access/rules.ts';
import { makeApp } from './app.ts';
import type { Desk } from './desk.ts';
import { type Listen, listenOn } from './listen.ts';
import { describe } from './openapi.ts';
import { routeTable } from './routes/table.ts';
import { closeCodes, StreamDoor } from './stream/door.ts';
import { type StreamLimits, streamLimits } from './stream/limits.ts';
import { Stream } from './stream/stream.ts';
import { systemTimers, type Timers } from './stream/timers.ts';

export interface WebSetup {
  readonly desk: Desk;
  /** Port 0 takes any free one. */
  readonly listen: Listen;
  /** Folder of the built page. */
  readonly pageDir: string;
  readonly log: Logger;
  readonly version: string;
  /** Names this run of the program. */
  readonly epoch: string;
  /** The machine's monotonic clock, ms. Not a watch's, which may run faster. */
  readonly nowMs: () => number;
  readonly limits?: Partial<StreamLimits>;
  readonly timers?: Timers;
}

export interface Web {
  /** Where to open the page, for example `http://127.0.0.1:7350`. */
  readonly address: string;
  readonly port: number;
  /** Ends every connection and the server, within a second. */
  close(): Promise<void>;
}

/** Ends of a shutdown, ms: for the goodbye of sockets and answers that are under way. */
const GOODBYE_MS = 400;

/** Serves page, API and stream. Rejects with `ListenFailure` where it can't listen there. */
export async function startWeb(setup: WebSetup): Promise<Web> {
  const server = createServer({
    connectionsCheckingInterval: 2000,
    headersTimeout: 8000,
    requestTimeout: 15_000,
  });
  const bound = await listenOn(server, setup.listen);
  // Without a listener, a connection that can't be accepted (no file handles left) would end the program.
  server.on('error', (error) => setup.log.error({ err: error }, 'a connection could not be taken'));
  const address = pageAddress(setup.listen.host, bound);
  const stream = serve(server, setup, address);
  return { address, port: bound.port, close: () => shut(server, stream) };
}

function serve(server: Server, setup: WebSetup, address: string): Stream {
  const { desk, log, epoch, version, nowMs } = setup;
  const startedMs = nowMs();
  const limits = { ...streamLimits, ...setup.limits };
  const stream = new Stream({ desk, epoch, limits, log, timers: setup.timers ?? systemTimers(nowMs) });
  const access = accessRules(setup.listen.host, hostname(), address);
  const routes = routeTable(desk, {
    version,
    epoch,
    uptimeMs: () => Math.floor(nowMs() - startedMs),
    streamClients: () => stream.clients,
    description: () => (description ??= describe(routes, version)),
  });
  let description: unknown = null;
  const door = new StreamDoor(stream, access, log);
  server.on('upgrade', (request, socket, head) => door.knock(request, socket, head));
  server.on('request', makeApp({ routes, access, pageDir: setup.pageDir, log }));
  return stream;
}

/** An address that can be opened on this machine: one that listens everywhere is opened at localhost. */
function pageAddress(host: string, bound: AddressInfo): string {
  const everywhere = bound.address === '0.0.0.0' || bound.address === '::';
  const name = everywhere ? 'localhost' : host.includes(':') ? `[${host.replaceAll(/[[\]]/g, '')}]` : host;
  return `http://${name}:${bound.port}`;
}

async function shut(server: Server, stream: Stream): Promise<void> {
  const closed = new Promise<void>((done) => {
    server.close(() => done());
  });
  stream.close(closeCodes.goingAway, webWords.closing);
  server.closeIdleConnections();
  const impatient = setTimeout(() => {
    stream.drop();
    server.closeAllConnections();
  }, GOODBYE_MS);
  await closed;
  clearTimeout(impatient);
}
