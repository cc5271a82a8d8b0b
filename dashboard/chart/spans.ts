import type { HeatSchedule, HeatStage } from '../../shared/heat/schedule.ts';
import type { SettingsFrom, WorkFrom } from '../../shared/messages/trace.ts';
import { traceWords } from '../../shared/words/records.ts';
import type { TraceBand, TraceSpan } from './trace-data.ts';

/** Stages and limits as they held, from what was settled and what was being worked. Pure. */

export interface Held {
  readonly fromMs: number;
  readonly toMs: number;
  readonly schedule: HeatSchedule;
  readonly stageId: string | null;
  /** The widest allowance of its probes, K. */
  readonly guardBandK: number;
}

/** What held from when to when: a new stretch wherever the settings or the stage changed. */
export function heldSpans(
  settings: readonly SettingsFrom[],
  work: readonly WorkFrom[],
  untilMs: number,
): readonly Held[] {
  const starts = [...new Set([...settings, ...work].map(({ fromMs }) => fromMs))].sort((a, b) => a - b);
  return starts.flatMap((fromMs, i) => {
    const settled = settings.findLast((one) => one.fromMs <= fromMs);
    if (settled === undefined) return [];
    return [
      {
        fromMs,
        toMs: starts[i + 1] ?? Math.max(fromMs, untilMs),
        schedule: settled.schedule,
        stageId: work.findLast((one) => one.fromMs <= fromMs)?.stageId ?? null,
        guardBandK: Math.max(0, ...settled.probes.map((probe) => probe.guardBandK)),
      },
    ];
  });
}

/** @param text a temperature in the unit that is shown */
export function traceSpan(held: Held, text: (c: number) => string): TraceSpan {
  const { fromMs, toMs, schedule, stageId, guardBandK } = held;
  const { fabricLimitC, cementLimitC } = schedule;
  return {
    fromMs,
    toMs,
    bands: bandsOf(schedule.stages, stageId),
    fabricC: fabricLimitC,
    fabricText: traceWords.fabricLimit(text(fabricLimitC)),
    warnC: fabricLimitC - guardBandK,
    cementC: cementLimitC,
    cementText: cementLimitC === null ? '' : traceWords.cementLimit(text(cementLimitC)),
  };
}

/** Stages with the same band share it; the one being worked comes last, so that it lies on top. */
function bandsOf(stages: readonly HeatStage[], stageId: string | null): readonly TraceBand[] {
  const bands = new Map<string, TraceBand>();
  for (const { id, name, lowC, highC } of stages) {
    const key = `${lowC} ${highC}`;
    const before = bands.get(key);
    const text = before === undefined ? name : `${before.text}, ${name}`;
    bands.set(key, { lowC, highC, text, working: before?.working === true || id === stageId });
  }
  return [...bands.values()].sort((a, b) => Number(a.working) - Number(b.working));
}

export interface Range {
  readonly lowC: number;
  readonly highC: number;
}

/** Room over the highest and under the lowest, as a part of the range. */
const HEAD = 0.08;

/** A range that holds the limits, the stages and what was read, with some room over them. */
export function rangeOf(held: readonly Held[], read: Range | null): Range {
  const stages = held.flatMap(({ schedule }) => schedule.stages);
  const limits = held.flatMap(({ schedule: { fabricLimitC, cementLimitC } }) =>
    cementLimitC === null ? [fabricLimitC] : [fabricLimitC, cementLimitC],
  );
  const all = [
    ...stages.flatMap(({ lowC, highC }) => [lowC, highC]),
    ...limits,
    ...(read === null ? [] : [read.lowC, read.highC]),
  ];
  if (all.length === 0) return { lowC: 0, highC: 1 };
  const [lowC, highC] = [Math.min(...all), Math.max(...all)];
  const room = Math.max(1, (highC - lowC) * HEAD);
  return { lowC: lowC - room, highC: highC + room };
}
