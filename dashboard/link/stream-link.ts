import type { SoundFrame } from '../../shared/messages/hearing.ts';
import { type StreamMessage, streamMessageSchema } from '../../shared/messages/stream.ts';
import { pageMs } from '../parts/now.ts';
import { versionIn } from './reload.ts';

/** What a link tells of; the page folds it into what it knows. */
export interface StreamListener {
  opened(): void;
  closed(): void;
  message(message: StreamMessage): void;
  /** A message that the schemas refuse, with the program's version where it names one. */
  unreadable(programVersion: string | null): void;
  /** Where to go on: the epoch and the last message known, or null to begin with a snapshot. */
  resumeAfter(): { readonly epoch: string; readonly seq: number } | null;
}

const RETRY_MS = 500;
/** A connection on which nothing comes for so long is given up and made anew, ms. */
const GIVE_UP_MS = 5000;
const LOOK_EVERY_MS = 500;

/** Keeps one WebSocket to `/stream` open for as long as the page lives, and makes a fresh one whenever it ends. */
export class StreamLink {
  readonly #address: string;
  readonly #listener: StreamListener;
  #socket: WebSocket | null = null;
  #retry: ReturnType<typeof setTimeout> | undefined;
  #watchdog: ReturnType<typeof setInterval> | undefined;
  #heardAtMs = 0;

  constructor(address: string, listener: StreamListener) {
    this.#address = address;
    this.#listener = listener;
  }

  start(): void {
    this.#connect();
  }

  /** Drops the connection and makes a new one: what came over it doesn't follow on what is known. */
  restart(): void {
    this.#end(this.#socket, 0);
  }

  /** Says something to the daemon, where it can be reached now; false where it can't. */
  say(frame: SoundFrame): boolean {
    if (this.#socket?.readyState !== WebSocket.OPEN) return false;
    this.#socket.send(JSON.stringify(frame));
    return true;
  }

  #connect(): void {
    const after = this.#listener.resumeAfter();
    const query = after === null ? '' : `?epoch=${encodeURIComponent(after.epoch)}&after=${after.seq}`;
    const socket = new WebSocket(this.#address + query);
    this.#socket = socket;
    this.#watch(socket);
    socket.addEventListener('open', () => {
      if (socket === this.#socket) this.#listener.opened();
    });
    socket.addEventListener('message', (event) => this.#receive(socket, event.data));
    socket.addEventListener('close', () => this.#end(socket, RETRY_MS));
  }

  #receive(socket: WebSocket, data: unknown): void {
    if (socket !== this.#socket) return;
    this.#heardAtMs = pageMs();
    const raw = parsed(data);
    const message = streamMessageSchema.safeParse(raw);
    if (message.success) this.#listener.message(message.data);
    else this.#listener.unreadable(versionIn(raw));
  }

  /** A peer that died without a word closes nothing: only its silence tells. */
  #watch(socket: WebSocket): void {
    this.#heardAtMs = pageMs();
    this.#watchdog = setInterval(() => {
      if (pageMs() - this.#heardAtMs >= GIVE_UP_MS) this.#end(socket, 0);
    }, LOOK_EVERY_MS);
  }

  /** Ends `socket` if it is the one in use; whoever notices first schedules the one retry. */
  #end(socket: WebSocket | null, waitMs: number): void {
    if (socket === null || socket !== this.#socket) return;
    this.#socket = null;
    clearInterval(this.#watchdog);
    clearTimeout(this.#retry);
    socket.close();
    this.#listener.closed();
    this.#retry = setTimeout(() => this.#connect(), waitMs);
  }
}

function parsed(data: unknown): unknown {
  try {
    return typeof data === 'string' ? JSON.parse(data) : null;
  } catch {
    return null;
  }
}
