import type { Logger } from 'pino';
import type { ProbeLive } from '../../../shared/messages/live.ts';
import type { Desk, LiveChange } from '../desk.ts';
import { Backlog, keepOnly, probesOf } from './backlog.ts';
import { type Pipe, StreamClient } from './client.ts';
import type { StreamLimits } from './limits.ts';
import type { Message } from './message.ts';
import type { Timers } from './timers.ts';

/** Where a client that comes back left off. */
export interface Resume {
  readonly epoch: string;
  readonly after: number;
}

export interface StreamSetup {
  readonly desk: Pick<Desk, 'live' | 'listen' | 'hearing'>;
  readonly epoch: string;
  readonly limits: StreamLimits;
  readonly timers: Timers;
  readonly log: Logger;
}

/** How often it is looked at how many readings come, ms. */
const PACE_MS = 250;

/** Tells every client how things stand, and then every change. */
export class Stream {
  readonly #setup: StreamSetup;
  readonly #backlog: Backlog;
  readonly #clients = new Set<StreamClient>();
  /** Readings that wait for the gap to pass, the newest of each probe. */
  readonly #gathered = new Map<string, ProbeLive>();
  /** Readings since the pace was last looked at. */
  #counted = { readings: 0, sinceMs: Number.NEGATIVE_INFINITY };
  #gapMs: number;
  #armedPages = 0;
  #readingsAtMs = Number.NEGATIVE_INFINITY;
  #stopWaiting: (() => void) | null = null;
  readonly #stopPulse: () => void;
  readonly #stopListening: () => void;

  constructor(setup: StreamSetup) {
    this.#setup = setup;
    this.#backlog = new Backlog(setup.epoch, setup.limits);
    this.#gapMs = setup.limits.readingsGapMs;
    this.#stopListening = setup.desk.listen((change) => this.#hear(change));
    this.#stopPulse = setup.timers.every(setup.limits.pulseMs, () => this.#pulse());
  }

  get clients(): number {
    return this.#clients.size;
  }

  get full(): boolean {
    return this.#clients.size >= this.#setup.limits.clients;
  }

  /** Takes a client in: it gets what it missed, or how things stand, before anything else. */
  join(pipe: Pipe, resume: Resume | null): StreamClient {
    const { desk, limits, log, timers } = this.#setup;
    const missed = resume?.epoch === this.#backlog.epoch ? this.#backlog.missedSince(resume.after) : null;
    const first = missed ?? [this.#backlog.snapshot(desk.live())];
    const client = new StreamClient({
      pipe,
      limits,
      backlog: this.#backlog,
      seenSeq: missed === null ? 0 : (resume?.after ?? 0),
      dropped: (reason) => {
        this.#clients.delete(client);
        log.info({ reason }, 'a client of the stream was dropped');
      },
    });
    this.#clients.add(client);
    for (const message of first) client.insist(message, timers.nowMs());
    client.lookAfter(timers.nowMs());
    return client;
  }

  /** The client answered a ping (its id), or sent a control frame of its own (null). */
  heard(client: StreamClient, id: string | null): void {
    client.heard(id, this.#setup.timers.nowMs());
  }

  /** The client said whether its sound is armed and runs. */
  saysSound(client: StreamClient, armed: boolean): void {
    client.saysSound(armed, this.#setup.timers.nowMs());
  }

  /** Nothing waits for the client in this process any more. */
  drained(client: StreamClient): void {
    client.relieve(this.#setup.timers.nowMs());
  }

  leave(client: StreamClient): void {
    client.ended();
    this.#clients.delete(client);
  }

  /** Says goodbye to every client and tells nothing more. */
  close(code: number, why: string): void {
    this.#stopListening();
    this.#stopPulse();
    this.#stopWaiting?.();
    for (const client of this.#clients) client.close(code, why);
  }

  /** Lets go of whoever has not answered the goodbye. */
  drop(): void {
    for (const client of this.#clients) client.drop();
    this.#clients.clear();
  }

  #hear(change: LiveChange): void {
    switch (change.kind) {
      case 'readings':
        this.#gather(change.probes);
        return;
      case 'situation':
        keepOnly(probesOf(change.situation), this.#gathered);
        this.#toAll('offer', this.#backlog.situation(change.situation));
        return;
      case 'alarm':
      case 'mark':
        this.#toAll('insist', this.#backlog.event(change));
    }
  }

  #gather(probes: readonly ProbeLive[]): void {
    const { timers } = this.#setup;
    const nowMs = timers.nowMs();
    for (const probe of probes) this.#gathered.set(probe.id, probe);
    this.#keepPace(probes.length, nowMs);
    if (this.#stopWaiting !== null) return;
    const waitMs = this.#readingsAtMs + this.#gapMs - nowMs;
    if (waitMs <= 0) this.#tellReadings();
    else this.#stopWaiting = timers.after(waitMs, () => this.#tellReadings());
  }

  #keepPace(readings: number, nowMs: number): void {
    this.#counted.readings += readings;
    const overMs = nowMs - this.#counted.sinceMs;
    if (overMs < PACE_MS) return;
    const { manyReadings, manyGapMs, readingsGapMs } = this.#setup.limits;
    const many = (this.#counted.readings * 1000) / overMs > manyReadings;
    this.#gapMs = many ? manyGapMs : readingsGapMs;
    this.#counted = { readings: 0, sinceMs: nowMs };
  }

  #tellReadings(): void {
    this.#stopWaiting = null;
    this.#readingsAtMs = this.#setup.timers.nowMs();
    const probes = [...this.#gathered.values()];
    this.#gathered.clear();
    if (probes.length > 0) this.#toAll('offer', this.#backlog.readings(probes));
  }

  #pulse(): void {
    const nowMs = this.#setup.timers.nowMs();
    for (const client of this.#clients) client.lookAfter(nowMs);
    this.#countSound(nowMs);
    const quiet = [...this.#clients].filter((client) => client.wantsBeat(nowMs));
    if (quiet.length === 0) return;
    const beat = this.#backlog.beat();
    for (const client of quiet) client.offer(beat, nowMs);
  }

  /** Counted at the pulse only, so that no client can make the situation change more often. */
  #countSound(nowMs: number): void {
    let armed = 0;
    for (const client of this.#clients) if (client.hasSound(nowMs)) armed += 1;
    if (armed === this.#armedPages) return;
    this.#armedPages = armed;
    this.#setup.desk.hearing(armed);
  }

  #toAll(how: 'offer' | 'insist', message: Message): void {
    const nowMs = this.#setup.timers.nowMs();
    for (const client of this.#clients) client[how](message, nowMs);
  }
}
