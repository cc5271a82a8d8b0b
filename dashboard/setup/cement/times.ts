import { z } from 'zod';
import {
  type DryingStage,
  type DryingStageKind,
  dryingStageKinds,
  LONGEST_DRYING_S,
} from '../../../shared/cure/cement.ts';
import {
  cementFactWords,
  type DryingUnit,
  dryingUnitSigns,
  dryingUnits,
  dryingUnitWords,
} from '../../../shared/words/cements.ts';
import { emptyTyped, isTyped, readNumber, type Typed, typedSchema, writeNumber } from '../fields/number.ts';

/** Drying times as they are shown and typed: in minutes, hours or days, one time or from one to another. */

const unitS: Readonly<Record<DryingUnit, number>> = { min: 60, h: 3600, d: 86_400 };

/** A time in s, to be shown in `unit`. */
const timeTyped = (s: number, unit: DryingUnit): Typed => ({
  text: writeNumber(s / unitS[unit]),
  value: s,
});

/** What the user has typed in `unit`. Its own sign may stand behind it. */
export function readTime(text: string, unit: DryingUnit): Typed {
  const number = readNumber(
    text.replace(new RegExp(`\\s*(${unit}|${dryingUnitSigns[unit]}|${dryingUnitWords[unit]})\\s*$`, 'i'), ''),
  );
  return { text, value: number === null ? null : number * unitS[unit] };
}

/** One stage's time as it stands in its fields. */
export const stageTimeSchema = z.strictObject({
  from: typedSchema,
  /** An empty text: one time only. */
  to: typedSchema,
  in: z.enum(dryingUnits),
});
export type StageTime = z.infer<typeof stageTimeSchema>;

export type StageTimes = Readonly<Record<DryingStageKind, StageTime>>;

/** Whether a time is written exactly, with one decimal at most. */
const isPlain = (s: number, unit: DryingUnit): boolean => Number.isInteger((s / unitS[unit]) * 10);

/** The largest unit in which times are plain numbers from 1 on, else minutes. */
export const plainUnit = (...times: readonly number[]): DryingUnit =>
  dryingUnits.findLast((unit) => times.every((s) => s >= unitS[unit] && isPlain(s, unit))) ?? 'min';

const emptyTime = { from: emptyTyped, to: emptyTyped, in: 'min' } as const;

function timeOf(stage: DryingStage | undefined): StageTime {
  if (stage === undefined) return emptyTime;
  const { fromS, toS } = stage;
  const unit = plainUnit(fromS, toS);
  return { from: timeTyped(fromS, unit), to: fromS === toS ? emptyTyped : timeTyped(toS, unit), in: unit };
}

/** For each stage what stands in its fields; empty ones for those that aren't given. */
export const timesOf = (stages: readonly DryingStage[]): StageTimes =>
  Object.fromEntries(
    dryingStageKinds.map((kind) => [kind, timeOf(stages.find((stage) => stage.kind === kind))]),
  ) as Record<DryingStageKind, StageTime>;

export const isGiven = ({ from, to }: StageTime): boolean => isTyped(from) || isTyped(to);

/** The same texts, counted in another unit. */
export const countedIn = ({ from, to }: StageTime, unit: DryingUnit): StageTime => ({
  from: readTime(from.text, unit),
  to: readTime(to.text, unit),
  in: unit,
});

/** The second time, or the first where there is one only. */
export const lastOf = ({ from, to }: StageTime): Typed => (isTyped(to) ? to : from);

/** A time or a range in words, for example "30 to 45 min". */
export function dryingTimeText({ fromS, toS }: Pick<DryingStage, 'fromS' | 'toS'>): string {
  const unit = plainUnit(fromS, toS);
  const from = timeTyped(fromS, unit).text;
  return fromS === toS
    ? cementFactWords.time(from, unit)
    : cementFactWords.range(from, timeTyped(toS, unit).text, unit);
}

/** The longest time that can be told, in `unit`, as text. */
export const longestIn = (unit: DryingUnit): string =>
  cementFactWords.time(timeTyped(LONGEST_DRYING_S, unit).text, unit);
