import { useState } from 'preact/hooks';
import { saveWords } from '../../../shared/words/setup.ts';
import { Target } from '../../parts/target.tsx';
import type { Draft, UnitForm, Versioned } from './kind.ts';
import type { Store } from './saving.ts';
import './versioned.css';

interface SaveBarProps<T extends Versioned & V, V extends object, F extends UnitForm, P> {
  readonly id: string;
  readonly store: Store<T, V, F, P>;
  /** Somebody else has made a newer version: what can be done then stands elsewhere. */
  readonly conflict: boolean;
  readonly onSave: () => void;
  readonly testId: string;
}

/** Stays in sight while something is unsaved, and says what came of saving. */
export function SaveBar<T extends Versioned & V, V extends object, F extends UnitForm, P>({
  id,
  store,
  conflict,
  onSave,
  testId,
}: SaveBarProps<T, V, F, P>) {
  const { drafts, dropDraft, say, said, takeUp, isSaving } = store;
  const draft = drafts.value[id];
  const [dropped, setDropped] = useState<Draft<T, F> | null>(null);
  const drop = (): void => {
    setDropped(draft ?? null);
    dropDraft(id);
    say(id, saveWords.dropped);
  };
  const takeBack = (): void => {
    if (dropped !== null) takeUp(id, dropped);
    setDropped(null);
    say(id, '');
  };
  const sentence = said.value[id] ?? '';
  return (
    <div class={draft === undefined ? 'save-bar' : 'save-bar save-bar--unsaved'}>
      <p role="status" data-testid={testId}>
        {sentence === '' ? standing(draft) : sentence}
      </p>
      {draft === undefined || conflict ? null : (
        <>
          <Target main disabled={isSaving.value} testId="save" onPress={onSave}>
            {saveWords.save(draft.base.version + 1)}
          </Target>
          <Target onPress={drop}>{saveWords.drop}</Target>
        </>
      )}
      {draft === undefined && dropped !== null && sentence === saveWords.dropped ? (
        <Target onPress={takeBack}>{saveWords.takeBack}</Target>
      ) : null}
    </div>
  );
}

const standing = (draft: Draft<Versioned, unknown> | undefined): string => {
  if (draft === undefined) return '';
  return draft.base.version === 0 ? saveWords.newNote : saveWords.unsaved;
};
