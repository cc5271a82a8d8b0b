import { expect, it } from 'vitest';
import type { Seed } from '../../daemon/probe/simulated/random.ts';
import type { IronPlace } from '../../daemon/probe/simulated/scenario.ts';
import { doingAt, type WorkPlan } from '../../daemon/probe/simulated/worker/plan.ts';
import {
  type Mistakes,
  noMistakes,
  usualMistakes,
  type Worker,
} from '../../daemon/probe/simulated/worker/worker.ts';
import { USUAL_REST_LIMIT_S } from '../../shared/heat/schedule.ts';
import { usualUnattended } from '../../shared/watch/attended.ts';
import { byHour, countAlarms, countText } from '../simulated-work/count.ts';
import {
  awayIn,
  bothFound,
  type Found,
  foundOf,
  foundText,
  noneFound,
  spotsIn,
} from '../simulated-work/mistakes.ts';
import { onMaps } from '../simulated-work/real-bench.ts';
import { lagKnown, type WatchOptions, type WorkAlarm, watchWork } from '../simulated-work/watch.ts';
import { workerOf } from '../simulated-work/workers.ts';
import { LIMIT_C } from '../unit/watch/support/settings.ts';

/** `SOLEPLATE_HOURS` takes another number of simulated hours, for a slice. */
const HOURS = Number(process.env['SOLEPLATE_HOURS'] ?? 120);
/** Half a working day each, so that a cold start counts as often as it does at a bench. */
const SESSION_HOURS = 4;

interface Told {
  readonly raised: readonly WorkAlarm[];
  /** Sessions in which a plate truly came to the guarded limit. */
  readonly over: number;
  readonly found: Readonly<Record<Mistake, Found>>;
}

type Mistake = 'dwell' | 'unattended' | 'left-alone';

/** What was truly so that each of these is to tell. A rest that ends with the limit needn't be told. */
const wrongIn = (plan: WorkPlan) =>
  [
    ['dwell', spotsIn(plan, USUAL_REST_LIMIT_S + 1)],
    ['unattended', awayIn(plan, usualUnattended.reminderMin * 60)],
    ['left-alone', awayIn(plan, usualUnattended.alarmMin * 60)],
  ] as const;

/** Watches so many hours of work, and prints each alarm and the counts. */
function watchHours(
  hours: number,
  mistakes: Mistakes,
  optionsFor: (worker: Worker, seed: Seed) => WatchOptions,
): Told {
  const raised: WorkAlarm[] = [];
  const found = { dwell: noneFound, unattended: noneFound, 'left-alone': noneFound };
  let over = 0;
  for (let session = 0; session * SESSION_HOURS < hours; session++) {
    const seed = session + 1;
    const worker = workerOf(seed, { mistakes, hours: SESSION_HOURS, motion: true });
    const watched = watchWork(worker, seed, optionsFor(worker, seed));
    for (const [kind, wrong] of wrongIn(watched.plan))
      found[kind] = bothFound(found[kind], foundOf(watched, kind, wrong));
    if (watched.highestC >= LIMIT_C) over++;
    for (const alarm of watched.alarms) {
      if (alarm.change !== 'raised') continue;
      const turned = watched.plan.doings[alarm.iron].filter(
        (d, i, all) => d.dialC !== all[i - 1]?.dialC && d.atS * 1000 <= alarm.tMs,
      );
      const truly = doingAt(watched.plan, alarm.iron, alarm.tMs / 1000)?.place;
      console.log(lineOf(seed, alarm, alarm.tMs / 1000 - (turned.at(-1)?.atS ?? 0), truly));
      raised.push({ ...alarm, tMs: alarm.tMs + session * SESSION_HOURS * 3_600_000 });
    }
  }
  const know = byHour(
    raised.filter((a) => a.priority === 1),
    hours,
  );
  console.log(
    [
      countText(countAlarms(raised, hours)),
      `hours with no alarm of priority 1: ${know.none}, with one: ${know.one}, with more: ${know.more}; most in one hour: ${know.most}`,
      `sessions in which a plate truly came to the guarded limit: ${over}`,
      ...Object.entries(found).map(([kind, one]) => foundText(kind, one)),
    ].join('\n'),
  );
  return { raised, over, found };
}

const lineOf = (seed: number, a: WorkAlarm, turnedS: number, truly: IronPlace = 'on-rest'): string =>
  [
    `seed ${seed}`,
    a.iron,
    `${(a.tMs / 60_000).toFixed(1)} min`,
    `${turnedS.toFixed(0)} s after its dial was turned`,
    `${a.onRest ? 'on its rest' : 'in use'} by the marks, truly ${truly}`,
    `${a.alarm.kind} (${a.priority}) ${a.alarm.detail}`,
  ].join(', ');

/** The target: at most one alarm of priority 1 an hour, none higher. */
function expectFew({ raised, over }: Told, hours: number): void {
  expect(over).toBe(0);
  expect(raised.filter((a) => a.priority > 1)).toEqual([]);
  expect(raised.filter((a) => a.priority === 1).length / hours).toBeLessThanOrEqual(1);
}

it(`${HOURS} h of correct simulated work, nothing known of the probes: alarms an hour`, () => {
  expectFew(
    watchHours(HOURS, noMistakes, () => ({})),
    HOURS,
  );
});

it(`${HOURS} h of correct simulated work, lags measured: alarms an hour`, () => {
  expectFew(
    watchHours(HOURS, noMistakes, () => ({ settings: lagKnown })),
    HOURS,
  );
});

it(`${HOURS} h of correct simulated work on real maps, motion checked, cement limit set: alarms an hour`, () => {
  expectFew(watchHours(HOURS, noMistakes, onMaps), HOURS);
});

it(`${HOURS} h of simulated work on real maps with rests on one spot and walks away: what is found of them`, () => {
  const { found, raised } = watchHours(HOURS, { ...usualMistakes, forgottenMarks: 0, wrongMarks: 0 }, onMaps);
  expect(found.dwell.told / found.dwell.made).toBeGreaterThan(0.95);
  expect(found.dwell.rightly / found.dwell.raised).toBeGreaterThan(0.95);
  expect(found['left-alone'].told).toBe(found['left-alone'].made);
  const other = raised.filter(
    (a) => a.priority > 1 && a.alarm.kind !== 'dwell' && a.alarm.kind !== 'left-alone',
  );
  expect(other).toEqual([]);
});

it(`${HOURS / 3} h of simulated work on real maps with every mistake: alarms an hour, what is found`, () => {
  const { found } = watchHours(HOURS / 3, usualMistakes, onMaps);
  expect(found['left-alone'].told).toBe(found['left-alone'].made);
});

it(`${HOURS / 3} h of simulated work with forgotten and wrong marks: alarms an hour`, () => {
  const hours = HOURS / 3;
  const { raised } = watchHours(hours, { ...usualMistakes, spotsPerHour: 0, walksAway: 0 }, () => ({
    settings: lagKnown,
  }));
  // Where "on its rest" was forgotten the program can't know that it is there.
  expect(raised.filter((a) => a.priority > 1 && a.alarm.kind !== 'heading-for-limit')).toEqual([]);
  expect(raised.filter((a) => a.priority === 1).length / hours).toBeLessThanOrEqual(1);
});
