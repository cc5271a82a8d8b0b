import { computed, effect } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { recordWords } from '../../shared/words/records.ts';
import { situation } from '../link/daemon.ts';
import { Note } from '../parts/note.tsx';
import { Target } from '../parts/target.tsx';
import { chosenSession, readItems, readSessions, sessions } from './book.ts';
import { ItemsOpen } from './items.tsx';
import { SessionList } from './session-list.tsx';
import { SessionView } from './session-view.tsx';
import './records.css';

/** What was recorded: open items, the sessions, and one of them with its trace. */
export function RecordsPage() {
  useEffect(followSessions, []);
  const chosen = chosenSession.value;
  return (
    <div class="records" data-testid="records">
      <h2 class="records-title">{recordWords.title}</h2>
      {chosen === null ? <All /> : <SessionView key={chosen} id={chosen} />}
    </div>
  );
}

const All = () => (
  <>
    <ItemsOpen />
    <Sessions />
  </>
);

function Sessions() {
  const read = sessions.value;
  if (read.kind === 'loading') return <p role="status">{recordWords.loading}</p>;
  if (read.kind === 'failed') return <Failed why={read.why} />;
  return <SessionList sessions={read.value} />;
}

const Failed = ({ why }: { readonly why: string }) => (
  <Note hatch="missing" testId="records-failed">
    {recordWords.failed(why)} <Target onPress={() => void readSessions()}>{recordWords.again}</Target>
  </Note>
);

/** The sessions that run; changes only when one begins or ends, not with every reading. */
const running = computed(() => {
  const irons = situation.value?.irons ?? [];
  return JSON.stringify(irons.map((iron) => iron.session));
});

/** Reads the sessions again whenever one begins or ends, for as long as they are shown. */
function followSessions(): () => void {
  void readItems();
  return effect(() => {
    if (running.value !== '') void readSessions();
  });
}
