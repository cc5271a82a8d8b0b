import { computed } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { benchWords, coatWords } from '../../shared/words/coats.ts';
import { canAcknowledge } from '../alarms/answer.ts';
import { CoatCard } from '../coats/coat-card.tsx';
import { headline } from '../coats/coat-text.ts';
import { coats, coatsRead, coatsTrouble } from '../coats/coats.ts';
import { fireCoats } from '../coats/fire-question.tsx';
import { Lately } from '../coats/lately.tsx';
import { listedCoats } from '../coats/order.ts';
import { endAmiss } from '../coats/say.ts';
import { followCements } from '../cure/cements.ts';
import { coatsNowMs } from '../cure/clock.ts';
import { alarms, isLive, viewOnly } from '../link/daemon.ts';
import { dayAndTime } from '../parts/day.ts';
import { lengthText } from '../parts/length.ts';
import { Note } from '../parts/note.tsx';
import { useSettled } from '../parts/settled.ts';
import { Target } from '../parts/target.tsx';
import { AirLine } from './air-line.tsx';
import { StartCoats } from './start-coats.tsx';
import './bench.css';

/** What dries, what may be ready, what comes next, the shop's air, and where coats are started. */
export function BenchPage() {
  useEffect(followCements, []);
  return (
    <div class="bench" data-testid="bench">
      <Coats />
      <AirLine />
      {viewOnly.value ? null : <StartCoats />}
    </div>
  );
}

/** While something stands over everything the line at the top makes room: the cards beneath it are what is worked with. */
const isBrief = computed(() => fireCoats.value.length > 0 || alarms.value.some(canAcknowledge));

function Coats() {
  const nowMs = coatsNowMs.value;
  if (coatsRead.value === null || nowMs === null) return <NotRead />;
  const { now, next } = headline(coats.value, nowMs);
  return (
    <>
      <div class={isBrief.value ? 'bench-head bench-head--brief' : 'bench-head'}>
        <h2 class="sentence" data-testid="bench-now">
          <strong>{now}</strong>
        </h2>
        {next === '' ? null : (
          <p class="bench-next" data-testid="bench-next">
            {next}
          </p>
        )}
        {coats.value.length > 0 ? null : <p class="bench-means">{benchWords.noneMeans}</p>}
        {isLive.value ? null : <p class="quiet">{benchWords.asItWas}</p>}
      </div>
      <Doubts />
      {coats.value.length === 0 ? null : (
        <ul class="coats" aria-label={benchWords.coats}>
          {listedCoats.value.map((coat, i) => (
            <CoatCard key={coat.id} coat={coat} nowMs={nowMs} place={i} />
          ))}
        </ul>
      )}
      <Lately piece={null} />
    </>
  );
}

const NotRead = () =>
  coatsTrouble.value === '' || !isLive.value ? (
    <p role="status">{benchWords.reading}</p>
  ) : (
    <Note hatch="missing" testId="coats-failed">
      {benchWords.notRead(coatsTrouble.value)}
    </Note>
  );

/** What the times can't be trusted for: a clock that was set, coats of cements that are gone. */
function Doubts() {
  const clock = coatsRead.value?.clock ?? null;
  const amiss = coatsRead.value?.amiss ?? [];
  return (
    <>
      {clock === null ? null : (
        <Note hatch="missing" testId="coats-clock">
          {benchWords.clock[clock.while](lengthText(Math.abs(clock.byMs)), dayAndTime(clock.at))}
        </Note>
      )}
      {amiss.length === 0 ? null : (
        <Note hatch="missing" testId="coats-amiss">
          <div>
            <strong>{benchWords.amiss}</strong>
            <ul>
              {amiss.map(({ coat, text }, i) => (
                <Amiss key={coat} coat={coat} text={text} place={i} />
              ))}
            </ul>
          </div>
        </Note>
      )}
    </>
  );
}

interface AmissProps {
  readonly coat: string;
  readonly text: string;
  /** Its place in the list. */
  readonly place: number;
}

/** A coat that has no card; all that can be said of it is that one is done with it. */
function Amiss({ coat, text, place }: AmissProps) {
  const counts = useSettled(String(place));
  return (
    <li class="bench-amiss">
      <span>{text}</span>{' '}
      {viewOnly.value ? null : (
        <Target
          label={coatWords.doneOf(text)}
          onPress={() => {
            if (counts()) endAmiss(coat, text);
          }}
        >
          {coatWords.done} <small>{coatWords.doneMeans}</small>
        </Target>
      )}
    </li>
  );
}
