import { SOUND_HOLDS_MS } from '../../../shared/messages/hearing.ts';
import type { Backlog } from './backlog.ts';
import type { StreamLimits } from './limits.ts';
import type { Message } from './message.ts';

/** The way to one client: a WebSocket, or a stand-in for one. */
export interface Pipe {
  /** Bytes that were sent and have not left the process. */
  readonly waitingBytes: number;
  /** `done` is called once the message has left the process, or never will. */
  send(text: Buffer, done: () => void): void;
  ping(id: string): void;
  /** Says goodbye and closes. */
  close(code: number, why: string): void;
  /** Lets go at once. */
  drop(): void;
}

export type DropReason = 'reads too slowly' | 'answers no more' | 'sends too much';

export interface ClientSetup {
  readonly pipe: Pipe;
  readonly backlog: Pick<Backlog, 'changedSince'>;
  readonly limits: StreamLimits;
  /** Number of the last message that the client has seen, from an earlier connection; 0 where it begins anew. */
  readonly seenSeq: number;
  readonly dropped: (reason: DropReason) => void;
}

/**
 * One client of the stream. While it keeps up it gets every message. Once too much is waiting for it, or a ping
 * stays unanswered, it gets alarms and marks only, and the newest readings and situation when there is room again:
 * what it is owed is then two numbers, not a queue. All before `#sentSeq` has been given to it.
 */
export class StreamClient {
  readonly #pipe: Pipe;
  readonly #backlog: Pick<Backlog, 'changedSince'>;
  readonly #limits: StreamLimits;
  readonly #dropped: (reason: DropReason) => void;
  #sentSeq: number;
  #sentAtMs = 0;
  #behind = false;
  #slow = false;
  #waitingMessages = 0;
  #pingId = 0;
  #pingedAtMs = 0;
  #answered = true;
  #framesIn = 0;
  #saidIn = 0;
  #soundUntilMs = Number.NEGATIVE_INFINITY;
  #gone = false;

  constructor(setup: ClientSetup) {
    this.#pipe = setup.pipe;
    this.#backlog = setup.backlog;
    this.#limits = setup.limits;
    this.#dropped = setup.dropped;
    this.#sentSeq = setup.seenSeq;
  }

  /** A message that everybody must get: what the client is behind with goes first, so that order holds. */
  insist(message: Message, nowMs: number): void {
    if (this.#behind) this.#catchUp(nowMs);
    this.#send(message, nowMs);
  }

  /** A message of newest state, which a slow client may get later, and newer. */
  offer(message: Message, nowMs: number): void {
    if (!this.#hasRoom(nowMs)) this.#behind = true;
    else if (this.#behind) this.#catchUp(nowMs);
    else this.#send(message, nowMs);
  }

  /** Gives a client that was behind what it is owed, if there is room now. */
  relieve(nowMs: number): void {
    if (this.#behind && this.#hasRoom(nowMs)) this.#catchUp(nowMs);
  }

  /** True where nothing was sent for a pulse, so that a beat is due. */
  wantsBeat(nowMs: number): boolean {
    return !this.#gone && !this.#behind && nowMs - this.#sentAtMs >= this.#limits.pulseMs;
  }

  /** Called every pulse: pings, and lets go of a client that answers no more. */
  lookAfter(nowMs: number): void {
    if (this.#gone) return;
    const sincePing = nowMs - this.#pingedAtMs;
    if (!this.#answered) {
      if (sincePing >= this.#limits.deadAfterMs) this.#drop('answers no more');
    } else if (this.#pingId === 0 || sincePing >= this.#limits.pingEveryMs) {
      this.#pingId += 1;
      this.#pingedAtMs = nowMs;
      this.#answered = false;
      this.#framesIn = 0;
      this.#saidIn = 0;
      this.#pipe.ping(String(this.#pingId));
    }
    this.relieve(nowMs);
  }

  /** The client answered a ping, or sent a control frame of its own (`id` null). */
  heard(id: string | null, nowMs: number): void {
    this.#framesIn += 1;
    if (this.#framesIn > this.#limits.framesIn) this.#drop('sends too much');
    if (id !== String(this.#pingId)) return;
    this.#answered = true;
    this.relieve(nowMs);
  }

  /** The client said whether its sound is armed and runs. */
  saysSound(armed: boolean, nowMs: number): void {
    this.#saidIn += 1;
    if (this.#saidIn > this.#limits.saidIn) this.#drop('sends too much');
    this.#soundUntilMs = armed ? nowMs + SOUND_HOLDS_MS : Number.NEGATIVE_INFINITY;
  }

  /** Whether its sound runs, as far as it has said so lately. */
  hasSound(nowMs: number): boolean {
    return !this.#gone && nowMs < this.#soundUntilMs;
  }

  close(code: number, why: string): void {
    this.#gone = true;
    this.#pipe.close(code, why);
  }

  /** The connection has ended by itself. */
  ended(): void {
    this.#gone = true;
  }

  drop(): void {
    this.#gone = true;
    this.#pipe.drop();
  }

  #catchUp(nowMs: number): void {
    this.#behind = false;
    for (const message of this.#backlog.changedSince(this.#sentSeq)) this.#send(message, nowMs);
  }

  #send(message: Message, nowMs: number): void {
    if (this.#gone) return;
    this.#sentSeq = message.seq;
    this.#sentAtMs = nowMs;
    this.#waitingMessages += 1;
    this.#pipe.send(message.text, this.#left);
    if (
      this.#pipe.waitingBytes > this.#limits.dropOverBytes ||
      this.#waitingMessages > this.#limits.dropOverMessages
    )
      this.#drop('reads too slowly');
  }

  readonly #left = (): void => {
    this.#waitingMessages -= 1;
  };

  #hasRoom(nowMs: number): boolean {
    if (this.#gone) return false;
    const late = !this.#answered && nowMs - this.#pingedAtMs >= this.#limits.lateAfterMs;
    const { waitingBytes } = this.#pipe;
    const { slowFromBytes, slowUntilBytes } = this.#limits;
    this.#slow = late || waitingBytes >= (this.#slow ? slowUntilBytes : slowFromBytes);
    return !this.#slow;
  }

  #drop(reason: DropReason): void {
    if (this.#gone) return;
    this.drop();
    this.#dropped(reason);
  }
}
