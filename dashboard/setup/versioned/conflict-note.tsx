import { conflictWords } from '../../../shared/words/setup.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import type { Draft, UnitForm, Versioned } from './kind.ts';
import type { Store } from './saving.ts';
import './versioned.css';

/** How places of a form are told: what they are called, and what stands there. */
export interface PlaceTexts<F, P> {
  /** Unlike that of any other place. */
  readonly key: (place: P) => string;
  readonly name: (place: P, form: F) => string;
  readonly shown: (form: F, place: P) => string;
  /** My form with what they have in one place. */
  readonly taking: (mine: F, theirs: F, place: P) => F;
}

interface ConflictProps<T extends Versioned & V, V extends object, F extends UnitForm, P> {
  readonly store: Store<T, V, F, P>;
  readonly texts: PlaceTexts<F, P>;
  readonly draft: Draft<T, F>;
  readonly newest: T;
}

/** Somebody else has made a newer version meanwhile: what it has, and what can be done with both. */
export function Conflict<T extends Versioned & V, V extends object, F extends UnitForm, P>({
  store,
  texts,
  draft,
  newest,
}: ConflictProps<T, V, F, P>) {
  const { id, version } = newest;
  const { theirs, both } = store.mergeOf(draft, newest);
  const their = store.formOf(newest, draft.form.unit);
  const before = store.formOf(draft.base, draft.form.unit);
  const useTheirs = (): void => {
    store.dropDraft(id);
    store.say(id, '');
  };
  return (
    <div class="conflict" role="alert" data-testid="conflict">
      <Note hatch="act-soon">
        <div class="conflict-text">
          <h3>{conflictWords.title(version)}</h3>
          <p>{conflictWords.means}</p>
          <p>{theirs.length === 0 ? conflictWords.same : conflictWords.theirs}</p>
          {theirs.length === 0 ? null : (
            <ul>
              {theirs.map((place) => (
                <li key={texts.key(place)}>
                  <b>{texts.name(place, their)}</b>:{' '}
                  {conflictWords.had(texts.shown(their, place), texts.shown(before, place))}
                </li>
              ))}
            </ul>
          )}
          {both.length === 0 ? null : (
            <>
              <p>{conflictWords.both}</p>
              <ul>
                {both.map((place) => (
                  <li key={texts.key(place)}>
                    <b>{texts.name(place, draft.form)}</b>:{' '}
                    {conflictWords.against(texts.shown(their, place), texts.shown(draft.form, place))}{' '}
                    <Target
                      label={conflictWords.takeOf(texts.name(place, draft.form))}
                      onPress={() =>
                        store.setDraft(id, { ...draft, form: texts.taking(draft.form, their, place) })
                      }
                    >
                      {conflictWords.take}
                    </Target>
                  </li>
                ))}
              </ul>
            </>
          )}
          <div class="choice-row">
            <Target
              main
              disabled={store.isSaving.value}
              testId="save-both"
              onPress={() => void store.saveBoth(id)}
            >
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
