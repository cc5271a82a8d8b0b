import type { CheckLive, IronLive } from '../../../shared/messages/live.ts';
import {
  checkWords,
  placeWords,
  seatWords,
  typedWords,
  watchedMeans,
  watchedWords,
} from '../../../shared/words/checks.ts';
import { pageWords } from '../../../shared/words/page.ts';
import { safetyWords } from '../../../shared/words/safety.ts';
import { ironWords } from '../../../shared/words/standing.ts';
import { difference, figure, temperature, unit } from '../../parts/unit.ts';
import { HotWord } from '../hot-word.tsx';
import type { IronView } from '../plate.ts';
import { ageText, momentC, momentText } from './moment-text.ts';
import './moments.css';

interface MomentsProps {
  readonly view: IronView;
  /** What was read (`head`), what else there is to say of it (`more`), or both; left out: both. */
  readonly part?: 'head' | 'more' | undefined;
}

/** An iron that is not read all the time: what was read last, how long ago, and what is only supposed since. */
export function Moments({ view, part }: MomentsProps) {
  const { watched } = view.iron;
  if (part === 'more')
    return (
      <div class="moment">
        <More view={view} />
      </div>
    );
  return (
    <div class="moment" data-testid="moment" data-watched={watched}>
      <Head view={view} />
      {part === 'head' ? null : <More view={view} />}
    </div>
  );
}

function Head({ view }: { readonly view: IronView }) {
  const { iron } = view;
  const [plate] = view.plates;
  return (
    <>
      <p class="moment-kind">
        <span class="tag">{watchedWords[iron.watched]}</span>
        {iron.simulated ? <span class="tag">{pageWords.simulated}</span> : null}
      </p>
      {plate.view.kind === 'lost' ? (
        <p class="moment-figure">{ironWords.noReading}</p>
      ) : (
        <Value iron={iron} />
      )}
      {view.hot ? (
        <p class="figure-hot">
          <HotWord /> {isLying(iron) ? safetyWords.hotMeasured : safetyWords.hotUnmeasured}
        </p>
      ) : null}
    </>
  );
}

const More = ({ view: { iron, plates } }: { readonly view: IronView }) => (
  <>
    {plates[0].view.kind === 'lost' ? null : <Since iron={iron} />}
    <p class="quiet">{watchedMeans[iron.watched]}</p>
  </>
);

/** Whether it lies on its check pad: then there is something better than a chart. */
const isLying = ({ check }: IronLive): boolean => check?.pad === 'settling' || check?.pad === 'settled';

/** The value with its age; smaller than a live one, and in a frame, so that it passes for none. */
function Value({ iron }: { readonly iron: IronLive }) {
  const valueC = momentC(iron);
  const guardBandK = iron.watched === 'checked' ? iron.check?.last?.guardBandK : iron.typed?.guardBandK;
  return (
    <>
      <p class="moment-figure">
        {valueC === null ? null : (
          <span class="moment-value" data-testid="moment-value">
            {figure(valueC)}
            <span class="other-unit">°{unit.value}</span>
          </span>
        )}
        <span class="moment-age" data-testid="moment-age">
          {momentText(iron)}
        </span>
      </p>
      {guardBandK === undefined || valueC === null ? null : (
        <p class="figure-allowance">
          ±{difference(guardBandK)}
          {isLying(iron) ? '' : ` · ${checkWords.notLive}`}
        </p>
      )}
    </>
  );
}

function Since({ iron }: { readonly iron: IronLive }) {
  return (
    <>
      {iron.check === null ? null : <PadNow check={iron.check} />}
      {iron.watched === 'typed' && iron.typed === null ? <p>{typedWords.noneMeans}</p> : null}
      <ByChart iron={iron} />
    </>
  );
}

function PadNow({ check: { pad, padC, last, missed } }: { readonly check: CheckLive }) {
  return (
    <>
      {pad === 'settling' ? (
        <p class="moment-now" data-testid="settling">
          <strong>{checkWords.settling}</strong>{' '}
          {padC === null ? null : checkWords.settlingAt(temperature(padC))}
        </p>
      ) : null}
      {pad === 'silent' ? <p class="moment-now">{checkWords.silent}</p> : null}
      {missed === null || pad === 'settling' ? null : (
        <p class="moment-now" data-testid="missed">
          {checkWords[missed.ended === 'lifted' ? 'missedAgo' : 'lostAgo'](
            temperature(missed.atLeastC),
            ageText(missed.ageMs),
          )}
        </p>
      )}
      {last === null ? (
        pad === 'bare' && missed === null ? (
          <p>{checkWords.noneMeans}</p>
        ) : null
      ) : last.plateC - last.lowestC < SWING_K ? null : (
        <p>{checkWords.hottest(figure(last.lowestC), temperature(last.plateC))}</p>
      )}
    </>
  );
}

/** A check that swung by less than this needs no word of it, K. */
const SWING_K = 3;

/** What the dial chart says, which is no reading and looks like none. */
function ByChart({ iron }: { readonly iron: IronLive }) {
  const { chart, watched } = iron;
  if (watched === 'monitored' || watched === 'not-told' || isLying(iron)) return null;
  if (chart === null) return <p class="quiet">{checkWords.noChart}</p>;
  return (
    <p class="moment-chart" data-testid="by-chart">
      {checkWords.chart(String(chart.mark), temperature(chart.meanC))}
      {chart.peakC === null ? '' : checkWords.chartPeaks(temperature(chart.peakC))}.
    </p>
  );
}

/** What a probe reads whose place was not told, or that is loose: small, and marked as not counted. */
export const NotCounted = ({
  seat,
  readC,
}: {
  readonly seat: 'loose' | 'not-told';
  readonly readC: number | null;
}) => (
  <p class="moment-now" data-testid="not-counted">
    <strong>{seatWords[seat]}</strong>
    {'. '}
    {readC === null ? ironWords.noReading : placeWords.reads(temperature(readC))}
  </p>
);
