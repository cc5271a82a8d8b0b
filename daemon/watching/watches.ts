import type { Iron } from '../../shared/iron/iron.ts';
import { deviceOf, type ProbeId } from '../../shared/thermometer/sample.ts';
import type { Carried, StopReason, WatchInput, WatchSettings } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { IronWatch, type IronWatchOptions } from './iron-watch.ts';
import type { Keeping } from './keeper.ts';
import type { WatchStep } from './watcher.ts';

export interface WatchesOptions extends Omit<IronWatchOptions, 'told'> {
  readonly told: (watch: IronWatch, step: WatchStep) => void;
}

/** The watches that run, one an iron, and which input goes to which of them. */
export class Watches {
  readonly #byIron = new Map<string, IronWatch>();
  readonly #byProbe = new Map<ProbeId, IronWatch>();
  readonly #options: WatchesOptions;
  #keeping: Keeping = { kept: true, detail: '' };

  constructor(options: WatchesOptions) {
    this.#options = options;
  }

  get all(): readonly IronWatch[] {
    return [...this.#byIron.values()];
  }

  get states(): readonly WatchState[] {
    return this.all.map((w) => w.state);
  }

  of(iron: string): IronWatch | undefined {
    return this.#byIron.get(iron);
  }

  ofSession(session: string): IronWatch | undefined {
    return this.all.find((w) => w.records(session));
  }

  withProbe(probe: ProbeId): IronWatch | undefined {
    return this.#byProbe.get(probe);
  }

  /** Watches an iron from now on, unless it is watched already; either way it goes on from the session that is carried. */
  begin(carried: Carried, tMs: number): IronWatch {
    const { iron } = carried.settings;
    const watched = this.#byIron.get(iron.id);
    if (watched !== undefined) {
      if (carried.fromSession !== null) watched.takeOver(carried);
      return watched;
    }
    const told = (step: WatchStep): void => {
      // The first session of a watch may begin in its constructor, before there is a watch to speak of.
      const watch = this.#byIron.get(iron.id);
      if (watch !== undefined) this.#options.told(watch, step);
    };
    const watch = new IronWatch(carried, tMs, { ...this.#options, told });
    this.#byIron.set(iron.id, watch);
    this.#indexProbes();
    if (!this.#keeping.kept) watch.take({ kind: 'keeping', ...this.#keeping }, tMs);
    return watch;
  }

  /** Hands an input about a device to every watch that has a probe of it. */
  aboutDevice(device: string, input: WatchInput, tMs: number): void {
    for (const watch of this.all) {
      const probes = watch.state.settings?.iron.probes ?? [];
      if (probes.some((p) => deviceOf(p) === device)) watch.take(input, tMs);
    }
  }

  advance(tMs: number): void {
    for (const watch of this.#byIron.values()) watch.advance(tMs);
  }

  /** An input for every watch. */
  takeAll(input: WatchInput, tMs: number): void {
    for (const watch of this.all) watch.take(input, tMs);
  }

  setKeeping(keeping: Keeping, tMs: number): void {
    this.#keeping = keeping;
    this.takeAll({ kind: 'keeping', ...keeping }, tMs);
  }

  /** Brings changed settings to the watches they concern; an iron that is gone is watched no longer. */
  async apply(irons: readonly Iron[], settingsOf: (iron: Iron) => WatchSettings, tMs: number): Promise<void> {
    const kept: Promise<boolean>[] = [];
    for (const [id, watch] of this.#byIron) {
      const iron = irons.find((i) => i.id === id);
      if (iron === undefined) {
        this.#byIron.delete(id);
        if (watch.session !== null) kept.push(watch.stop('by-hand', tMs, null));
        continue;
      }
      const next = settingsOf(iron);
      if (JSON.stringify(next) === JSON.stringify(watch.state.settings)) continue;
      watch.take({ kind: 'settings', settings: next }, tMs);
      kept.push(watch.kept());
    }
    this.#indexProbes();
    await Promise.all(kept);
  }

  /** Ends every session; resolves when their ends are kept, or can't be. */
  async stop(why: StopReason, tMs: number): Promise<void> {
    await Promise.all(this.all.filter((w) => w.session !== null).map((w) => w.stop(why, tMs, null)));
  }

  #indexProbes(): void {
    this.#byProbe.clear();
    for (const watch of this.#byIron.values()) {
      for (const probe of watch.state.settings?.iron.probes ?? []) this.#byProbe.set(probe, watch);
    }
  }
}
