import { z } from 'zod';
import type { TypedPoint } from '../../../../shared/messages/dial.ts';
import type { TemperatureUnit } from '../../../../shared/units/temperature.ts';
import { dialSetupWords, dialToldWords } from '../../../../shared/words/dial.ts';
import { readKept } from '../../../parts/keep.ts';
import { inUnit, readNumber, readPlateC, readTemperature } from '../../fields/number.ts';

/** Readings of a hand thermometer as they are typed, in the unit in which they were. */
const draftSchema = z.strictObject({
  unit: z.enum(['F', 'C']),
  mark: z.string(),
  mean: z.string(),
  peak: z.string(),
  trough: z.string(),
});
export type Draft = z.infer<typeof draftSchema>;

export const emptyDraft = (unit: TemperatureUnit): Draft => ({
  unit,
  mark: '',
  mean: '',
  peak: '',
  trough: '',
});

/** What the tab kept of it; an empty one where that is nothing or can't be read. */
export const readDraft = (text: string | null, unit: TemperatureUnit): Draft =>
  readKept(text, draftSchema) ?? emptyDraft(unit);

/** The same readings in the unit that the page shows now. */
export function inUnitNow(draft: Draft, unit: TemperatureUnit): Draft {
  if (draft.unit === unit) return draft;
  const turned = (text: string): string => inUnit(readTemperature(text, draft.unit), unit).text;
  const { mark, mean, peak, trough } = draft;
  return { unit, mark, mean: turned(mean), peak: turned(peak), trough: turned(trough) };
}

export type Checked =
  | { readonly kind: 'point'; readonly point: TypedPoint }
  | { readonly kind: 'wrong'; readonly at: 'mark' | 'mean' | 'peak' | 'trough'; readonly why: string };

/** The point that was typed, or the field that is wrong and what would be right. */
export function checkDraft(draft: Draft): Checked {
  const mark = readNumber(draft.mark);
  if (mark === null || mark < 0 || mark > 1000)
    return { kind: 'wrong', at: 'mark', why: dialToldWords.wrong };
  const read = { mean: 0, peak: null as number | null, trough: null as number | null };
  for (const name of ['mean', 'peak', 'trough'] as const) {
    if (name !== 'mean' && draft[name].trim() === '') continue;
    const c = readPlateC(draft[name], draft.unit);
    if (c === null) return { kind: 'wrong', at: name, why: dialSetupWords.typedWrong(`°${draft.unit}`) };
    read[name] = c;
  }
  const { mean, peak, trough } = read;
  if (peak !== null && peak < mean) return { kind: 'wrong', at: 'peak', why: dialSetupWords.typedOrder };
  if (trough !== null && trough > mean)
    return { kind: 'wrong', at: 'trough', why: dialSetupWords.typedOrder };
  return { kind: 'point', point: { mark, meanC: mean, peakC: peak, troughC: trough } };
}
