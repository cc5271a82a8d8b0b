import type { AlarmKind } from '../../shared/alarm/record.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import type {
  Carried,
  StartReason,
  StopReason,
  WatchInput,
  WatchSettings,
} from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { FOLD_VERSION, resume } from '../../shared/watch/watch.ts';
import type { SessionHead } from '../book/book.ts';
import { newId } from '../ids.ts';
import { type Keep, Recorder } from './recorder.ts';
import { Watcher, type WatchStep } from './watcher.ts';

export interface IronWatchOptions {
  readonly keep: Keep;
  readonly originUtcMs: number;
  readonly utcOf: (tMs: number) => string;
  readonly programVersion: string;
  /** Hears every step, after it has been handed to the recorder. */
  readonly told: (step: WatchStep) => void;
}

/** What the inputs that force a commit have in common: once acknowledged they may not be lost. */
const forcing: ReadonlySet<WatchInput['kind']> = new Set([
  'mark',
  'settings',
  'acknowledge',
  'silence',
  'start',
  'stop',
]);

/** One iron: its watch, which always runs, and its session, while one is recorded. */
export class IronWatch {
  readonly #watcher: Watcher;
  readonly #options: IronWatchOptions;
  #recorder: Recorder | null = null;
  #due: { readonly start: StartReason } | { readonly stop: StopReason } | null = null;

  constructor(carried: Carried, tMs: number, options: IronWatchOptions) {
    this.#options = options;
    this.#watcher = new Watcher(resume(carried, 0, tMs), (step) => this.#onStep(step));
    if (carried.fromSession !== null) this.#record('resumed', carried, this.#watcher.state);
  }

  get state(): WatchState {
    return this.#watcher.state;
  }

  /** The session that is being recorded, or null. */
  get session(): string | null {
    return this.#recorder?.session ?? null;
  }

  /** Takes one input in, and starts or ends the session where what was found asks for it. */
  take(input: WatchInput, tMs: number): readonly FoundEntry[] {
    const { found } = this.#watcher.take(input, tMs);
    this.#followUp(tMs);
    return found;
  }

  advance(tMs: number): void {
    this.#watcher.advance(tMs);
    this.#followUp(tMs);
  }

  /** Resolves to whether all that was taken so far is kept; true where nothing is being recorded. */
  async kept(): Promise<boolean> {
    return this.#recorder === null || this.#recorder.flush();
  }

  /** Begins a session, with the two minutes before; there must be none. */
  start(why: StartReason, tMs: number, commandId: string | null): void {
    const [first] = this.#watcher.recent;
    const before = this.#watcher.recent;
    const from = first?.before ?? this.#watcher.state;
    this.#record(why, this.#carriedFrom(from, null), from);
    for (const step of before) this.#recorder?.add(step);
    this.#watcher.take({ kind: 'start', commandId, why }, tMs);
  }

  /** Ends the session; resolves to whether its end is kept. */
  async stop(why: StopReason, tMs: number, commandId: string | null): Promise<boolean> {
    this.#watcher.take({ kind: 'stop', commandId, why }, tMs);
    const recorder = this.#recorder;
    this.#recorder = null;
    return recorder === null || recorder.end(why);
  }

  #onStep(step: WatchStep): void {
    this.#recorder?.add(step);
    const alarm = step.found.some((f) => f.finding.kind === 'alarm');
    if (this.#recorder !== null && (alarm || (step.entry !== null && forcing.has(step.entry.input.kind)))) {
      void this.#recorder.flush();
    }
    for (const { finding } of step.found) {
      if (finding.kind === 'heat') this.#due = finding.change === 'hot' ? { start: 'hot' } : { stop: 'cold' };
      else if (finding.kind === 'alarm' && finding.change === 'raised') this.#alarmRaised(finding.alarm.kind);
    }
    this.#options.told(step);
  }

  /** An alarm is in the book whatever the user chose; that nothing can be kept can't be. */
  #alarmRaised(kind: AlarmKind): void {
    if (kind !== 'not-recording') this.#due ??= { start: 'alarm' };
  }

  #followUp(tMs: number): void {
    const due = this.#due;
    this.#due = null;
    if (due === null) return;
    if ('start' in due && this.#recorder === null) this.start(due.start, tMs, null);
    else if ('stop' in due && this.#recorder !== null) void this.stop(due.stop, tMs, null);
  }

  #record(why: StartReason, carried: Carried, from: WatchState): void {
    const { originUtcMs, programVersion, keep, utcOf } = this.#options;
    const { iron } = carried.settings;
    const head: SessionHead = {
      id: newId(),
      ironId: iron.id,
      ironName: iron.name,
      simulated: iron.simulated,
      foldVersion: FOLD_VERSION,
      programVersion,
      why,
      originUtcMs,
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      firstSeq: from.seq,
      firstMs: from.tMs,
      fromSession: carried.fromSession,
    };
    const goOn = (broken: string): void => {
      this.#record('resumed', this.#carriedFrom(this.state, broken), this.state);
    };
    this.#recorder = new Recorder(head, carried, from, { keep, utcOf, goOn });
  }

  #carriedFrom(state: WatchState, fromSession: string | null): Carried {
    return {
      settings: settingsOf(state),
      alarms: Object.values(state.alarms).filter((a) => a.state !== 'normal'),
      stageId: state.work.stageId,
      place: state.work.place,
      hot: Object.values(state.thermometers).some((t) => t.heat !== 'cold'),
      fromSession,
      state,
    };
  }
}

function settingsOf(state: WatchState): WatchSettings {
  if (state.settings === null) throw new Error('A watch without settings can not be recorded.');
  return state.settings;
}
