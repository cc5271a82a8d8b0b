import type { AlarmRecord } from '../../shared/alarm/record.ts';
import type { AlarmLive } from '../../shared/messages/live.ts';
import type { ToldChange } from '../../shared/messages/stream.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import { isIronMark } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { AlarmsTold } from './alarms-told.ts';
import { learned } from './dials.ts';
import type { IronWatch } from './iron-watch.ts';
import type { Program } from './program.ts';
import type { Telling } from './telling.ts';
import { alarmLive, changeInto, loudest, probeLive } from './view.ts';
import type { WatchStep } from './watcher.ts';

/** What follows from the steps of the watches: whoever listens hears of them, and so do the handles, the bench and the shop. */
export class Steps {
  readonly #program: Program;
  readonly #telling: Telling;
  readonly #told = new AlarmsTold();

  constructor(program: Program, telling: Telling) {
    this.#program = program;
    this.#telling = telling;
  }

  take(watch: IronWatch, { entry, found, after }: WatchStep): void {
    const probes = new Set<string>();
    if (entry?.input.kind === 'sample') probes.add(entry.input.sample.probe);
    if (entry?.input.kind === 'settings') {
      for (const probe of Object.keys(after.thermometers)) probes.add(probe);
      this.#telling.situationNow();
    }
    if (found.length > 0) this.#learn(found, after);
    for (const { finding } of found) {
      this.#pass(watch, finding);
      if (finding.kind === 'quality') probes.add(finding.probe);
      else if (finding.kind !== 'alarm') this.#telling.situationSoon();
    }
    const live = [...probes].flatMap((p) => probeLive(after, p, after.tMs) ?? []);
    if (live.length > 0) this.#telling.tell({ kind: 'readings', probes: live });
    // What sounds follows the alarms, and how loud it is also where the iron is.
    if (found.length > 0 || entry?.input.kind === 'mark') this.#lamp();
    if (entry !== null && entry.input.kind !== 'sample') this.#tellInput(entry.input, after);
    this.#tellUpdates(watch);
  }

  /** Its iron is gone, and its alarms with it. */
  gone(watch: IronWatch): void {
    for (const alarm of Object.values(watch.state.alarms))
      if (alarm.state !== 'normal') this.#tellAlarm(watch, 'cleared', { ...alarm, state: 'normal' });
    this.#lamp();
  }

  /** Alarms that stand from before come with no change of their own: whoever listens, and the handle, hear of them too. */
  carried(watch: IronWatch): void {
    this.#telling.situationNow();
    for (const alarm of Object.values(watch.state.alarms)) {
      const change = changeInto[alarm.state];
      if (change !== null) this.#tellAlarm(watch, change, alarm);
    }
    this.#lamp();
  }

  #pass(watch: IronWatch, finding: FoundEntry['finding']): void {
    const { bench, drying } = this.#program;
    if (finding.kind === 'visit') bench.hear(watch, finding.visit);
    else if (takesHeat(finding)) drying.heated();
    else if (finding.kind === 'alarm') this.#tellAlarm(watch, finding.change, finding.alarm);
  }

  #tellInput(input: NonNullable<WatchStep['entry']>['input'], after: WatchState): void {
    const { bench, drying } = this.#program;
    // Where the heat goes is told with the situation: where the iron is then depends on more than the mark.
    if (input.kind === 'mark' && isIronMark(input.mark))
      this.#telling.tell({ kind: 'mark', iron: after.settings?.iron.id ?? '', mark: input.mark });
    if (input.kind === 'mark' || input.kind === 'settings') {
      bench.shop.touch();
      queueMicrotask(() => drying.tellFacts());
    }
    this.#telling.situationSoon();
  }

  /** What was found of an iron's dial goes into its chart; a drift comes back to the watch, after this step. */
  #learn(found: readonly FoundEntry[], state: WatchState): void {
    const { settings } = this.#program.options;
    const next = learned(settings.current, found, state, (tMs) => this.#program.utcOf(tMs));
    if (next === settings.current) return;
    this.#program.notice(next, 'What was measured of the dial could not be written.');
    queueMicrotask(() => void this.#program.applySettings());
  }

  /** How hot it has become, why, and how much it matters where the iron is now. */
  #tellUpdates(watch: IronWatch): void {
    for (const record of Object.values(watch.state.alarms)) {
      if (record.state === 'normal') continue;
      const alarm = this.#liveOf(watch, record);
      if (this.#told.isStale(alarm, watch.state.tMs)) this.#tell(watch, 'updated', alarm);
    }
  }

  #tellAlarm(watch: IronWatch, change: ToldChange, record: AlarmRecord): void {
    this.#tell(watch, change, this.#liveOf(watch, record));
  }

  #liveOf({ state }: IronWatch, record: AlarmRecord): AlarmLive {
    return alarmLive(state, record, (tMs) => this.#program.utcOf(tMs));
  }

  #tell(watch: IronWatch, change: ToldChange, alarm: AlarmLive): void {
    this.#told.tell(alarm, watch.state.tMs);
    this.#telling.tell({ kind: 'alarm', change, alarm });
    if (change === 'acknowledged') this.#program.devices.acknowledged();
  }

  #lamp(): void {
    this.#program.devices.lamp(loudest(this.#program.watches.states));
  }
}

/** A plate that warms up, comes to a whole cycle (which ends with a rise), or has become hot. */
const takesHeat = (finding: FoundEntry['finding']): boolean =>
  (finding.kind === 'phase' && finding.phase === 'warming') ||
  finding.kind === 'cycle' ||
  (finding.kind === 'heat' && finding.change === 'hot');
