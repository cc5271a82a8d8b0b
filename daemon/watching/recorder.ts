import type { Carried, StopReason } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import type { Commit, SessionHead } from '../book/book.ts';
import { higher, type KeptStep, keptOf, peakOf } from './kept-step.ts';
import type { WatchStep } from './watcher.ts';

/** `not-yet`: nothing of it is kept, and it may be tried again; `never`: its session can't be kept any more. */
export type KeepOutcome = 'kept' | 'not-yet' | 'never';

/** Where commits go. */
export type Keep = (commit: Commit) => Promise<KeepOutcome>;

/** How a session begins: at a state of the watch, with what is carried into it. */
export interface Beginning {
  readonly head: SessionHead;
  readonly carried: Carried;
  readonly from: WatchState;
}

export interface Before {
  readonly steps: readonly KeptStep[];
  readonly until: WatchState;
}

export interface RecorderOptions {
  readonly keep: Keep;
  /** UTC of a time of the watch's clock, ISO with offset. */
  readonly utcOf: (tMs: number) => string;
  /** How the session begins that goes on, at `from`, with one that broke off; null where nothing of that one is kept. */
  readonly goOn: (from: WatchState, broken: string | null) => Beginning;
}

/** Readings are committed at least this often, ms: with the commit itself within a second. */
const COMMIT_MS = 950;
/** Where nothing can be kept, so many steps are held back before the session is broken off. */
export const HELD_AT_MOST = 10_000;
const RETRY_MS = 2000;

type EndReason = StopReason | 'interrupted';

/** What one commit takes along. */
interface Taken {
  readonly begin: Beginning | null;
  readonly steps: readonly KeptStep[];
  readonly end: EndReason | null;
  readonly until: Reach;
  /** How many of the steps came in since the session began. */
  readonly held: number;
}

/** How far a session has come, with its highest plate temperature until then, degC. */
interface Reach {
  readonly state: WatchState;
  readonly peakC: number | null;
}

/**
 * Records what a watch took and found, in commits, so that the book always holds a prefix of the inputs with exactly
 * their findings. A commit that fails is tried again with all that came since. Where a session can't be kept any more
 * another goes on with it: from where the book had come or, once too much was held back, from where the watch is.
 */
export class Recorder {
  readonly #options: RecorderOptions;
  #session: string;
  /** Null once it is kept. */
  #begin: Beginning | null;
  #pending: KeptStep[];
  #end: EndReason | null = null;
  /** How far the watch has come, and how far the book has come with it. */
  #now: Reach;
  #kept: Reach;
  #flushing: Promise<boolean> | null = null;
  #timer: NodeJS.Timeout | null = null;
  /** Steps that came in since the last commit that was kept. */
  #held = 0;
  /** From breaking off until another session begins nothing that comes is kept. */
  #broken = false;
  #timesBroken = 0;
  #over = false;

  /** `before`: what the session begins with, from `begin.from` up to where the watch is. */
  constructor(begin: Beginning, before: Before, options: RecorderOptions) {
    this.#options = options;
    this.#session = begin.head.id;
    this.#begin = begin;
    this.#pending = [...before.steps];
    this.#now = { state: before.until, peakC: peakOf(before.steps) };
    this.#kept = { state: begin.from, peakC: null };
  }

  /** The session that is being recorded: another one after one that could not be kept any more. */
  get session(): string {
    return this.#session;
  }

  /** Adds one step of the watch; it is committed within a second. */
  add(step: WatchStep): void {
    const kept = keptOf(step);
    this.#now = { state: step.after, peakC: higher(this.#now.peakC, kept?.plateC ?? null) };
    if (!this.#broken && kept !== null) this.#hold(kept);
    this.#flushWithin(toNextCommitMs());
  }

  /** Commits all that is pending; resolves to whether all that was added before the call is kept. */
  async flush(): Promise<boolean> {
    const whole = !this.#broken;
    const timesBroken = this.#timesBroken;
    // A commit under way does not hold what was added since it began, so one more follows it.
    if (this.#flushing !== null) await this.#flushing;
    this.#flushing ??= this.#commit().finally(() => {
      this.#flushing = null;
    });
    return (await this.#flushing) && whole && timesBroken === this.#timesBroken;
  }

  /** Closes the session; resolves to whether its end is kept. Nothing is added after it. */
  async end(why: EndReason): Promise<boolean> {
    this.#over = true;
    if (!this.#broken) this.#end = why;
    return this.flush();
  }

  #hold(step: KeptStep): void {
    this.#pending.push(step);
    this.#held += 1;
    if (this.#held > HELD_AT_MOST) this.#breakOff();
  }

  async #commit(): Promise<boolean> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    const taken = this.#take();
    if (taken === null) return true;
    switch (await this.#options.keep(this.#commitOf(taken))) {
      case 'kept':
        return this.#onKept(taken);
      case 'not-yet':
        this.#putBack(taken);
        this.#flushWithin(RETRY_MS);
        return false;
      case 'never':
        return this.#onNever(taken);
    }
  }

  /** All that is to be kept; null where nothing is. */
  #take(): Taken | null {
    const until = this.#broken ? this.#kept : this.#now;
    const taken = { begin: this.#begin, steps: this.#pending, end: this.#end, until, held: this.#held };
    if (taken.begin === null && taken.end === null && until.state.seq === this.#kept.state.seq) return null;
    this.#begin = null;
    this.#pending = [];
    this.#end = null;
    this.#held = 0;
    return taken;
  }

  #commitOf({ begin, steps, end, until: { state, peakC } }: Taken): Commit {
    const entries = steps.flatMap(({ entry }) => (entry === null ? [] : [entry]));
    return {
      session: this.#session,
      begin: begin?.head ?? null,
      entries: begin === null ? entries : [firstEntry(begin), ...entries],
      found: steps.flatMap(({ found }) => found),
      untilSeq: state.seq,
      untilMs: state.tMs,
      peakC,
      end: end === null ? null : { why: end, atUtc: this.#options.utcOf(state.tMs) },
    };
  }

  #onKept({ end, until }: Taken): boolean {
    this.#kept = until;
    if (end !== null && !this.#over) {
      this.#goOn(this.#now.state, this.#session);
      this.#flushWithin(0);
    }
    return true;
  }

  /** What is held goes into another session: at once, or later where that one would be the second to fail. */
  #onNever(taken: Taken): boolean | Promise<boolean> {
    this.#putBack(taken);
    const { begin } = taken;
    if (this.#broken) {
      // Nothing is held, and there is nothing left that could be ended.
      this.#begin = null;
      this.#end = null;
      if (this.#over) return false;
    }
    const from = this.#broken ? this.#now.state : this.#kept.state;
    this.#goOn(from, begin === null ? this.#session : begin.carried.fromSession);
    if (begin === null) return this.#commit();
    this.#flushWithin(RETRY_MS);
    return false;
  }

  #goOn(from: WatchState, broken: string | null): void {
    this.#begin = this.#options.goOn(from, broken);
    this.#session = this.#begin.head.id;
    this.#kept = { state: from, peakC: null };
    this.#now = { state: this.#now.state, peakC: peakOf(this.#pending) };
    this.#broken = false;
  }

  #putBack(taken: Taken): void {
    this.#begin = taken.begin;
    this.#end = this.#end ?? taken.end;
    if (this.#broken) return;
    this.#held += taken.held;
    this.#pending = [...taken.steps, ...this.#pending];
  }

  /** Too much is held back: the session ends with what the book has of it. */
  #breakOff(): void {
    this.#broken = true;
    this.#timesBroken += 1;
    this.#pending = [];
    this.#end = 'interrupted';
  }

  #flushWithin(ms: number): void {
    this.#timer ??= setTimeout(() => void this.flush(), ms);
  }
}

/** Every session's readings are committed at the same moments, so that the book's thread is woken once for all. */
const toNextCommitMs = (): number => COMMIT_MS - (performance.now() % COMMIT_MS);

const firstEntry = ({ head, carried }: Beginning) => ({
  seq: head.firstSeq,
  tMs: head.firstMs,
  input: { kind: 'carried' as const, carried },
});
