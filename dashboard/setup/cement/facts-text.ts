import { type AirLimits, type Cement, dryingStageKinds } from '../../../shared/cure/cement.ts';
import { coatingPractice } from '../../../shared/cure/conditions.ts';
import type { Learned } from '../../../shared/cure/learned.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { airTemperature, humidity } from '../../../shared/words/air.ts';
import { cementKindWords, learnedWords, cementFactWords as words } from '../../../shared/words/cements.ts';
import { dryingStageWords } from '../../../shared/words/coats.ts';
import { calendarDay } from '../../parts/day.ts';
import { burnsByKind } from './form.ts';
import { dryingTimeText } from './times.ts';

/** What is told of a cement, line by line. */

interface Fact {
  readonly name: string;
  readonly text: string;
}

export const factsOf = (cement: Cement, unit: TemperatureUnit): readonly Fact[] => {
  const { kind, stages, atC, atRhPct, cementLimitC, batch, expiresOn, source, standing } = cement;
  return [
    { name: words.kind, text: `${cementKindWords[kind]}, ${vapourText(cement)}` },
    ...dryingStageKinds.flatMap((one) => {
      const stage = stages.find((given) => given.kind === one);
      return stage === undefined ? [] : [{ name: dryingStageWords[one], text: dryingTimeText(stage) }];
    }),
    { name: words.at, text: words.conditions(airTemperature(atC, unit), humidity(atRhPct)) },
    ...airFacts(cement.airLimits, unit),
    {
      name: words.limit,
      text: cementLimitC === null ? words.limitNone : airTemperature(cementLimitC, unit),
    },
    ...(batch === '' ? [] : [{ name: words.batch, text: batch }]),
    ...(expiresOn === null ? [] : [{ name: words.expires, text: calendarDay(expiresOn) }]),
    ...(source === null ? [] : [{ name: words.written, text: words.document(source.manual, source.page) }]),
    ...(standing === '' ? [] : [{ name: words.standing, text: standing }]),
  ];
};

const vapourText = ({ kind, flammable }: Cement): string => {
  if (flammable) return words.burns;
  return burnsByKind(kind) === null ? words.burnsNotEntered : words.burnsNot;
};

/** The air that it may have: its own limits, then those that practice puts in the place of what it doesn't say. */
function airFacts(limits: AirLimits, unit: TemperatureUnit): readonly Fact[] {
  const { lowC, highC, lowRhPct, highRhPct } = limits;
  const own = [
    rangeText(lowC, highC, (c) => airTemperature(c, unit)),
    humidityText(rangeText(lowRhPct, highRhPct, humidity)),
  ].filter((text) => text !== '');
  const practice = [
    rangeText(
      lowC === null ? coatingPractice.lowC : null,
      highC === null ? coatingPractice.highC : null,
      (c) => airTemperature(c, unit),
    ),
    humidityText(rangeText(null, highRhPct === null ? coatingPractice.highRhPct : null, humidity)),
  ].filter((text) => text !== '');
  return [
    ...(own.length === 0 ? [] : [{ name: words.air, text: words.byInstructions(own.join(', ')) }]),
    ...(practice.length === 0
      ? []
      : [
          { name: own.length === 0 ? words.air : words.airElse, text: words.byPractice(practice.join(', ')) },
        ]),
  ];
}

const humidityText = (range: string): string => (range === '' ? '' : words.humidity(range));

/** A range of which either end may be open; empty where both are. */
function rangeText(low: number | null, high: number | null, text: (value: number) => string): string {
  if (low !== null && high !== null) return words.between(text(low), text(high));
  if (low !== null) return words.atLeast(text(low));
  return high === null ? '' : words.atMost(text(high));
}

/** A factor to two figures: more of them would claim what so few taps can't know. */
const factorText = (factor: number): string => String(Number(factor.toPrecision(2)));

/** What was learned of it, in sentences. */
export function learnedText(learned: Learned | undefined): string {
  if (learned === undefined || learned.observations === 0) return learnedWords.none;
  const { factor, low, high, observations } = learned;
  const [text, seen] = [factorText(factor), learnedWords.observations(observations)];
  const ends = [factorText(low), factorText(high)] as const;
  return text === factorText(1)
    ? `${learnedWords.driesAlike(seen)} ${learnedWords.betweenAlike(...ends)}`
    : `${learnedWords.dries(text, seen)} ${learnedWords.between(...ends)}`;
}
