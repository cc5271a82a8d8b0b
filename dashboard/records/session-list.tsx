import { useState } from 'preact/hooks';
import type { Session } from '../../shared/messages/sessions.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { watchedWords } from '../../shared/words/checks.ts';
import { pageWords } from '../../shared/words/page.ts';
import { itemWords, recordWords } from '../../shared/words/records.ts';
import { Hatch, type HatchName } from '../parts/hatch.tsx';
import { sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';
import { temperature } from '../parts/unit.ts';
import { openItems, sessionAddress } from './book.ts';

/** So many are shown at first, and with every press as many more. */
const AT_ONCE = 50;

/** All sessions, newest first. */
export function SessionList({ sessions }: { readonly sessions: readonly Session[] }) {
  const [shown, setShown] = useState(AT_ONCE);
  if (sessions.length === 0)
    return (
      <section class="records-empty" data-testid="no-sessions">
        <p class="records-none">{recordWords.none}</p>
        <p>{recordWords.noneAction}</p>
      </section>
    );
  const left = sessions.length - shown;
  return (
    <section aria-labelledby="sessions-title">
      <h3 id="sessions-title" class="records-part">
        {recordWords.sessions}
      </h3>
      <ul class="sessions">
        {sessions.slice(0, shown).map((session) => (
          <li key={session.id}>
            <Row session={session} all={sessions} />
          </li>
        ))}
      </ul>
      {left > 0 ? (
        <Target onPress={() => setShown(shown + AT_ONCE)}>{recordWords.more(Math.min(left, AT_ONCE))}</Target>
      ) : null}
    </section>
  );
}

const edgeOf = (session: Session): HatchName | null => {
  if (session.endedAt === null) return 'working';
  return session.endedBecause === 'interrupted' ? 'missing' : null;
};

interface RowProps {
  readonly session: Session;
  readonly all: readonly Session[];
}

function Row({ session, all }: RowProps) {
  const { id, iron, startedAt, lengthMs, peakC, zone } = session;
  const when = sessionTimes(zone).dateTime(Date.parse(startedAt));
  const edge = edgeOf(session);
  return (
    <a class="session" data-testid="session" data-id={id} href={sessionAddress(id)}>
      <span class="session-edge">{edge === null ? null : <Hatch name={edge} />}</span>
      <span class="session-when">{when}</span>
      <span class="session-iron">{iron.name}</span>
      <span class="session-length">{formatDuration(lengthMs)}</span>
      <span class="session-peak">
        {peakC === null ? recordWords.noPeak : recordWords.peak(temperature(peakC))}
      </span>
      <span class="session-tags">
        <Tags session={session} all={all} />
      </span>
    </a>
  );
}

function Tags({ session, all }: RowProps) {
  const suspect = openItems.value.filter((item) => item.session === session.id).length;
  return (
    <>
      {session.endedAt === null ? <b class="tag">{recordWords.running}</b> : null}
      {session.endedBecause === 'interrupted' ? <span class="tag">{recordWords.interrupted}</span> : null}
      {suspect > 0 ? <b class="tag">{itemWords.title.toLowerCase()}</b> : null}
      <WatchedTag session={session} />
      {session.simulated ? <span class="tag">{pageWords.simulated}</span> : null}
      {session.continues === null ? null : <span>{continuesText(session.continues, all)}</span>}
    </>
  );
}

/** Temperatures of a session that no probe on the plate stands behind are never shown without that being said. */
export const WatchedTag = ({ session: { watched } }: { readonly session: Session }) =>
  watched === 'monitored' ? null : (
    <span class="tag" data-testid="session-watched">
      {watchedWords[watched]}
    </span>
  );

/** Which session is gone on with, by its time where it is known. */
export function continuesText(id: string, all: readonly Session[]): string {
  const before = all.find((one) => one.id === id);
  if (before === undefined) return recordWords.continuesUnknown(id);
  return recordWords.continues(sessionTimes(before.zone).dateTime(Date.parse(before.startedAt)));
}
