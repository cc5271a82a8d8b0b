import type { AlarmKind } from '../../shared/alarm/record.ts';
import type { Iron } from '../../shared/iron/iron.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { Carried, StartReason, StopReason, WatchInput } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { resume } from '../../shared/watch/watch.ts';
import { beginning, carriedFrom, type Run, settingsOf } from './beginning.ts';
import type { KeptStep } from './kept-step.ts';
import { takenOver } from './left.ts';
import { Lookback } from './lookback.ts';
import { type Beginning, type Keep, Recorder } from './recorder.ts';
import { Watcher, type WatchStep } from './watcher.ts';

export interface IronWatchOptions extends Run {
  readonly keep: Keep;
  readonly utcOf: (tMs: number) => string;
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
  /** What came before the next session. */
  readonly #lookback = new Lookback();
  #recorder: Recorder | null = null;
  /** Sessions that broke off and are gone on with in the one that is being recorded. */
  #goneOn = new Set<string>();
  #due: { readonly start: StartReason } | { readonly stop: StopReason } | null = null;

  constructor(carried: Carried, tMs: number, options: IronWatchOptions) {
    this.#options = options;
    this.#watcher = new Watcher(resume(carried, 0, tMs), (step) => this.#onStep(step));
    if (carried.fromSession !== null) this.#goOn(carried, this.#watcher.state);
  }

  get state(): WatchState {
    return this.#watcher.state;
  }

  get iron(): Iron {
    return settingsOf(this.state).iron;
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

  /** Whether this is the session that is being recorded, or one that broke off and is gone on with in it. */
  records(session: string): boolean {
    return this.#recorder !== null && (this.#recorder.session === session || this.#goneOn.has(session));
  }

  /** Begins a session, with the two minutes before; there must be none. */
  start(why: StartReason, tMs: number, commandId: string | null): void {
    const { from, steps } = this.#lookback.take(this.state);
    this.#record(beginning(why, carriedFrom(from, null), from, this.#options, this.state), steps);
    this.#watcher.take({ kind: 'start', commandId, why }, tMs);
  }

  /** Ends the session; resolves to whether its end is kept. */
  async stop(why: StopReason, tMs: number, commandId: string | null): Promise<boolean> {
    this.#watcher.take({ kind: 'stop', commandId, why }, tMs);
    // What was found along with the stop is in this session: it asks for no other.
    this.#due = null;
    return this.#end(why);
  }

  /** Goes on with what an earlier run left, though this watch runs already: in a session of its own. */
  takeOver(left: Carried): void {
    const state = takenOver(this.state, left);
    if (this.#recorder !== null) void this.#end('interrupted');
    this.#watcher.goOnFrom(state);
    this.#goOn(carriedFrom(state, left.fromSession), state);
  }

  /** In the book at once: the session before has its end there, and what stands now stands nowhere else. */
  #goOn(carried: Carried, from: WatchState): void {
    this.#lookback.take(from);
    this.#record(beginning('resumed', carried, from, this.#options), []);
    void this.#recorder?.flush();
  }

  #end(why: StopReason | 'interrupted'): Promise<boolean> | boolean {
    const recorder = this.#recorder;
    this.#recorder = null;
    return recorder === null || recorder.end(why);
  }

  #onStep(step: WatchStep): void {
    if (this.#recorder === null) this.#lookback.add(step);
    else this.#recorder.add(step);
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

  #record(begin: Beginning, before: readonly KeptStep[]): void {
    const { keep, utcOf } = this.#options;
    const goOn = (at: WatchState, broken: string | null): Beginning => {
      if (broken !== null) this.#goneOn.add(broken);
      return beginning('resumed', carriedFrom(at, broken), at, this.#options);
    };
    const { fromSession } = begin.head;
    this.#goneOn = new Set(fromSession === null ? [] : [fromSession]);
    this.#recorder = new Recorder(begin, { steps: before, until: this.state }, { keep, utcOf, goOn });
  }
}
