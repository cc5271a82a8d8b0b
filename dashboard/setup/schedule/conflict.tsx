import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { conflictWords, scheduleWords } from '../../../shared/words/setup.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { type Draft, dropDraft, setDraft } from './drafts.ts';
import { formOf, type ScheduleForm } from './form.ts';
import { type Place, placeKey, taking, textAt } from './merge.ts';
import { isSaving, mergeOf, saveBoth, say } from './saving.ts';

/** Somebody else has made a newer version meanwhile: what it has, and what can be done with both. */
export function Conflict({ draft, newest }: { readonly draft: Draft; readonly newest: HeatSchedule }) {
  const { id, version } = newest;
  const merged = mergeOf(draft, newest);
  const theirs = formOf(newest, draft.form.unit);
  const before = formOf(draft.base, draft.form.unit);
  const useTheirs = (): void => {
    dropDraft(id);
    say(id, '');
  };
  return (
    <div class="conflict" role="alert" data-testid="conflict">
      <Note hatch="act-soon">
        <div class="conflict-text">
          <h3>{conflictWords.title(version)}</h3>
          <p>{conflictWords.means}</p>
          {merged.theirs.length === 0 ? (
            <p>{conflictWords.same}</p>
          ) : (
            <>
              <p>{conflictWords.theirs}</p>
              <ul>
                {merged.theirs.map((place) => (
                  <li key={placeKey(place)}>
                    <b>{placeName(place, theirs)}</b>:{' '}
                    {conflictWords.had(shown(theirs, place), shown(before, place))}
                  </li>
                ))}
              </ul>
            </>
          )}
          {merged.both.length === 0 ? null : (
            <>
              <p>{conflictWords.both}</p>
              <ul>
                {merged.both.map((place) => (
                  <li key={placeKey(place)}>
                    <b>{placeName(place, draft.form)}</b>:{' '}
                    {conflictWords.against(shown(theirs, place), shown(draft.form, place))}{' '}
                    <Target
                      label={conflictWords.takeOf(placeName(place, draft.form))}
                      onPress={() => setDraft(id, { ...draft, form: taking(draft.form, theirs, place) })}
                    >
                      {conflictWords.take}
                    </Target>
                  </li>
                ))}
              </ul>
            </>
          )}
          <div class="choice-row">
            <Target main disabled={isSaving.value} testId="save-both" onPress={() => void saveBoth(id)}>
              {conflictWords.saveBoth(version + 1)}
            </Target>
            <Target testId="use-theirs" onPress={useTheirs}>
              {conflictWords.useTheirs(version)}
            </Target>
          </div>
        </div>
      </Note>
    </div>
  );
}

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
