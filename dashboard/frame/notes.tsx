import { computed } from '@preact/signals';
import { isConfirmed } from '../../shared/heat/schedule.ts';
import type { ProbeLive } from '../../shared/messages/live.ts';
import { placeWords } from '../../shared/words/checks.ts';
import { linkWords, noteWords, pageWords } from '../../shared/words/page.ts';
import { leadIron } from '../iron/irons.ts';
import { live, situation, unreadable, viewOnly } from '../link/daemon.ts';
import { Note } from '../parts/note.tsx';
import { Target } from '../parts/target.tsx';
import { unitKept } from '../parts/unit.ts';
import { UnitQuestions } from '../setup/unit-question-note.tsx';
import { ownVersion, staleFor } from './age.ts';
import { view } from './nav-view.ts';

/** What holds for the whole page and has to be known while working. */
export function Notes() {
  const keeping = situation.value?.keeping;
  const schedule = leadIron.value?.schedule;
  return (
    <div class="notes" role="region" aria-label={pageWords.notes}>
      {keeping?.kept === false ? (
        <Note hatch="missing" testId="not-kept">
          <strong>{noteWords.notKept(keeping.detail)}</strong>
        </Note>
      ) : null}
      {viewOnly.value ? (
        <Note hatch="know" testId="view-only">
          {noteWords.viewOnly}
        </Note>
      ) : null}
      {schedule === undefined || isConfirmed(schedule) ? null : (
        <Note hatch="know" testId="unconfirmed">
          {noteWords.unconfirmed(schedule.name)}{' '}
          {viewOnly.value || view.value === 'setup' ? null : (
            <a class="way" href="#setup/schedules">
              {noteWords.toSource}
            </a>
          )}
        </Note>
      )}
      <NotTold />
      <UnitQuestions />
      {unitKept.value ? null : (
        <Note hatch="know" testId="storage-refused">
          {noteWords.storageRefused}
        </Note>
      )}
      <PageTrouble />
    </div>
  );
}

const none: readonly ProbeLive[] = [];

/** Probes that were moved and whose place nobody has told since. */
const moved = computed(() => {
  const found = live.value?.probes.filter(({ seat }) => seat === 'not-told') ?? none;
  return found.length === 0 ? none : found;
});

/** No plate goes unwatched unsaid: of a probe that was moved, on whatever page. */
const NotTold = () => (
  <>
    {moved.value.map(({ id, label, iron }) => (
      <Note key={id} hatch="missing" testId="place-not-told">
        <strong>{placeWords.note(label, nameOf(iron))}</strong>{' '}
        {viewOnly.value || view.value === 'setup' ? null : (
          <a class="way" href="#setup/irons">
            {placeWords.toPlace}
          </a>
        )}
      </Note>
    ))}
  </>
);

const nameOf = (iron: string): string => situation.value?.irons.find((one) => one.id === iron)?.name ?? iron;

function PageTrouble() {
  const stale = staleFor.value;
  if (stale === null && !unreadable.value) return null;
  return (
    <Note hatch="missing" testId="older-page">
      {stale === null ? linkWords.garbled : noteWords.olderPage(ownVersion, stale)}{' '}
      <Target onPress={() => location.reload()}>{noteWords.reload}</Target>
    </Note>
  );
}
