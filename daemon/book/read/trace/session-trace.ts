import type { SettingsFrom, WorkFrom } from '../../../../shared/messages/trace.ts';
import { seatOf } from '../../../../shared/thermometer/place.ts';
import type { Reading } from '../../../../shared/thermometer/reading.ts';
import type { ProbeId } from '../../../../shared/thermometer/sample.ts';
import { restingGuardBandK } from '../../../../shared/thermometer/trust.ts';
import { countsAs, isCounted } from '../../../../shared/watch/counted.ts';
import type { FoundEntry } from '../../../../shared/watch/finding.ts';
import type { Entry, WatchInput, WatchSettings } from '../../../../shared/watch/input.ts';
import { completed } from '../../../../shared/watch/older.ts';
import { chainWords } from '../../../../shared/words/book.ts';
import type { SessionHead } from '../../book.ts';
import type { BookRows } from '../../store/rows.ts';
import { ChainBroken, type ChainPlace, chainStart, commitAt, type GoodCommit } from '../chain.ts';
import type { Fold, FoldStep } from '../fold.ts';
import { GrowingRows, isGap } from './rows.ts';
import { thin } from './thin.ts';

/** Readings of a session kept in memory, all probes together; beyond that they are thinned out, peaks and gaps kept. */
const ROWS_AT_MOST = 2_000_000;

/**
 * One session's readings, worked out once by folding it again, commit by commit, and kept. A session that runs is read
 * on as it grows. Times are session ms.
 */
export class SessionTrace {
  readonly probes = new Map<ProbeId, GrowingRows>();
  readonly settings: SettingsFrom[] = [];
  readonly work: WorkFrom[] = [];
  readonly notes: { readonly atMs: number; readonly text: string }[] = [];
  /** All but thermostat cycles. */
  readonly found: FoundEntry[] = [];
  readonly cyclesMs: number[] = [];
  broken: { readonly atMs: number; readonly what: string } | null = null;
  coarse = false;
  readonly #firstMs: number;
  readonly #rowsAtMost: number;
  readonly #steps: Iterator<FoldStep>;
  #place: ChainPlace;
  #entry: Entry | null = null;
  readonly #read = new Map<ProbeId, Reading>();

  constructor(head: SessionHead, fold: Fold, rowsAtMost = ROWS_AT_MOST) {
    this.#firstMs = head.firstMs;
    this.#rowsAtMost = rowsAtMost;
    this.#place = chainStart(head.firstMs);
    const steps = fold.replay(this.#entries(), head.firstMs, head.foldVersion === fold.version);
    this.#steps = steps[Symbol.iterator]();
  }

  /** How far it has been read, session ms. */
  get readUntilMs(): number {
    return this.#place.untilMs - this.#firstMs;
  }

  get rowCount(): number {
    return [...this.probes.values()].reduce((sum, rows) => sum + rows.length, 0);
  }

  /** Reads the next commit; false where there is none, or the chain is broken. */
  readNext(rows: BookRows, session: number): boolean {
    if (this.broken !== null || this.#place.index > (rows.lastIndex(session) ?? -1)) return false;
    try {
      const commit = commitAt(rows, session, this.#place);
      this.#take(commit);
      this.#place = commit.next;
    } catch (error) {
      this.#breakOff(error);
      return false;
    }
    return true;
  }

  #breakOff(error: unknown): void {
    const known = error instanceof ChainBroken || error instanceof RangeError;
    if (!known) throw error;
    const what = error instanceof ChainBroken ? error.message : chainWords.notReplayed(error.message);
    this.broken = { atMs: this.readUntilMs, what };
  }

  #take(commit: GoodCommit): void {
    let next = 0;
    for (const entry of commit.entries) {
      next = this.#hear(commit.found, next, entry.seq);
      this.#entry = entry;
      const step = this.#steps.next();
      if (step.done !== true) this.#fold(entry, step.value);
    }
    this.#hear(commit.found, next, Number.POSITIVE_INFINITY);
    if (this.rowCount > this.#rowsAtMost) this.#coarsen();
  }

  /** The entry that the replay asks for: it takes one for each step. */
  *#entries(): Generator<Entry> {
    for (;;) {
      const entry = this.#entry;
      if (entry === null) return;
      this.#entry = null;
      yield entry;
    }
  }

  /** Takes in what was found up to an input. */
  #hear(found: readonly FoundEntry[], from: number, seq: number): number {
    let next = from;
    for (let one = found[next]; one !== undefined && one.seq <= seq; one = found[++next]) {
      const { tMs, finding } = one;
      if (finding.kind === 'cycle') {
        this.cyclesMs.push(tMs - this.#firstMs);
        continue;
      }
      this.found.push(one);
      if (finding.kind === 'quality' && finding.quality !== 'ok')
        this.#rowsOf(finding.probe).pushFault(tMs - this.#firstMs, finding.quality);
    }
    return next;
  }

  #fold(entry: Entry, { found, state }: FoldStep): void {
    const { input } = entry;
    const atMs = entry.tMs - this.#firstMs;
    if (input.kind === 'carried')
      for (const one of Object.values(state.readings)) this.#putReading(one, state);
    else if (input.kind === 'sample') {
      const reading = state.readings[input.sample.probe];
      if (reading !== undefined) this.#putReading(reading, state);
    }
    const refused = found.some(({ finding: f }) => f.kind === 'refused' && f.commandId === commandOf(input));
    if (!refused) this.#hearUser(input, atMs);
  }

  /** A gap that stands already is not said again. */
  #putReading(reading: Reading, state: FoldStep['state']): void {
    if (this.#read.get(reading.probe) === reading) return;
    this.#read.set(reading.probe, reading);
    const rows = this.#rowsOf(reading.probe);
    const tMs = reading.atMs - this.#firstMs;
    const as = countsAs(state, reading.probe);
    const gap = reading.quality !== 'ok' ? reading.quality : isCounted(as) ? null : as;
    if (gap === null && reading.quality === 'ok') rows.push(tMs, reading.plateC, reading.plateC);
    else if (gap !== null && (rows.length === 0 || !isGap(rows, rows.length - 1))) rows.pushFault(tMs, gap);
  }

  #hearUser(input: WatchInput, atMs: number): void {
    if (input.kind === 'carried') {
      const { settings, stageId, place } = input.carried;
      this.settings.push(settingsFrom(settings, atMs));
      this.work.push({ fromMs: atMs, stageId, place });
    } else if (input.kind === 'settings') this.settings.push(settingsFrom(input.settings, atMs));
    else if (input.kind === 'mark') {
      const { mark } = input;
      const before = this.work.at(-1) ?? { stageId: null, place: 'unknown' };
      if (mark.kind === 'note') this.notes.push({ atMs, text: mark.text });
      else if (mark.kind === 'stage') this.work.push({ ...before, fromMs: atMs, stageId: mark.stageId });
      else if (mark.kind === 'place') this.work.push({ ...before, fromMs: atMs, place: mark.place });
    }
  }

  #rowsOf(probe: ProbeId): GrowingRows {
    const rows = this.probes.get(probe) ?? new GrowingRows(1024);
    this.probes.set(probe, rows);
    return rows;
  }

  #coarsen(): void {
    const points = Math.max(2, Math.floor(this.#rowsAtMost / 2 / this.probes.size));
    for (const [probe, rows] of this.probes) {
      const fromMs = rows.tMs[0] ?? 0;
      const toMs = rows.tMs[rows.length - 1] ?? 0;
      this.probes.set(probe, thin(rows, { fromMs, toMs, points }));
    }
    this.coarse = true;
  }
}

function settingsFrom(settings: WatchSettings, fromMs: number): SettingsFrom {
  const { schedule, iron, probes } = completed(settings);
  return {
    fromMs,
    schedule,
    probes: probes
      .filter((probe) => iron.probes.includes(probe.id))
      .map((probe) => ({
        id: probe.id,
        label: probe.label,
        seat: seatOf(probe, iron.id),
        guardBandK: restingGuardBandK({ probe, iron }, schedule.fabricLimitC),
        calibration:
          probe.calibration === null
            ? null
            : { version: probe.calibration.version, madeAt: probe.calibration.madeAt },
      })),
  };
}

const commandOf = (input: WatchInput): string | null => ('commandId' in input ? input.commandId : null);

/** From a list in order of `fromMs`: those that hold in a span, the first of them having begun before it perhaps. */
export function inForce<T extends { readonly fromMs: number }>(
  all: readonly T[],
  fromMs: number,
  toMs: number,
): readonly T[] {
  return all.filter((one, i) => {
    const untilMs = all[i + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
    return one.fromMs <= toMs && (untilMs > fromMs || i === all.length - 1);
  });
}
