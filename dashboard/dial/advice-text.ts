import type { IronDial } from '../../shared/messages/dial.ts';
import { ceilingWords, dialWords, markFigure } from '../../shared/words/dial.ts';

/** Where to set a dial, or why that can't be said, in sentences. */
export interface AdviceText {
  readonly main: string;
  readonly more: readonly string[];
}

export interface Wording {
  readonly temperature: (c: number) => string;
  readonly difference: (k: number) => string;
}

type StageAdvice = IronDial['advice'][number];
type Set = Extract<StageAdvice['advice'], { kind: 'set' }>;

const only = (main: string): AdviceText => ({ main, more: [] });

export function adviceText(
  { stage, targetC, advice }: StageAdvice,
  cementLimitC: number | null,
  { temperature, difference }: Wording,
): AdviceText {
  switch (advice.kind) {
    case 'set': {
      const { mark, meanC, hottestC } = advice;
      const gives = dialWords.gives(temperature(meanC), temperature(hottestC));
      return {
        main: `${dialWords.setTo(markFigure(mark), stage)} ${gives}`,
        more: remarks(advice, targetC, cementLimitC, temperature),
      };
    }
    case 'too-wide':
      return only(dialWords.tooWide(difference(advice.byK), ceilingWords[advice.ceiling]));
    case 'too-cold':
      return only(dialWords.tooCold(String(advice.mark), temperature(advice.meanC)));
    case 'too-hot':
      return only(dialWords.tooHot(String(advice.mark), temperature(advice.hottestC)));
    case 'few-marks':
      return only(dialWords.fewMarks(advice.charted));
    case 'falls': {
      const { fromMark, toMark, byK } = advice;
      return only(dialWords.falls(String(fromMark), String(toMark), difference(byK)));
    }
  }
}

function remarks(
  { hottestC, heldBy, interpolated, typed }: Set,
  targetC: number,
  cementLimitC: number | null,
  temperature: Wording['temperature'],
): readonly string[] {
  const target = temperature(targetC);
  const held = heldBy === null || heldBy === 'chart' ? null : dialWords.heldBy(ceilingWords[heldBy], target);
  const overCement = cementLimitC !== null && hottestC > cementLimitC;
  return [
    overCement ? dialWords.overCement(temperature(cementLimitC)) : null,
    held,
    heldBy === 'chart' ? dialWords.endOfChart(target) : null,
    interpolated ? dialWords.interpolated : null,
    typed ? dialWords.typed : null,
  ].filter((one) => one !== null);
}
