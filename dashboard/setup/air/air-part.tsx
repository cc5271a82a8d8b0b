import { useEffect } from 'preact/hooks';
import type { AirAnswer } from '../../../shared/messages/cure.ts';
import {
  airDifference,
  airHowWords,
  airLineWords,
  airProbeWords,
  airTemperature,
  humidity,
  airPartWords as words,
} from '../../../shared/words/air.ts';
import { air, airAgo, airTrouble, followAir } from '../../cure/air.ts';
import { AirNotes } from '../../cure/air-notes.tsx';
import { minuteMs } from '../../cure/clock.ts';
import { ConcernNotes } from '../../cure/concern-notes.tsx';
import { viewOnly } from '../../link/daemon.ts';
import { Note } from '../../parts/note.tsx';
import { unit } from '../../parts/unit.ts';
import { AirProbes } from './air-probes.tsx';
import { ForecastForm } from './forecast-form.tsx';
import { History } from './history.tsx';
import { TypedAir } from './typed-air.tsx';
import './air.css';

/** The air of the shop: as it is, typed in, as it is expected, and as it was. */
export function AirPart() {
  useEffect(followAir, []);
  const answer = air.value;
  const atMs = minuteMs.value;
  return (
    <>
      {airTrouble.value === '' ? null : <p role="status">{words.notRead(airTrouble.value)}</p>}
      {answer === null ? (
        <p role="status">{words.reading}</p>
      ) : (
        <div class="air">
          <div class="air-first">
            <Now now={answer.now} />
            <AirNotes {...answer} />
            {answer.now === null ? null : <Concerns concerns={answer.concerns} />}
            {answer.probes.length === 0 ? null : <AirProbes {...answer} />}
          </div>
          {viewOnly.value ? null : <TypedAir />}
          {atMs === null ? null : <History history={answer.history} nowMs={atMs} />}
          {atMs === null ? null : <ForecastForm forecast={answer.forecast} nowMs={atMs} />}
          {answer.now?.how === 'probe' || answer.probes.length > 0 ? null : <NoProbe />}
        </div>
      )}
    </>
  );
}

function Now({ now }: Pick<AirAnswer, 'now'>) {
  if (now === null)
    return (
      <section class="air-now" aria-label={words.now} data-testid="air-now">
        <h3>{words.now}</h3>
        <p>{words.noneYet}</p>
      </section>
    );
  const { airC, rhPct, dewPointC, marginK, how, probe, old } = now;
  return (
    <section class="air-now" aria-label={words.now} data-testid="air-now">
      <h3>{words.now}</h3>
      <p class="reading">
        {airTemperature(airC, unit.value)},{' '}
        {rhPct === null ? airLineWords.noHumidity : airLineWords.humidity(humidity(rhPct))}
      </p>
      <dl class="facts">
        <dt>{words.dewPoint}</dt>
        <dd>
          {dewPointC === null || marginK === null
            ? words.dewPointUnknown
            : words.dewPointIs(airTemperature(dewPointC, unit.value), airDifference(marginK, unit.value))}
        </dd>
        <dt>{words.known}</dt>
        <dd>
          <Known how={how === 'probe' && probe !== '' ? words.byProbe(probe) : airHowWords[how]} />
        </dd>
      </dl>
      {old ? (
        <Note hatch="missing">
          <p>{airLineWords.old}</p>
        </Note>
      ) : null}
    </section>
  );
}

/** How it is known, and how long ago it was told. */
const Known = ({ how }: { readonly how: string }) => <>{airLineWords.told(how, airAgo.value)}</>;

const Concerns = ({ concerns }: Pick<AirAnswer, 'concerns'>) => (
  <section class="air-concerns" aria-label={words.concerns} data-testid="air-concerns">
    {concerns.length === 0 ? <p>{words.noConcern}</p> : null}
    <ConcernNotes concerns={concerns} />
    <p class="quiet">{words.concernsMean}</p>
  </section>
);

/** What to do where no probe tells the air. */
const NoProbe = () => (
  <section class="air-form" aria-label={airProbeWords.title} data-testid="no-air-probe">
    <h3>{airProbeWords.title}</h3>
    <p>{airProbeWords.means}</p>
    <p>
      <code>{airProbeWords.line}</code>
    </p>
    <p>
      {airProbeWords.hang} {airProbeWords.more}
    </p>
  </section>
);
