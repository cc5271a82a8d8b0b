import { coatsNowMs } from '../cure/clock.ts';
import { benchWords } from '../../shared/words/coats.ts';
import { CoatCard } from '../coats/coat-card.tsx';
import { headline } from '../coats/coat-text.ts';
import { coats, coatsRead, coatsTrouble } from '../coats/coats.ts';
import { lengthText } from '../parts/length.ts';
import { TakeBackLast } from '../coats/take-back.tsx';
import { isLive, viewOnly } from '../link/daemon.ts';
import { Note } from '../parts/note.tsx';
import { dayAndTime } from '../parts/day.ts';
import { AirLine } from './air-line.tsx';
import { StartCoats } from './start-coats.tsx';
import './bench.css';

/** What dries, what may be ready, what comes next, the shop's air, and where coats are started. */
export const BenchPage = () => (
  <div class="bench" data-testid="bench">
    <Coats />
    <AirLine />
    {viewOnly.value ? null : <StartCoats />}
  </div>
);

function Coats() {
  const nowMs = coatsNowMs.value;
  if (coatsRead.value === null || nowMs === null) return <NotRead />;
  const { now, next } = headline(coats.value, nowMs);
  return (
    <>
      <div class="bench-head">
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
          {coats.value.map((coat) => (
            <CoatCard key={coat.id} coat={coat} nowMs={nowMs} />
          ))}
        </ul>
      )}
      <TakeBackLast />
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

/** What the times can't be trusted for: a clock that was set, coats that can't be read any more. */
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
              {amiss.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </div>
        </Note>
      )}
    </>
  );
}
