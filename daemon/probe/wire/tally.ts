import type { RejectedLines, SourceStatus, Wire } from '../source.ts';
import { type CheckKind, checkKinds } from './checksum.ts';
import type { LineReader } from './forms/form-read.ts';
import { protocolReader } from './forms/reader.ts';
import type { HelloLine, ParsedLine, SampleLine } from './line.ts';
import type { RejectCause } from './reject.ts';

/** The part of a source's status that its lines give. */
export type LineCounts = Omit<SourceStatus, 'device' | 'link' | 'detail'>;

/** A jump of the sequence number further than this, either way, is a board that began anew, not lost lines. */
const LARGEST_GAP = 1000;

/** So many of the last lines are kept as they came. */
const RECENT_LINES = 6;

/** The text with every byte that can't be printed as `\xHH`, at most 256 characters. */
export function printable(raw: string): string {
  return raw
    .slice(0, 256)
    .replace(/[^ -~]/g, (c) => `\\x${c.charCodeAt(0).toString(16).padStart(2, '0')}`)
    .slice(0, 256);
}

/**
 * What is known of a source from all its lines so far, over all its connections: the form that they are read in,
 * counters for showing, and what it has bound itself to. A device that has once sent checksums or pairs is held to them, since a damaged line may
 * look like a good one that has neither.
 */
export class LineTally implements Wire {
  #reader: LineReader = protocolReader;
  #recent: readonly string[] = [];
  #accepted = 0;
  #missed = 0;
  #lastLine = '';
  #check: CheckKind = 'none';
  #pairs = false;
  #hello: Readonly<Record<string, string>> | null = null;
  readonly #rejected = new Map<RejectCause, RejectedLines>();
  readonly #lastSeq = new Map<string, number>();

  /** A board that comes back may have begun to count anew. */
  newConnection(): void {
    this.#lastSeq.clear();
  }

  /** A connection's first line may be the rest of one: nobody is to take its form for that of the device. */
  seen(raw: string, isWhole = true): void {
    this.#lastLine = printable(raw);
    if (isWhole) this.#recent = [raw, ...this.#recent].slice(0, RECENT_LINES);
  }

  /** The last lines that were whole, the newest first. */
  recentLines(): readonly string[] {
    return this.#recent;
  }

  /**
   * From the next line on, on an open connection too. Another form is for other lines: the counters, and what the device
   * has bound itself to, begin anew.
   */
  readAs(reader: LineReader): void {
    const before = JSON.stringify(this.#reader.form);
    this.#reader = reader;
    if (JSON.stringify(reader.form) === before) return;
    this.#accepted = 0;
    this.#missed = 0;
    this.#check = 'none';
    this.#pairs = false;
    this.#rejected.clear();
    this.#lastSeq.clear();
  }

  read(raw: string, deviceId: string): ParsedLine {
    return this.#reader.read(raw, deviceId);
  }

  /** Why a line that is right by itself is not taken from this device; null where it is. */
  objection(line: SampleLine | HelloLine): RejectCause | null {
    if (checkKinds.indexOf(line.check) < checkKinds.indexOf(this.#check)) return 'checksum';
    return line.kind === 'sample' && line.form === 'bare' && this.#pairs ? 'malformed' : null;
  }

  accept(line: SampleLine | HelloLine): void {
    this.#accepted += 1;
    this.#check = line.check;
    if (line.kind === 'hello') {
      this.#hello = line.hello;
      this.#lastSeq.clear();
      return;
    }
    if (line.form === 'pairs') this.#pairs = true;
    for (const { name, seq } of [line, ...(line.others ?? [])]) if (seq !== null) this.#count(name, seq);
  }

  #count(name: string, seq: number): void {
    const last = this.#lastSeq.get(name);
    this.#lastSeq.set(name, seq);
    if (last === undefined) return;
    const missing = ((seq - last + 0x10000) & 0xffff) - 1;
    if (missing > 0 && missing <= LARGEST_GAP) this.#missed += missing;
  }

  reject(cause: RejectCause, raw: string): void {
    const count = (this.#rejected.get(cause)?.count ?? 0) + 1;
    this.#rejected.set(cause, { cause, count, lastRaw: printable(raw) });
  }

  counts(): LineCounts {
    return {
      hello: this.#hello,
      linesAccepted: this.#accepted,
      samplesMissed: this.#missed,
      checksummed: this.#check !== 'none',
      rejected: [...this.#rejected.values()],
      lastLine: this.#lastLine,
    };
  }
}
