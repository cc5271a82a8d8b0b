import { useEffect, useRef } from 'preact/hooks';
import type { Cement } from '../../../shared/cure/cement.ts';
import { cementWords as words } from '../../../shared/words/cements.ts';
import { cements } from '../../cure/cements.ts';
import { viewOnly } from '../../link/daemon.ts';
import { Target } from '../../parts/target.tsx';
import { Conflict } from '../versioned/conflict-note.tsx';
import { SaveBar } from '../versioned/save-bar.tsx';
import { saveOrPointOut } from '../versioned/save-or-point-out.ts';
import { addressOf } from './cement-card.tsx';
import { CementFields } from './cement-fields.tsx';
import { beginFrom, dropUntouched, cementStore as store } from './drafts.ts';
import { placeTexts } from './merge.ts';

/** One cement with its fields, new or old, and what can be done with what was typed. */
export function CementEditor({ id }: { readonly id: string }) {
  const card = useRef<HTMLElement>(null);
  // A new one that is dropped stays here, so that it can be taken up again.
  const last = useRef<Cement | null>(null);
  useEffect(() => () => dropUntouched(id), [id]);
  const cement = store.list().find((one) => one.id === id) ?? last.current;
  last.current = cement;
  if (cement === null)
    return (
      <>
        {cements.value === null ? null : <p role="status">{words.noSuch}</p>}
        <Back />
      </>
    );
  const draft = store.drafts.value[id];
  const newest = draft === undefined ? null : store.newerThan(draft);
  const form = store.formNow(cement);
  const { errors } = store.check(form);
  return (
    <section class="schedule" ref={card} aria-labelledby="cement-title" data-testid="cement-editor">
      <h3 id="cement-title">{titleOf(cement, form.name)}</h3>
      <Back />
      {draft !== undefined && newest !== null ? (
        <Conflict store={store} texts={placeTexts} draft={draft} newest={newest} />
      ) : null}
      <CementFields
        id={id}
        cement={cement}
        form={form}
        errors={errors}
        pointOutAll={store.triedToSave.value.has(id)}
        disabled={viewOnly.value}
        onChange={(changed) => store.type(cement, changed)}
      />
      <SaveBar
        id={id}
        store={store}
        conflict={newest !== null}
        onSave={() => void saveOrPointOut(() => store.save(id), card)}
        testId="cement-said"
      />
      {viewOnly.value || draft !== undefined || cement.version === 0 ? null : <Copy cement={cement} />}
    </section>
  );
}

const titleOf = ({ version }: Cement, name: string): string => {
  if (name.trim() !== '') return name;
  return version === 0 ? words.newTitle : words.unnamed;
};

const Back = () => (
  <p>
    <a class="way" href="#setup/cements">
      {words.back}
    </a>
  </p>
);

const Copy = ({ cement }: { readonly cement: Cement }) => (
  <div class="copy">
    <Target
      testId="copy-cement"
      onPress={() => {
        location.hash = addressOf(beginFrom(cement));
      }}
    >
      {words.copy}
    </Target>
    <p class="quiet">{words.copyMeans}</p>
  </div>
);
