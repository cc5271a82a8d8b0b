import { z } from 'zod';
import { type SpotPlace, spotPlaces } from '../../../../shared/iron/spots.ts';
import type { IronEvenness, SpotDraft } from '../../../../shared/messages/evenness.ts';
import { formatTemperatureDifference, type TemperatureUnit } from '../../../../shared/units/temperature.ts';
import { evennessWords } from '../../../../shared/words/evenness.ts';
import { readKept } from '../../../parts/keep.ts';
import { differenceTyped, inUnit, readDifference, readPlateC, readTemperature } from '../../fields/number.ts';

/** A spot reading as it is typed, in the unit in which it was. */
const draftSchema = z.strictObject({
  unit: z.enum(['F', 'C']),
  /** Null: the next place that nothing was typed for. */
  place: z.enum(spotPlaces).nullable(),
  reading: z.string(),
  offBy: z.string(),
});
export type Draft = z.infer<typeof draftSchema>;

export const emptyDraft = (unit: TemperatureUnit): Draft => ({ unit, place: null, reading: '', offBy: '' });

/** What the tab kept of it; an empty one where that is nothing or can't be read. */
export const readDraft = (text: string | null, unit: TemperatureUnit): Draft =>
  readKept(text, draftSchema) ?? emptyDraft(unit);

/** The same in the unit that the page shows now. */
export function inUnitNow(draft: Draft, unit: TemperatureUnit): Draft {
  if (draft.unit === unit) return draft;
  const { value } = readDifference(draft.offBy, draft.unit);
  return {
    ...draft,
    unit,
    reading: inUnit(readTemperature(draft.reading, draft.unit), unit).text,
    offBy: value === null ? draft.offBy : differenceTyped(value, unit).text,
  };
}

/** The next place to read: beside the probe first, then those that nothing was typed for. */
export const nextPlace = ({ spots }: Pick<IronEvenness, 'spots'>): SpotPlace | null =>
  spotPlaces.find((place) => !spots.some((spot) => spot.place === place)) ?? null;

/** The most that a hand thermometer may be off by, K. */
const MOST_OFF_K = 20;

export type Checked =
  | { readonly kind: 'spot'; readonly spot: SpotDraft }
  | { readonly kind: 'wrong'; readonly at: 'reading' | 'offBy'; readonly why: string };

/** The spot that was typed, or the field that is wrong and what would be right. */
export function checkDraft({ unit, reading, offBy }: Draft, place: SpotPlace): Checked {
  const readC = readPlateC(reading, unit);
  if (readC === null) return { kind: 'wrong', at: 'reading', why: evennessWords.wrongReading(`°${unit}`) };
  const thermometerK = readDifference(offBy, unit).value;
  if (thermometerK === null || thermometerK <= 0 || thermometerK > MOST_OFF_K) {
    const most = formatTemperatureDifference(MOST_OFF_K, unit);
    return { kind: 'wrong', at: 'offBy', why: evennessWords.wrongThermometer(most) };
  }
  return { kind: 'spot', spot: { place, readC, thermometerK } };
}
