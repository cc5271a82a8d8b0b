import type { AlarmRecord } from '../../shared/alarm/record.ts';
import type { At } from '../../shared/heat/work/at.ts';
import type { KeptVisit } from '../../shared/heat/work/visit.ts';
import type { DialMark } from '../../shared/iron/dial/mark.ts';
import type { Trace } from '../../shared/messages/trace.ts';
import type { ShopEntry } from '../../shared/shop/entry.ts';
import type { PieceNote } from '../../shared/shop/note.ts';
import type { WatchedHow } from '../../shared/thermometer/place.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { Carried, Entry, StartReason, StopReason } from '../../shared/watch/input.ts';
import type { Crossing } from '../../shared/watch/suspect.ts';

/**
 * The book keeps what happened. For every session it holds a prefix of the inputs with exactly their findings:
 * one commit is one transaction, and its link in the session's SHA-256 chain covers all that it holds.
 */
export interface Book {
  /**
   * Opens or makes the book. A damaged one is set aside under another name, never deleted, and a new one begun.
   * Rejects with `BookFailure` where nothing can be kept, or with `newer-than-program`.
   */
  open(): Promise<OpenedBook>;
  /**
   * One transaction, durable when the promise settles; rejects with `BookFailure` and has then kept nothing of it.
   * What follows a rejected commit of a session must hold it too, so wait for each before making the next.
   */
  commit(commit: Commit): Promise<void>;
  /**
   * Keeps what a named person found of an open item. Gives the closing that stands: this one, or the one that was there
   * before it. Rejects with `BookFailure` where it can't be kept.
   */
  closeItem(closing: ItemClosing): Promise<ItemClosing>;
  /**
   * Keeps what a named person said of a piece. Gives the note that stands: this one, or the one of the same command.
   * Rejects with `BookFailure` where it can't be kept.
   */
  addNote(note: PieceNote): Promise<PieceNote>;
  /**
   * Keeps what happened in the shop. Gives the entry that stands: this one, or the one of the same command. Rejects with
   * `BookFailure` where it can't be kept.
   */
  addShopEntry(entry: ShopEntry): Promise<ShopEntry>;
  close(): Promise<void>;
}

export interface OpenedBook {
  /** Where a damaged book was set aside, else null. */
  readonly setAside: string | null;
  /** Sessions that were never closed, newest first: the program was killed, or nothing could be kept any more. */
  readonly interrupted: readonly InterruptedSession[];
  /** Why nothing can be kept though the book could be read (disk full, say), else null; commits try again. */
  readonly notKept: { readonly failure: BookFailureCause; readonly message: string } | null;
}

export interface InterruptedSession {
  readonly id: string;
  readonly ironId: string;
  /** UTC of time 0 of its watch's clock, ms since 1970: the times of the alarms count from there. */
  readonly originUtcMs: number;
  /** The client's ids of the commands that it holds, so that a retry after the restart doubles none. */
  readonly commandIds: readonly string[];
  /** Alarms that were not normal at its end, with what had been carried into it. */
  readonly alarms: readonly AlarmRecord[];
  /** The stage and place last marked, as `Carried` has them. */
  readonly stageId: Carried['stageId'];
  readonly place: Carried['place'];
  readonly dial: DialMark | null;
  /** Where on a piece it worked, as last marked. */
  readonly at: At | null;
  /** True where the plate was not measured cold at its end: it is to be treated as hot. */
  readonly hot: boolean;
}

export interface Commit {
  readonly session: string;
  /** On a session's first commit. */
  readonly begin: SessionHead | null;
  /** All inputs but ticks, in order. */
  readonly entries: readonly Entry[];
  readonly found: readonly FoundEntry[];
  /** How far the watch had come: replay regenerates the ticks up to here. */
  readonly untilSeq: number;
  readonly untilMs: number;
  /** The highest `ok` plate temperature of the session so far, degC; null where there was none. */
  readonly peakC: number | null;
  /** On a session's last commit. */
  readonly end: { readonly why: StopReason | 'interrupted'; readonly atUtc: string } | null;
}

export interface SessionHead {
  /** UUIDv7. */
  readonly id: string;
  readonly ironId: string;
  readonly ironName: string;
  readonly simulated: boolean;
  /** What stood behind its temperatures as it began; sessions from before that was kept had a probe on the plate. */
  readonly watched?: WatchedHow;
  readonly foldVersion: number;
  readonly programVersion: string;
  readonly why: StartReason;
  /** UTC of time 0 of the watch's clock, ms since 1970. */
  readonly originUtcMs: number;
  /** IANA name of the zone that the machine was set to. */
  readonly zone: string;
  readonly firstSeq: number;
  readonly firstMs: number;
  readonly fromSession: string | null;
}

export type BookFailureCause =
  | 'disk-full'
  | 'read-only'
  | 'damaged'
  | 'newer-than-program'
  /** A read of a session that isn't there. */
  | 'no-such-session'
  /** This session can't go on: it went aside with a damaged book, has ended, or its inputs don't follow on. */
  | 'session-broken'
  | 'locked'
  | 'other';

/** Why the book can't keep anything now; the message is a sentence for the user. */
export class BookFailure extends Error {
  readonly failure: BookFailureCause;

  constructor(failure: BookFailureCause, message: string) {
    super(message);
    this.name = 'BookFailure';
    this.failure = failure;
  }
}

/** Reading the book: never in the way of writing it (a thread and a connection of its own). */
export interface BookReader {
  sessions(): Promise<readonly SessionSummary[]>;
  session(id: string): Promise<SessionSummary | null>;
  findings(id: string): Promise<readonly FoundEntry[]>;
  /** The session's readings as CSV, in chunks; point as decimal mark, UTC with offset. */
  readingsCsv(id: string): AsyncIterable<string>;
  /** Checks the chain and replays the fold. */
  verify(id: string): Promise<Verification>;
  /** A session's readings thinned out, as far as they have been worked out: asking again goes on with it. */
  trace(id: string, asked: TraceAsked): Promise<TraceRead>;
  /** The crossings of the fabric limit that leave an area suspect, newest first. */
  items(): Promise<readonly SuspectItem[]>;
  /** What all sessions did to the pieces, what named persons said of them, and what else happened in the shop. */
  shop(): Promise<ShopRecord>;
  close(): Promise<void>;
}

export interface ShopRecord {
  readonly visits: readonly KeptVisit[];
  readonly notes: readonly PieceNote[];
  /** In the order in which it happened; of the air the latest only. */
  readonly entries: readonly ShopEntry[];
  /** How many rows of the journal are no entry, and left out. */
  readonly unreadable: number;
}

export interface SessionSummary extends SessionHead {
  readonly startedAtUtc: string;
  /** Null while it runs. */
  readonly endedAtUtc: string | null;
  readonly endWhy: StopReason | 'interrupted' | null;
  readonly untilMs: number;
  readonly samples: number;
  readonly findings: number;
  /** The highest `ok` plate temperature in it, degC; null where there was none. */
  readonly peakC: number | null;
  /** The chain's last link, hex. */
  readonly seal: string;
}

export interface Verification {
  readonly id: string;
  /** Null where the chain holds; else the first commit that doesn't, with its span of time. */
  readonly firstBadCommit: {
    readonly index: number;
    readonly fromMs: number;
    readonly toMs: number;
    readonly what: string;
  } | null;
  readonly foldVersion: number;
  readonly sameFoldVersion: boolean;
  /** Findings stored and not found again, or found and not stored, or of the same identity and another content. */
  readonly differences: readonly FindingDifference[];
  readonly findings: number;
  readonly samples: number;
}

export interface FindingDifference {
  readonly seq: number;
  readonly subject: string;
  readonly stored: FoundEntry | null;
  readonly replayed: FoundEntry | null;
}

/** Times in session ms; the session's own ends where left out. */
export interface TraceAsked {
  readonly fromMs: number | null;
  readonly toMs: number | null;
  readonly points: number;
}

export interface TraceRead extends Omit<Trace, 'session' | 'findings' | 'findingsLeftOut'> {
  readonly found: readonly FoundEntry[];
  readonly foundLeftOut: number;
}

/** One crossing of a limit; the session's id with the crossing's number names it. */
export interface SuspectItem {
  readonly id: string;
  readonly session: SessionSummary;
  readonly crossing: Crossing;
  /** What its peak may be off by, K either way; null where that is not known. */
  readonly guardBandK: number | null;
  /** The limit that was passed, as it was when it began, degC; null where the session does not say. */
  readonly limitC: number | null;
  /** Name of the stage being worked then, if one was chosen. */
  readonly stage: string | null;
  readonly closing: ItemClosing | null;
}

/** What a named person found of an item; kept beside the sessions, never changed. */
export interface ItemClosing {
  readonly item: string;
  readonly by: string;
  readonly found: string;
  readonly atUtc: string;
  /** The client's id of the command, so that a retry never doubles. */
  readonly commandId: string;
}
