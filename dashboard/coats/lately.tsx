import type { ComponentChildren } from 'preact';
import type { EndedAnswer, StartedAnswer } from '../../shared/messages/cure.ts';
import { benchWords, coatWords, coatCommandWords as commands } from '../../shared/words/coats.ts';
import { coatsNowMs } from '../cure/clock.ts';
import { outbox } from '../link/commands.ts';
import { viewOnly } from '../link/daemon.ts';
import { clockTime } from '../parts/clock-time.ts';
import { Opening } from '../parts/opening.tsx';
import { useSettled } from '../parts/settled.ts';
import { Target } from '../parts/target.tsx';
import { listText } from './coat-text.ts';
import { coatsRead } from './coats.ts';
import { takeBackSaid } from './say.ts';
import { isTakenBack } from './taps.ts';
import './coats.css';

/** More that were ended stand behind one press. */
const MOST_ENDED = 3;

/** What was said of coats lately and has no card to be taken back on: they were started just now, or are gone. */
export function Lately({ piece }: { /** Null: of every piece. */ readonly piece: string | null }) {
  const nowMs = coatsNowMs.value;
  if (coatsRead.value === null || nowMs === null) return null;
  const isOwn = (one: { readonly piece: string }): boolean => piece === null || one.piece === piece;
  const started = coatsRead.value.started.find(isOwn);
  return (
    <>
      {started === undefined || viewOnly.value ? null : <StartedRow {...started} nowMs={nowMs} />}
      <EndedLately ended={coatsRead.value.ended.filter(isOwn)} nowMs={nowMs} />
    </>
  );
}

function StartedRow({
  of,
  cement,
  placeNames,
  startedAt,
  nowMs,
}: StartedAnswer & { readonly nowMs: number }) {
  const words = commands.start(cement, listText(placeNames), clockTime(Date.parse(startedAt), nowMs));
  return (
    <p class="coat-last" data-testid="coat-last">
      <span>{coatWords.saidLast(words)}</span> <TakeBack of={of} words={words} place={0} />
    </p>
  );
}

interface EndedProps {
  readonly ended: readonly EndedAnswer[];
  readonly nowMs: number;
}

function EndedLately({ ended, nowMs }: EndedProps) {
  if (ended.length === 0) return null;
  const rows = (some: readonly EndedAnswer[], from: number): ComponentChildren => (
    <ul class="coat-ended">
      {some.map((one, i) => (
        <EndedRow key={one.of} ended={one} nowMs={nowMs} place={from + i} />
      ))}
    </ul>
  );
  const more = ended.slice(MOST_ENDED);
  return (
    <section class="coat-lately" aria-labelledby="ended-lately-title" data-testid="ended-lately">
      <h3 id="ended-lately-title">{benchWords.ended}</h3>
      {rows(ended.slice(0, MOST_ENDED), 0)}
      {more.length === 0 ? null : (
        <Opening summary={benchWords.more(more.length)}>{() => rows(more, MOST_ENDED)}</Opening>
      )}
    </section>
  );
}

interface EndedRowProps {
  readonly ended: EndedAnswer;
  readonly nowMs: number;
  readonly place: number;
}

function EndedRow({ ended: { of, why, at, cement, placeName }, nowMs, place }: EndedRowProps) {
  const time = clockTime(Date.parse(at), nowMs);
  return (
    <li class="coat-last" data-testid="ended-coat">
      <span>{benchWords.endedAs[why](cement, placeName, time)}</span>{' '}
      {viewOnly.value ? null : <TakeBack of={of} words={commands[why](placeName)} place={place} />}
    </li>
  );
}

interface TakeBackProps {
  /** Id of the command. */
  readonly of: string;
  /** What it said. */
  readonly words: string;
  /** Its place in the list. */
  readonly place: number;
}

function TakeBack({ of, words, place }: TakeBackProps) {
  const counts = useSettled(`${place} ${of}`);
  return (
    <Target
      disabled={isTakenBack(of, outbox.value.waiting)}
      label={coatWords.takeBackOf(words)}
      onPress={() => {
        if (counts()) takeBackSaid(of, words);
      }}
    >
      {coatWords.takeBack}
    </Target>
  );
}
