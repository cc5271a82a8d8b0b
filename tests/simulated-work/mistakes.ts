import type { WorkPlan } from '../../daemon/probe/simulated/worker/plan.ts';
import { type WorkIronId, workIrons } from '../../daemon/probe/simulated/worker/worker.ts';
import type { AlarmKind } from '../../shared/alarm/record.ts';
import type { WatchedWork } from './watch.ts';

/** How well alarms find what the worker truly did wrong. */

/** A time in which something was truly so of an iron, s; null: of both. */
interface Wrong {
  readonly iron: WorkIronId | null;
  readonly fromS: number;
  readonly toS: number;
}

/** So many were raised, and so many of those rightly; so many mistakes were made, and so many of those were told. */
export interface Found {
  readonly raised: number;
  readonly rightly: number;
  readonly made: number;
  readonly told: number;
}

export const noneFound: Found = { raised: 0, rightly: 0, made: 0, told: 0 };

export const bothFound = (a: Found, b: Found): Found => ({
  raised: a.raised + b.raised,
  rightly: a.rightly + b.rightly,
  made: a.made + b.made,
  told: a.told + b.told,
});

/** What is told a little after it ended was told too late to be of use, but not wrongly, s. */
const LATE_S = 3;

/** Rests on one spot of the work for longer than `limitS`. */
export const spotsIn = (plan: WorkPlan, limitS: number): readonly Wrong[] =>
  workIrons.flatMap((iron) =>
    plan.doings[iron].flatMap(({ atS, place, still }, i, all) => {
      const toS = all[i + 1]?.atS ?? plan.lengthS;
      return place === 'on-work' && still && toS - atS > limitS ? [{ iron, fromS: atS, toS }] : [];
    }),
  );

/** Times in which the worker had walked off for longer than `limitS`, and work went on afterwards. */
export const awayIn = (plan: WorkPlan, limitS: number): readonly Wrong[] =>
  plan.person.flatMap(({ atS, is }, i, all) => {
    const toS = all[i + 1]?.atS;
    return is === 'away' && toS !== undefined && toS - atS > limitS ? [{ iron: null, fromS: atS, toS }] : [];
  });

export function foundOf(
  { alarms }: Pick<WatchedWork, 'alarms'>,
  kind: AlarmKind,
  wrong: readonly Wrong[],
): Found {
  const raised = alarms.filter((a) => a.change === 'raised' && a.alarm.kind === kind);
  const fits = ({ iron, fromS, toS }: Wrong, a: (typeof raised)[number]): boolean =>
    (iron === null || iron === a.iron) && a.tMs / 1000 >= fromS && a.tMs / 1000 <= toS + LATE_S;
  return {
    raised: raised.length,
    rightly: raised.filter((a) => wrong.some((w) => fits(w, a))).length,
    made: wrong.length,
    told: wrong.filter((w) => raised.some((a) => fits(w, a))).length,
  };
}

export const foundText = (what: string, { raised, rightly, made, told }: Found): string =>
  `${what}: ${told} of ${made} told (recall ${share(told, made)}), ${rightly} of ${raised} raised rightly (precision ${share(rightly, raised)})`;

const share = (part: number, of: number): string => (of === 0 ? 'none' : (part / of).toFixed(3));
