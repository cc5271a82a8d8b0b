import type { Iron } from '../../shared/iron/iron.ts';
import type { FoundPort, Live, Situation } from '../../shared/messages/live.ts';
import { deviceOf, type Sample } from '../../shared/thermometer/sample.ts';
import { isHot } from '../../shared/watch/hot.ts';
import type { WatchSettings } from '../../shared/watch/input.ts';
import { TICK_MS } from '../../shared/watch/replay.ts';
import type { InterruptedSession } from '../book/book.ts';
import { monotonicClock } from '../clock.ts';
import type { ProbeSource } from '../probe/source.ts';
import { withNewProbe } from '../settings/change.ts';
import { sitsOn } from '../settings/moved.ts';
import { type Settings, watchSettings } from '../settings/settings.ts';
import type { LiveChange } from '../web/desk.ts';
import { Procedures } from './calibrating/procedures.ts';
import { type ClockChange, ClockWatch } from './clock-watch.ts';
import { Devices } from './devices.ts';
import { type DryingShop, dryingShop } from './drying/drying-shop.ts';
import { hearingAfter, nobodyYet } from './hearing.ts';
import type { IronWatch } from './iron-watch.ts';
import type { Keeping } from './keeper.ts';
import { Leftovers } from './left.ts';
import { Presence } from './presence.ts';
import type { ProgramOptions } from './program-options.ts';
import { Bench } from './shop/bench.ts';
import { Hands } from './shop/hands.ts';
import { WorkActs } from './shop/work-acts.ts';
import { Steps } from './steps.ts';
import { Telling } from './telling.ts';
import { alarmsLive, deviceLive, hotProbes, ironLive, probesLive } from './view.ts';
import { Watches } from './watches.ts';

/** The situation is told at least this often where only counters have changed, ms. */
const COUNTERS_MS = 2000;
/** The clocks of coats are brought up to date so often, ms. */
const CLOCKS_MS = 1000;

/**
 * The running program: devices feed watches, watches tell what they found, and whoever listens hears of it. Data flows
 * one way; commands come in at the desk beside this file.
 */
export class Program {
  readonly watches: Watches;
  readonly devices: Devices;
  readonly bench: Bench;
  readonly acts = new WorkActs(this);
  readonly presence: Presence;
  readonly drying: DryingShop;
  readonly #hands = new Hands(this);
  readonly options: ProgramOptions;
  readonly procedures = new Procedures();
  /** What the watch of an iron needs, as it is settled now. */
  readonly settingsOf = (iron: Iron): WatchSettings =>
    watchSettings(this.options.settings.current, iron, this.procedures.offPlateOf);
  /** Ports to choose from while nothing is watched yet. */
  #choice: readonly FoundPort[] | null = null;
  readonly #left: Leftovers;
  #keeping: Keeping = { kept: true, detail: '' };
  #hearing = nobodyYet;
  /** The machine's clock, also where the watches' runs faster: it is people who have to be reached. */
  readonly #pagesClock = monotonicClock();
  #timers: NodeJS.Timeout[] = [];
  readonly #clocks = new ClockWatch((change) => this.#onClock(change));
  readonly #telling = new Telling(() => this.#situation());
  readonly #steps = new Steps(this, this.#telling);

  constructor(options: ProgramOptions) {
    this.options = options;
    const { keep, originUtcMs, version } = options;
    this.#left = new Leftovers(originUtcMs);
    this.watches = new Watches({
      keep,
      originUtcMs,
      utcOf: (tMs) => this.utcOf(tMs),
      programVersion: version,
      told: (watch, step) => this.#steps.take(watch, step),
    });
    this.presence = new Presence(this.watches, options.clock);
    this.bench = new Bench({
      watches: () => this.watches.all,
      settings: () => options.settings.current,
      simulated: options.simulated,
      originUtcMs,
      nowMs: () => options.clock.nowMs(),
      coatRevision: () => this.drying.revision,
      changed: () => this.#telling.situationSoon(),
    });
    this.drying = dryingShop({
      options,
      watches: () => this.watches.all,
      inHand: () => this.bench.inHand(),
      changed: () => this.#telling.situationSoon(),
    });
    this.devices = new Devices({
      sample: (sample, source, tMs) => this.#onSample(sample, source, tMs),
      aboutDevice: (device, input, tMs) => this.watches.aboutDevice(device, input, tMs),
      changed: () => this.#telling.situationSoon(),
    });
  }

  /** Begins to let time go on. */
  run(): void {
    const { clock, settings } = this.options;
    for (const iron of settings.current.irons) if (iron.probes.length === 0) this.#begin(iron, clock.nowMs());
    const tick = (): void => {
      this.watches.advance(clock.nowMs());
      this.setArmedPages(this.#hearing.armedPages);
      this.#hands.follow();
    };
    this.#timers.push(setInterval(tick, TICK_MS));
    this.#timers.push(setInterval(() => this.#telling.situationNow(), COUNTERS_MS));
    this.#timers.push(
      setInterval(() => {
        this.lookAtClocks();
        this.drying.refresh();
      }, CLOCKS_MS),
    );
  }

  /** A clock that was set has to be seen before anything is held against it. */
  lookAtClocks(): void {
    this.#clocks.look();
  }

  #onClock(clockChange: ClockChange): void {
    const { simulated, clock, byWallClock } = this.options;
    const { change, byMs } = clockChange;
    if (!simulated()) this.watches.takeAll({ kind: 'clock', change, byMs }, clock.nowMs());
    if (change === 'step' && byWallClock) this.drying.clockSet(clockChange);
  }

  /** UTC of a time of the watches' clock. */
  utcOf(tMs: number): string {
    return new Date(this.options.originUtcMs + tMs).toISOString();
  }

  listen(listener: (change: LiveChange) => void): () => void {
    return this.#telling.listen(listener);
  }

  /** Takes a source into use, with the irons that its probes sit on. */
  addSource(source: ProbeSource): void {
    const { settings, clock } = this.options;
    for (const iron of settings.current.irons) {
      if (!iron.probes.some((p) => deviceOf(p) === source.device.id)) continue;
      this.#begin(iron, clock.nowMs());
    }
    this.devices.add(source);
    this.setChoice(null);
  }

  get choice(): readonly FoundPort[] | null {
    return this.#choice;
  }

  setChoice(choice: readonly FoundPort[] | null): void {
    this.#choice = choice;
    this.#telling.situationSoon();
  }

  setKeeping(keeping: Keeping): void {
    this.#keeping = keeping;
    this.watches.setKeeping(keeping, this.options.clock.nowMs());
    this.#telling.situationSoon();
  }

  /** How many pages have their sound armed and running; looked at again at every tick, since plates grow hot meanwhile. */
  setArmedPages(armedPages: number): void {
    const before = this.#hearing;
    const hot = this.watches.all.some((watch) => isHot(watch.state) && watch.iron.probes.length > 0);
    this.#hearing = hearingAfter(before, { armedPages, hot }, this.#pagesClock.nowMs());
    const { unheard } = this.#hearing;
    if (unheard !== before.unheard) this.devices.heard(!unheard);
    if (unheard !== before.unheard || armedPages !== before.armedPages) this.#telling.situationSoon();
  }

  /**
   * Goes on with what sessions that broke off left (newest first): standing alarms and the work in hand. An iron that
   * may be hot is watched at once, whether its device is there or not; a simulated one is as cold as any new one until
   * it runs again.
   */
  goOnFrom(interrupted: readonly InterruptedSession[]): void {
    const { settings, clock } = this.options;
    for (const iron of this.#left.note(interrupted, settings.current.irons)) {
      const atOnce = !iron.simulated && this.#left.mayBeHot(iron.id);
      if (atOnce || this.watches.of(iron.id) !== undefined) this.#begin(iron, clock.nowMs());
    }
  }

  /** Brings changed settings to the watches; an iron that is new is watched at once, whether its device is there or not. */
  async applySettings(): Promise<void> {
    const { settings, clock } = this.options;
    const tMs = clock.nowMs();
    const gone = this.watches.all.filter((w) => !settings.current.irons.some((i) => i.id === w.iron.id));
    const hot = hotProbes(this.watches.states);
    const applied = this.watches.apply(settings.current.irons, this.settingsOf, tMs);
    for (const watch of gone) this.#steps.gone(watch);
    for (const iron of settings.current.irons) {
      if (this.watches.of(iron.id) !== undefined) continue;
      // Nothing will ever be heard of it but what is typed.
      if (iron.probes.length === 0) this.#begin(iron, tMs);
      const source = this.devices.sources.find((s) => iron.probes.some((p) => deviceOf(p) === s.device.id));
      if (source === undefined) continue;
      const watch = this.#join(iron, source, tMs);
      // Its probes were hot in another session, which may have ended with this.
      if (watch.session === null && iron.probes.some((p) => hot.has(p))) watch.start('hot', tMs, null);
    }
    await applied;
  }

  #begin(iron: Iron, tMs: number): IronWatch {
    const carried = this.#left.carriedInto(this.settingsOf(iron));
    const watch = this.watches.begin(carried, tMs);
    if (carried.fromSession !== null) this.#steps.carried(watch);
    return watch;
  }

  live(): Live {
    const { clock, version, epoch } = this.options;
    const nowMs = clock.nowMs();
    return {
      program: { name: 'soleplate', version, epoch },
      at: this.utcOf(nowMs),
      probes: this.watches.states.flatMap((s) => probesLive(s, nowMs)),
      alarms: [...alarmsLive(this.watches.states, (tMs) => this.utcOf(tMs))],
      situation: this.#situation(),
    };
  }

  /** Ends every session and lets every device go. */
  async stop(): Promise<void> {
    for (const timer of this.#timers) clearInterval(timer);
    await this.devices.stop();
    await this.watches.stop('shutdown', this.options.clock.nowMs());
  }

  #onSample(sample: Sample, source: ProbeSource, tMs: number): void {
    // Once its step is over a probe is judged as ever, after this reading.
    if (this.procedures.heard(sample, this.options.settings.current.probes, tMs))
      queueMicrotask(() => void this.applySettings());
    if (sample.airC !== null || sample.rhPct !== null) this.drying.hear(sample, tMs);
    const watch = this.watches.withProbe(sample.probe);
    if (watch !== undefined) {
      this.#hands.pressed(watch, sample, watch.take({ kind: 'sample', sample }, tMs));
      return;
    }
    if (sample.tC === null && sample.emfUv === null && sample.faults.length === 0) return;
    this.#meet(sample, source, tMs);
  }

  /** A probe that no watched iron has: it is taken in, watched, and then heard. */
  #meet(sample: Sample, source: ProbeSource, tMs: number): void {
    const { settings } = this.options;
    const known = sitsOn(settings.current.irons, sample.probe) !== undefined;
    if (!known) {
      const next = withNewProbe(settings.current, sample.probe, source.device.simulated);
      this.notice(next, 'The new probe could not be written.');
    }
    const iron = sitsOn(settings.current.irons, sample.probe);
    if (iron === undefined) return;
    this.#join(iron, source, tMs);
    this.watches.withProbe(sample.probe)?.take({ kind: 'sample', sample }, tMs);
  }

  /** Takes in what the program itself has seen; that it could not be written is said, and tried again. */
  notice(next: Settings, complaint: string): void {
    const { settings, complain } = this.options;
    settings.notice(next).catch((error: unknown) => complain(complaint, error));
  }

  /** Watches an iron whose device is in use already. */
  #join(iron: Iron, source: ProbeSource, tMs: number): IronWatch {
    const watch = this.#begin(iron, tMs);
    const { link, detail } = source.status();
    const device = source.device.id;
    this.watches.aboutDevice(device, { kind: 'device', device, link, detail }, tMs);
    // Whoever listens hears of the iron before the first reading of its probe.
    this.#telling.situationNow();
    return watch;
  }

  #situation(): Situation {
    const { settings, clock } = this.options;
    const utcOf = (tMs: number): string => this.utcOf(tMs);
    const told = { settings: settings.current, nowMs: clock.nowMs(), utcOf };
    return {
      irons: this.watches.all.flatMap((w) => ironLive(w, told) ?? []),
      devices: this.devices.sources.map((s) => deviceLive(s.status())),
      keeping: this.#keeping,
      hearing: { armedPages: this.#hearing.armedPages, unheard: this.#hearing.unheard },
      work: this.bench.live(),
      choice: this.#choice,
      viewOnly: this.options.viewOnly,
      settingsRevision: settings.revision,
      simulated: this.options.simulated(),
    };
  }
}
