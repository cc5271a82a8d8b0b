import type { Cement } from '../../../shared/cure/cement.ts';
import { cementFactWords, cementWords } from '../../../shared/words/cements.ts';
import { isExpired } from '../../cure/cements.ts';
import { today } from '../../cure/clock.ts';
import { viewOnly } from '../../link/daemon.ts';
import { calendarDay } from '../../parts/day.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { unit } from '../../parts/unit.ts';
import { cementStore, putAway } from './drafts.ts';
import { factsOf } from './facts-text.ts';
import { LearnedPart } from './learned-part.tsx';

export const addressOf = (id: string): string => `#setup/cements/${encodeURIComponent(id)}`;

/** One cement: what stands of it, what was learned, and the way to change it. */
export function CementCard({ cement }: { readonly cement: Cement }) {
  const { id, name, archived } = cement;
  const isTyped = cementStore.drafts.value[id] !== undefined;
  const label = viewOnly.value ? cementWords.lookAt(name) : cementWords.changeOf(name);
  return (
    <section class="card" aria-label={name} data-testid="cement" data-id={id}>
      <h3>{name}</h3>
      {archived ? <p>{cementWords.isAway}</p> : null}
      <Doubts cement={cement} />
      <dl class="facts">
        {factsOf(cement, unit.value).map((fact) => (
          <div key={fact.name} class="fact">
            <dt>{fact.name}</dt>
            <dd>{fact.text}</dd>
          </div>
        ))}
      </dl>
      <LearnedPart cement={cement} />
      {isTyped ? <p>{cementWords.notSaved}</p> : null}
      <div class="choice-row">
        <a class="target" href={addressOf(id)} aria-label={label}>
          {viewOnly.value ? cementWords.look : cementWords.change}
        </a>
        {viewOnly.value || isTyped ? null : (
          <Target
            label={archived ? cementWords.unarchiveOf(name) : cementWords.archiveOf(name)}
            onPress={() => {
              // Not disabled meanwhile: that would lose the focus.
              if (!cementStore.isSaving.peek()) void putAway(cement, !archived);
            }}
          >
            {archived ? cementWords.unarchive : cementWords.archive}
          </Target>
        )}
      </div>
      <p role="status" data-testid="cement-card-said">
        {cementStore.said.value[id] ?? ''}
      </p>
    </section>
  );
}

/** What speaks against trusting what stands here: its day is past, nobody has said where it comes from. */
const Doubts = ({ cement }: { readonly cement: Cement }) => (
  <>
    {isExpired(cement, today.value) ? (
      <Note hatch="act-soon" testId="cement-expired">
        <strong>{cementFactWords.expired(calendarDay(cement.expiresOn ?? ''))}</strong>
      </Note>
    ) : null}
    {cement.source === null ? (
      <Note hatch="know" testId="cement-unconfirmed">
        <p>{cementWords.unconfirmedShort}</p>
      </Note>
    ) : null}
  </>
);
