import { ReadlineParser } from '@serialport/parser-readline';
import type { DeviceLink } from '../../../shared/watch/input.ts';
import { serialWords } from '../../../shared/words/serial.ts';
import type { SourceEvent } from '../source.ts';
import { LineGuard } from './guard.ts';
import { MAX_LINE, type ParsedLine } from './line.ts';
import type { RejectCause } from './reject.ts';
import { LineTally, printable } from './tally.ts';

/** Opening a port resets many boards: for so long, what can't be read is boot text. */
export const BOOT_MS = 2000;

export interface StackOptions {
  readonly deviceId: string;
  /** The watch's clock, ms; stamps each event. */
  readonly nowMs: () => number;
  readonly emit: (event: SourceEvent) => void;
  /** The source's own, which outlives its connections; a fresh one where there is but one connection. */
  readonly tally?: LineTally;
}

/**
 * From bytes to events, for one connection: guard, line parser, checks. A new one is made for each connection, so that
 * nothing of the last one joins the next one's first line. Says `starting` when made and `connected` at the first good
 * line or after two seconds; that of lost devices is for their source to say.
 */
class LineStack {
  readonly #options: StackOptions;
  readonly #tally: LineTally;
  // One byte for a CR and one to see that a line is too long.
  readonly #guard = new LineGuard(MAX_LINE + 2);
  /**
   * Object mode keeps lines apart when they are pulled; pulled rather than flowing, they come out within the write
   * that brought them.
   */
  readonly #parser = new ReadlineParser({ delimiter: '\n', encoding: 'latin1', readableObjectMode: true });
  readonly #openedMs: number;
  #starting = true;
  #first = true;
  #ended = false;

  constructor(options: StackOptions) {
    this.#options = options;
    this.#tally = options.tally ?? new LineTally();
    this.#tally.newConnection();
    this.#openedMs = options.nowMs();
    this.#emitLink('starting', serialWords.starting);
  }

  /** Takes what came from the device. All events of these bytes are out when it returns. */
  write(bytes: Uint8Array): void {
    if (this.#ended) return;
    this.settle();
    this.#guard.write(bytes);
    for (let part = this.#guard.read(); part !== null; part = this.#guard.read()) {
      this.#parser.write(part);
      this.#drain();
    }
  }

  /** Ends the time of boot text once it is over; call it now and then, since a silent device sends nothing. */
  settle(): void {
    if (this.#starting && this.#options.nowMs() - this.#openedMs >= BOOT_MS) this.#connected();
  }

  /** The connection is over: a line that was not finished is dropped, and counted unless it was boot text. */
  end(): void {
    if (this.#ended) return;
    this.#ended = true;
    const rest = this.#parser.buffer.toString('latin1');
    if (rest !== '' && !this.#starting) this.#reject('unfinished', rest);
    this.#guard.destroy();
    this.#parser.destroy();
  }

  counts(): ReturnType<LineTally['counts']> {
    return this.#tally.counts();
  }

  #drain(): void {
    // Whoever listens may end the connection in the middle of it.
    while (!this.#ended) {
      const line = this.#parser.read() as string | null;
      if (line === null) return;
      this.#onLine(line.replace(/\r$/, ''));
    }
  }

  #onLine(raw: string): void {
    const first = this.#first;
    this.#first = false;
    if (raw.trim() === '') return;
    this.#tally.seen(raw, !first);
    const line = this.#tally.read(raw, this.#options.deviceId);
    if (first && !isWhole(line)) return;
    const cause = line.kind === 'rejected' ? line.cause : this.#tally.objection(line);
    if (cause !== null) {
      if (!this.#starting) this.#reject(cause, raw);
    } else if (line.kind !== 'rejected' && !(this.#starting && mayBeBootText(line))) {
      this.#accept(line);
    }
  }

  #accept(line: GoodLine): void {
    this.#tally.accept(line);
    if (this.#starting) this.#connected();
    if (line.kind !== 'sample') return;
    for (const { sample } of [line, ...(line.others ?? [])])
      this.#emit({ kind: 'sample', sample, tMs: this.#now() });
  }

  #reject(cause: RejectCause, raw: string): void {
    this.#tally.reject(cause, raw);
    this.#emit({ kind: 'rejected', cause, raw: printable(raw), tMs: this.#now() });
  }

  #connected(): void {
    this.#starting = false;
    this.#emitLink('connected', '');
  }

  #emitLink(link: DeviceLink, detail: string): void {
    this.#emit({ kind: 'link', link, detail, tMs: this.#now() });
  }

  #emit(event: SourceEvent): void {
    this.#options.emit(event);
  }

  #now(): number {
    return this.#options.nowMs();
  }
}

type GoodLine = Exclude<ParsedLine, { kind: 'rejected' }>;

/** Pairs are like nothing else; a number alone, or what a user's own form takes, may be part of something else. */
const isDistinct = (line: ParsedLine): boolean => line.kind !== 'sample' || line.form === 'pairs';

/** Boot text may hold numbers too. */
const mayBeBootText = (line: GoodLine): boolean => !isDistinct(line) && line.check === 'none';

/** Whether a connection's first line can't be the rest of one: a checksum tells, but only for pairs. */
const isWhole = (line: ParsedLine): boolean =>
  line.kind !== 'rejected' && line.check !== 'none' && isDistinct(line);

export type { LineStack };

/** A stack for one connection. */
export const lineStack = (options: StackOptions): LineStack => new LineStack(options);
