import { useState } from 'preact/hooks';
import type { Session } from '../../shared/messages/sessions.ts';
import type { Trace } from '../../shared/messages/trace.ts';
import { itemWords, recordWords, traceWords } from '../../shared/words/records.ts';
import { Note } from '../parts/note.tsx';
import { sessionTimes } from '../parts/session-times.ts';
import { chosenMoment, items, sessions } from './book.ts';
import { Facts } from './facts.tsx';
import { ItemList } from './items.tsx';
import { WatchedTag } from './session-list.tsx';
import { TraceView } from './trace-view.tsx';
import { Verify } from './verify.tsx';

/** One session: its trace, its findings, what is known of it, and whether it still is what was sealed. */
export function SessionView({ id }: { readonly id: string }) {
  const all = sessions.value.kind === 'there' ? sessions.value.value : [];
  const session = all.find((one) => one.id === id);
  return (
    <>
      <div class="choice-row">
        <a class="target" href="#records">
          {recordWords.back}
        </a>
      </div>
      {session === undefined ? <Unknown /> : <Known session={session} all={all} />}
    </>
  );
}

/** Not read yet, or not in the book: an address may have been kept from another machine. */
const Unknown = () => (
  <p role="status" data-testid="session-unknown">
    {sessions.value.kind === 'there' ? recordWords.noSuchSession : recordWords.loading}
  </p>
);

interface KnownProps {
  readonly session: Session;
  readonly all: readonly Session[];
}

function Known({ session, all }: KnownProps) {
  const [trace, setTrace] = useState<Trace | null>(null);
  const mine =
    items.value.kind === 'there' ? items.value.value.filter((item) => item.session === session.id) : [];
  const times = sessionTimes(session.zone);
  const startUtcMs = Date.parse(session.startedAt);
  return (
    <>
      <p class="session-title">
        {session.iron.name}, {times.dateTime(startUtcMs)} <WatchedTag session={session} />
      </p>
      {session.endedAt === null ? <Note hatch="working">{traceWords.follows}</Note> : null}
      {trace === null || trace.broken === null ? null : (
        <Note hatch="missing" testId="trace-broken">
          {traceWords.broken(times.time(startUtcMs + trace.broken.atMs), trace.broken.what)}
        </Note>
      )}
      {mine.length === 0 ? null : (
        <section aria-label={itemWords.title}>
          <ItemList items={mine} />
        </section>
      )}
      <TraceView session={session} atMs={chosenMoment.value} told={setTrace} />
      <Facts session={session} all={all} trace={trace} />
      <Verify session={session} />
    </>
  );
}
