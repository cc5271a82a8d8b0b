import { conflictWords, scheduleWords } from '../../../shared/words/setup.ts';
import type { PlaceTexts } from '../versioned/conflict-note.tsx';
import type { ScheduleForm } from './form.ts';
import { type Place, placeKey, taking, textAt } from './merge.ts';

/** How the places of a schedule's form are told. */

/** What a place is called, for example "Low, final shrink". */
export function placeName(place: Place, form: ScheduleForm): string {
  if (!('stage' in place))
    return place.field === 'limitStanding' ? scheduleWords.standing : scheduleWords[place.field];
  const stage = form.stages.find((one) => one.id === place.stage)?.name ?? place.stage;
  const field = { ...scheduleWords, name: scheduleWords.name, standing: scheduleWords.stageStanding }[
    place.field
  ];
  return scheduleWords.of(field, stage);
}

/** What stands at a place, with its unit. */
export function shown(form: ScheduleForm, place: Place): string {
  const text = textAt(form, place);
  if (text === '') return conflictWords.nothing;
  if (place.field === 'restLimit') return scheduleWords.seconds(text);
  return isNumber(place) ? `${text} °${form.unit}` : `“${text}”`;
}

const isNumber = ({ field }: Place): boolean =>
  ['low', 'target', 'high', 'fabricLimit', 'cementLimit'].includes(field);

export const placeTexts: PlaceTexts<ScheduleForm, Place> = { key: placeKey, name: placeName, shown, taking };
