import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { Carried, Entry, StopReason } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import type { Commit, SessionHead } from '../book/book.ts';
import type { WatchStep } from './watcher.ts';

/** `not-yet`: nothing of it is kept, and it may be tried again; `never`: its session can't be kept any more. */
export type KeepOutcome = 'kept' | 'not-yet' | 'never';

/** Where commits go. */
export type Keep = (commit: Commit) => Promise<KeepOutcome>;

export interface RecorderOptions {
  readonly keep: Keep;
  /** UTC of a time of the watch's clock, ISO with offset. */
  readonly utcOf: (tMs: number) => string;
  /** Asked for when a session broke off because nothing could be kept, and keeping works again. */
  readonly goOn: (brokenSession: string) => void;
}

/** Readings are committed at least this often, ms. */
const COMMIT_MS = 1000;
/** Where nothing can be kept, so many inputs are held back before the session is broken off. */
const HELD_AT_MOST = 10_000;
const RETRY_MS = 2000;

interface Pending {
  begin: SessionHead | null;
  entries: Entry[];
  found: FoundEntry[];
  end: Commit['end'];
}

/** How far a session has come. */
type Reach = Pick<Commit, 'untilSeq' | 'untilMs' | 'peakC'>;

const nothingPending = (): Pending => ({ begin: null, entries: [], found: [], end: null });

/**
 * Records one session: gathers what a watch took and found, and hands it on in commits, so that the book always holds a
 * prefix of the inputs with exactly their findings. A commit that fails is tried again with all that came since.
 */
export class Recorder {
  readonly session: string;
  readonly #options: RecorderOptions;
  #pending: Pending = nothingPending();
  #state: WatchState;
  #peakC: number | null = null;
  #flushing: Promise<boolean> | null = null;
  #timer: NodeJS.Timeout | null = null;
  /** How far the book has come with this session: a session that breaks off ends here. */
  #kept: Reach;
  #broken = false;
  #over = false;

  constructor(head: SessionHead, carried: Carried, from: WatchState, options: RecorderOptions) {
    this.session = head.id;
    this.#options = options;
    this.#state = from;
    this.#kept = { untilSeq: head.firstSeq, untilMs: head.firstMs, peakC: null };
    this.#pending.begin = head;
    this.#pending.entries.push({
      seq: head.firstSeq,
      tMs: head.firstMs,
      input: { kind: 'carried', carried },
    });
  }

  /** Adds one step of the watch; it is committed within a second. */
  add(step: WatchStep): void {
    this.#state = step.after;
    this.#notePeak(step);
    if (this.#broken) return;
    if (step.entry !== null) this.#pending.entries.push(step.entry);
    if (step.found.length > 0) this.#pending.found.push(...step.found);
    if (this.#pending.entries.length > HELD_AT_MOST) this.#breakOff();
    this.#timer ??= setTimeout(() => void this.flush(), COMMIT_MS);
  }

  /** Commits all that is pending; resolves to whether all that was added before the call is kept. */
  async flush(): Promise<boolean> {
    // A commit under way does not hold what was added since it began, so one more follows it.
    if (this.#flushing !== null) await this.#flushing;
    this.#flushing ??= this.#commit().finally(() => {
      this.#flushing = null;
    });
    return this.#flushing;
  }

  get #reach(): Reach {
    return { untilSeq: this.#state.seq, untilMs: this.#state.tMs, peakC: this.#peakC };
  }

  /** Closes the session; resolves to whether its end is kept. */
  async end(why: StopReason): Promise<boolean> {
    this.#over = true;
    if (!this.#broken) this.#pending.end = { why, atUtc: this.#options.utcOf(this.#state.tMs) };
    return this.flush();
  }

  async #commit(): Promise<boolean> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    const taken = this.#pending;
    this.#pending = nothingPending();
    const reach = this.#broken ? this.#kept : this.#reach;
    const end = this.#broken
      ? { why: 'interrupted' as const, atUtc: this.#options.utcOf(reach.untilMs) }
      : taken.end;
    switch (await this.#options.keep({ session: this.session, ...taken, ...reach, end })) {
      case 'kept':
        this.#kept = reach;
        if (end?.why === 'interrupted') this.#goOn();
        return true;
      case 'not-yet':
        this.#putBack(taken);
        return false;
      case 'never':
        this.#broken = true;
        this.#pending = nothingPending();
        this.#goOn();
        return false;
    }
  }

  /** Once, and only for a session that nobody has ended. */
  #goOn(): void {
    if (!this.#over) this.#options.goOn(this.session);
    this.#over = true;
  }

  #putBack(taken: Pending): void {
    this.#pending = {
      begin: taken.begin,
      entries: [...taken.entries, ...this.#pending.entries],
      found: [...taken.found, ...this.#pending.found],
      end: this.#pending.end ?? taken.end,
    };
    if (this.#broken) this.#dropHeld();
    this.#timer ??= setTimeout(() => void this.flush(), RETRY_MS);
  }

  /** Too much is held back: the session ends with what the book has of it. */
  #breakOff(): void {
    this.#broken = true;
    this.#dropHeld();
  }

  /** A session of which nothing is kept yet still has to say what was carried into it. */
  #dropHeld(): void {
    const { begin, entries } = this.#pending;
    this.#pending = { ...nothingPending(), begin, entries: begin === null ? [] : entries.slice(0, 1) };
  }

  #notePeak({ entry, after }: WatchStep): void {
    if (entry?.input.kind !== 'sample') return;
    const reading = after.readings[entry.input.sample.probe];
    if (reading?.quality === 'ok') this.#peakC = Math.max(reading.plateC, this.#peakC ?? reading.plateC);
  }
}
