import type { Seed } from '../../daemon/probe/simulated/random.ts';
import type { SaidMark } from '../../daemon/probe/simulated/worker/marks.ts';
import type { WorkPlan } from '../../daemon/probe/simulated/worker/plan.ts';
import { type Worker, type WorkIronId, workIrons } from '../../daemon/probe/simulated/worker/worker.ts';
import type { Priority } from '../../shared/alarm/record.ts';
import { priorityOf } from '../../shared/alarm/table.ts';
import type { Place } from '../../shared/iron/place.ts';
import type { WatchedProbe } from '../../shared/thermometer/watched-probe.ts';
import type { FoundEntry } from '../../shared/watch/finding.ts';
import type { WatchInput, WatchSettings } from '../../shared/watch/input.ts';
import { advance, take } from '../../shared/watch/replay.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { resume } from '../../shared/watch/watch.ts';
import { carried, probeSettings, watchSettings } from '../unit/watch/support/settings.ts';
import type { Heard } from '../unit/watch/support/worked-iron.ts';
import { boardOf, playWork, probeOf } from './play.ts';

/** A worker's two irons through the real fold, with what was said as inputs. */

export interface WorkAlarm extends Heard {
  readonly iron: WorkIronId;
  readonly priority: Priority;
  /** By the marks. */
  readonly onRest: boolean;
}

export interface WatchedWork {
  readonly plan: WorkPlan;
  /** Every change of an alarm, in the order in which each iron's watch told it. */
  readonly alarms: readonly WorkAlarm[];
  readonly states: Readonly<Record<WorkIronId, WatchState>>;
  /** The highest true plate temperature of either iron, degC. */
  readonly highestC: number;
}

/** What a mark gives to the watches: the one place to add marks that the fold comes to know. */
export type Hear = (said: SaidMark, states: Readonly<Record<WorkIronId, WatchState>>) => readonly ForIron[];

/** An input for the watch of one iron. */
export interface ForIron {
  readonly iron: WorkIronId;
  readonly input: WatchInput;
}

export interface WatchOptions {
  readonly hear?: Hear;
  /** What the watches have to be told after a step of one of them; none where left out. */
  readonly follow?: (
    iron: WorkIronId,
    found: readonly FoundEntry[],
    states: Readonly<Record<WorkIronId, WatchState>>,
  ) => readonly ForIron[];
  /** Of each iron; by default the shipped schedule and a probe of which nothing is known. */
  readonly settings?: (iron: WorkIronId, worker: Worker) => WatchSettings;
}

const plainSettings = (iron: WorkIronId): WatchSettings => settingsWith(iron, null);

/** The shipped schedule, and a probe whose time constant has been measured to a twentieth. */
export const lagKnown = (iron: WorkIronId, { irons }: Worker): WatchSettings => {
  const { lagS } = irons[iron].traits.probe;
  return settingsWith(iron, { tauS: lagS, standardS: lagS / 20, measuredAt: '2026-03-01T08:00:00Z' });
};

const settingsWith = (iron: WorkIronId, lag: WatchedProbe['lag']): WatchSettings => {
  const settings = watchSettings([probeSettings(probeOf(iron), { lag })]);
  return { ...settings, iron: { ...settings.iron, id: iron, name: `Demo iron, ${iron}` } };
};

/** The stage, and the place that follows from an act: what a watch of one iron alone knows of the work. */
export const hearPlaces = ({ atS, iron, act }: SaidMark): readonly ForIron[] => {
  const commandId = `m${Math.round(atS * 1000)}`;
  const placed = (at: WorkIronId, place: Place) => ({
    iron: at,
    input: { kind: 'mark', commandId: `${commandId}-${at}`, mark: { kind: 'place', place } } as const,
  });
  switch (act.kind) {
    case 'stage':
      return [{ iron, input: { kind: 'mark', commandId, mark: { kind: 'stage', stageId: act.stageId } } }];
    case 'in-hand':
      return workIrons.map((other) => placed(other, other === iron ? 'on-work' : 'on-rest'));
    case 'area':
    case 'next':
    case 'on-work':
      return [placed(iron, 'on-work')];
    case 'off-work':
    case 'on-rest':
      return [placed(iron, act.kind)];
    case 'piece':
    case 'turned':
    case 'lap-done':
    case 'undo':
      return [];
  }
};

/** Watches the work of one seed from cold irons on. */
export function watchWork(worker: Worker, seed: Seed, options: WatchOptions = {}): WatchedWork {
  const { hear = hearPlaces, follow, settings = plainSettings } = options;
  const beginning = (iron: WorkIronId): WatchState => resume(carried(settings(iron, worker)), 0, 0);
  const states = { small: beginning('small'), big: beginning('big') };
  const alarms: WorkAlarm[] = [];
  let highestC = -Infinity;
  const give = (iron: WorkIronId, input: WatchInput, tMs: number): void => {
    const step = take(states[iron], input, tMs);
    states[iron] = step.state;
    alarms.push(...alarmsIn(iron, step));
    for (const one of follow?.(iron, step.found, states) ?? []) give(one.iron, one.input, tMs);
  };
  for (const iron of workIrons)
    give(iron, { kind: 'device', device: boardOf(iron), link: 'connected', detail: '' }, 0);
  const plan = playWork(worker, seed, {
    sample: (iron, tMs, sample, truth) => {
      highestC = Math.max(highestC, truth.plateC);
      give(iron, { kind: 'sample', sample }, tMs);
    },
    mark: (said, tMs) => {
      // Whoever says something of one iron is there for the other, too.
      for (const iron of workIrons) give(iron, { kind: 'presence' }, tMs);
      for (const { iron, input } of hear(said, states)) give(iron, input, tMs);
    },
  });
  for (const iron of workIrons) {
    const last = advance(states[iron], plan.lengthS * 1000);
    states[iron] = last.state;
    alarms.push(...alarmsIn(iron, last));
  }
  return { plan, alarms, states, highestC };
}

const alarmsIn = (iron: WorkIronId, { state, found }: ReturnType<typeof advance>): readonly WorkAlarm[] =>
  found.flatMap(({ tMs, finding }) =>
    finding.kind === 'alarm'
      ? [
          {
            iron,
            tMs,
            change: finding.change,
            alarm: finding.alarm,
            onRest: state.work.place === 'on-rest',
            priority: priorityOf(finding.alarm.kind, state.work.place === 'on-rest'),
          },
        ]
      : [],
  );
