import { useEffect, useRef } from 'preact/hooks';
import type { Cement } from '../../../shared/cure/cement.ts';
import { cementWords as words } from '../../../shared/words/cements.ts';
import { cements, cementsTrouble, followCements } from '../../cure/cements.ts';
import { detail } from '../../frame/nav-view.ts';
import { viewOnly } from '../../link/daemon.ts';
import { useFocusKept } from '../../parts/focus-kept.ts';
import { Opening } from '../../parts/opening.tsx';
import { Target } from '../../parts/target.tsx';
import { addressOf, CementCard } from './cement-card.tsx';
import { CementEditor } from './cement-editor.tsx';
import { beginNew, cementStore } from './drafts.ts';
import './cement.css';

/** Cements: all of them, or one with its fields. */
export function CementsPart() {
  useEffect(followCements, []);
  const id = decodeURIComponent(detail.value);
  return (
    <>
      {cementsTrouble.value === '' ? null : <p role="status">{words.notRead(cementsTrouble.value)}</p>}
      {cements.value === null ? <p role="status">{words.reading}</p> : null}
      {id !== '' ? <CementEditor key={id} id={id} /> : <List />}
    </>
  );
}

function List() {
  const all = cementStore.list();
  const begun = all.filter(({ version }) => version === 0);
  const there = all.filter(({ version }) => version > 0);
  const away = there.filter(({ archived }) => archived);
  const first = useRef<HTMLParagraphElement>(null);
  const awayTo = useRef<HTMLElement>(null);
  useFocusKept(away.map(({ id }) => id).join(' '), awayTo, first);
  return (
    <>
      <p class="quiet" ref={first} tabIndex={-1}>
        {words.instructionsDecide}
      </p>
      {cements.value?.length === 0 ? (
        <div class="nothing">
          <h3>{words.none}</h3>
          <p>{words.noneMeans}</p>
        </div>
      ) : null}
      {viewOnly.value ? null : (
        <div class="choice-row">
          <Target
            main
            testId="new-cement"
            onPress={() => {
              location.hash = addressOf(beginNew());
            }}
          >
            {words.add}
          </Target>
        </div>
      )}
      {begun.length === 0 ? null : (
        <ul class="begun">
          {begun.map(({ id }) => (
            <li key={id}>
              <a class="target" href={addressOf(id)}>
                {words.begun(nameOf(id))}
              </a>
            </li>
          ))}
        </ul>
      )}
      <Cards cements={there.filter(({ archived }) => !archived)} />
      {away.length === 0 ? null : (
        <Opening summary={words.archived(away.length)} testId="cements-away" summaryRef={awayTo}>
          {() => <Cards cements={away} />}
        </Opening>
      )}
    </>
  );
}

const nameOf = (id: string): string => {
  const name = cementStore.drafts.value[id]?.form.name.trim() ?? '';
  return name === '' ? words.unnamed : name;
};

const Cards = ({ cements }: { readonly cements: readonly Cement[] }) => (
  <div class="cards">
    {cements.map((cement) => (
      <CementCard key={cement.id} cement={cement} />
    ))}
  </div>
);
