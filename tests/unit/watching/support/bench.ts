import type { BookReader } from '../../../../daemon/book/book.ts';
import { SteppedClock } from '../../../../daemon/clock.ts';
import type { Device, ProbeSource, SourceEvent, SourceStatus } from '../../../../daemon/probe/source.ts';
import { SettingsKeeper } from '../../../../daemon/settings/keeper.ts';
import { firstSettings, type Settings } from '../../../../daemon/settings/settings.ts';
import { Program } from '../../../../daemon/watching/program.ts';
import { ProgramDesk } from '../../../../daemon/watching/program-desk.ts';
import type { Keep } from '../../../../daemon/watching/recorder.ts';
import type { LiveChange } from '../../../../daemon/web/desk.ts';
import type { ShopEntry } from '../../../../shared/shop/entry.ts';
import { emptySample, type Sample } from '../../../../shared/thermometer/sample.ts';
import type { DeviceLink } from '../../../../shared/watch/input.ts';
import { replay } from '../../../../shared/watch/replay.ts';
import type { Store } from '../../../store-contract.ts';
import { Shelf } from './shelf.ts';

/** UTC at the clock's zero. */
export const ORIGIN_UTC_MS = Date.parse('2026-03-01T10:00:00Z');

/** A board that says what the test says, at the time of the test's clock. */
export class FakeSource implements ProbeSource {
  readonly device: Device;
  readonly sent: string[] = [];
  #listen: ((event: SourceEvent) => void) | null = null;
  #link: DeviceLink = 'starting';
  readonly #clock: SteppedClock;

  constructor(id: string, clock: SteppedClock, simulated = false) {
    this.device = { id, path: `/dev/${id}`, simulated };
    this.#clock = clock;
  }

  start(listen: (event: SourceEvent) => void): void {
    this.#listen = listen;
  }

  send(line: string): void {
    this.sent.push(line);
  }

  async stop(): Promise<void> {
    this.#listen = null;
  }

  status(): SourceStatus {
    return {
      device: this.device,
      link: this.#link,
      detail: '',
      hello: null,
      linesAccepted: 0,
      samplesMissed: 0,
      checksummed: true,
      rejected: [],
      lastLine: '',
    };
  }

  link(link: DeviceLink): void {
    this.#link = link;
    this.#listen?.({ kind: 'link', link, detail: '', tMs: this.#clock.nowMs() });
  }

  say(tC: number, more: Partial<Sample> = {}): void {
    const sample = { ...emptySample(`${this.device.id}/1`), tC, ...more };
    this.#listen?.({ kind: 'sample', sample, tMs: this.#clock.nowMs() });
  }
}

export interface Bench {
  readonly clock: SteppedClock;
  readonly shelf: Shelf;
  readonly program: Program;
  readonly desk: ProgramDesk;
  readonly settings: SettingsKeeper;
  /** How far the wall clock has gone beside the watches' own: the machine slept, or it was set. */
  readonly wall: { aheadMs: number };
  /** What happened in the shop. */
  readonly journal: ShopEntry[];
  /** Whether what is put in the journal comes into the book. */
  readonly shopBook: { takes: boolean };
  /** All that was told to whoever listens. */
  readonly told: LiveChange[];
  /** Lets time go on by `s` seconds: ten samples a second of a plate that goes evenly to `toC`. */
  heat(source: FakeSource, toC: number, s: number): void;
  /** Lets time go on with nothing coming in. */
  wait(s: number): void;
}

export interface BenchOptions {
  readonly settings?: Settings;
  /** How far the wall clock is ahead from the start. */
  readonly aheadMs?: number;
  readonly byWallClock?: boolean;
  readonly ready?: () => Promise<void>;
  readonly sourceFor?: () => Promise<ProbeSource>;
  /** A real book, opened; by default a shelf in memory that nothing is read from. */
  readonly store?: Store;
}

/** A program without network or devices, and without a disk unless it is given a book. */
export function bench(options: BenchOptions = {}): Bench {
  const clock = new SteppedClock();
  const shelf = new Shelf();
  const journal: ShopEntry[] = [];
  const shopBook = { takes: true };
  const { store, aheadMs = 0, byWallClock = false } = options;
  const wall = { aheadMs };
  const settings = new SettingsKeeper(options.settings ?? firstSettings, () => Promise.resolve());
  const program: Program = new Program({
    clock,
    originUtcMs: ORIGIN_UTC_MS,
    version: '0.0.0',
    epoch: 'epoch',
    viewOnly: false,
    simulated: () => program.devices.sources.some((s) => s.device.simulated),
    settings,
    keep: keepIn(store) ?? shelf.keep,
    byWallClock,
    utcNowMs: () => ORIGIN_UTC_MS + clock.nowMs() + wall.aheadMs,
    keepInShop: async (entry) => {
      journal.push(entry);
      return shopBook.takes;
    },
    complain: (message, error) => {
      throw new Error(message, { cause: error });
    },
  });
  const desk = new ProgramDesk({
    program,
    // Without a book nothing is read here.
    reader: store?.reader ?? ({} as BookReader),
    book: store?.book ?? {
      closeItem: () => Promise.reject(new Error('no item is closed here')),
      addNote: async (note) => note,
    },
    sourceFor: options.sourceFor ?? (() => Promise.reject(new Error('no source'))),
    ready: options.ready ?? (() => Promise.resolve()),
  });
  const told: LiveChange[] = [];
  program.listen((change) => told.push(change));
  const plates = new Map<FakeSource, number>();
  const heat = (source: FakeSource, toC: number, s: number): void => {
    const fromC = plates.get(source) ?? toC;
    const lines = Math.round(s * 10);
    for (let i = 1; i <= lines; i += 1) {
      clock.advanceTo(clock.nowMs() + 100);
      // Never still, or the probe would count as frozen.
      source.say(fromC + ((toC - fromC) * i) / lines - (i % 3) * 0.1);
    }
    plates.set(source, toC);
  };
  const wait = (s: number): void => {
    clock.advanceTo(clock.nowMs() + s * 1000);
    program.watches.advance(clock.nowMs());
    program.drying.refresh();
  };
  return { clock, shelf, wall, journal, shopBook, program, desk, settings, told, heat, wait };
}

const keepIn = (store: Store | undefined): Keep | null =>
  store === undefined
    ? null
    : async (commit) => {
        await store.book.commit(commit);
        return 'kept';
      };

/** What a stored session holds, and what comes of folding it again: the same, where all is well. */
export function foldedAgain(shelf: Shelf, place: number) {
  const commits = shelf.at(place);
  const stored = commits.flatMap(({ found }) => found);
  const entries = commits.flatMap((commit) => commit.entries);
  const steps = [...replay(entries, commits.at(-1)?.untilMs ?? 0)];
  return { stored, replayed: steps.flatMap(({ found }) => found) };
}
