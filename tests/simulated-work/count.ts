import { alarmKinds } from '../../shared/alarm/record.ts';
import type { WorkAlarm } from './watch.ts';

/** How often alarms came, by kind and priority. */
export interface Count {
  readonly kind: string;
  readonly priority: number;
  readonly onRest: boolean;
  readonly raised: number;
  readonly perHour: number;
}

export function countAlarms(alarms: readonly WorkAlarm[], hours: number): readonly Count[] {
  const raised = alarms.filter((a) => a.change === 'raised');
  return alarmKinds.flatMap((kind) =>
    [3, 2, 1].flatMap((priority) =>
      [false, true].flatMap((onRest) => {
        const { length } = raised.filter(
          (a) => a.alarm.kind === kind && a.priority === priority && a.onRest === onRest,
        );
        return length === 0 ? [] : [{ kind, priority, onRest, raised: length, perHour: length / hours }];
      }),
    ),
  );
}

/** How many of a priority came in each hour, over many hours: the share of hours with none, with one, with more. */
export function byHour(
  alarms: readonly Pick<WorkAlarm, 'tMs'>[],
  hours: number,
): { readonly none: number; readonly one: number; readonly more: number; readonly most: number } {
  const counts = Array.from({ length: hours }, () => 0);
  for (const { tMs } of alarms) {
    const hour = Math.min(hours - 1, Math.floor(tMs / 3_600_000));
    counts[hour] = (counts[hour] ?? 0) + 1;
  }
  const share = (fits: (n: number) => boolean): number => counts.filter(fits).length;
  return {
    none: share((n) => n === 0),
    one: share((n) => n === 1),
    more: share((n) => n > 1),
    most: Math.max(0, ...counts),
  };
}

export const countText = (counts: readonly Count[]): string =>
  ['kind | priority | where | raised | an hour']
    .concat(
      counts.map((c) =>
        [c.kind, c.priority, c.onRest ? 'on its rest' : 'in use', c.raised, c.perHour.toFixed(3)].join(' | '),
      ),
    )
    .join('\n');
