import type { AirAnswer } from '../../../shared/messages/cure.ts';
import { airTemperature, humidity, airHistoryWords as words } from '../../../shared/words/air.ts';
import { timeTicks } from '../../chart/ticks.ts';
import { Opening } from '../../parts/opening.tsx';
import { unit } from '../../parts/unit.ts';
import { Plot, type Upright } from '../../plot/plot.tsx';
import { plainTicks, scaleOf } from '../../plot/scale.ts';
import { type Bounds, boundsOf, DAY_MS, drawnOf, gapsOf, hoursOf } from './history-layout.ts';
import { hourStart, hourText } from './hour.ts';

interface HistoryProps {
  readonly history: AirAnswer['history'];
  /** The daemon's time. */
  readonly nowMs: number;
}

/** The air of the last 24 hours: drawn, with its gaps, and as a table. */
export function History({ history, nowMs }: HistoryProps) {
  return (
    <section class="air-history" aria-label={words.title} data-testid="air-history">
      <h3>{words.title}</h3>
      {history.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <>
          <div class="air-plots">
            <OneDrawn
              history={history}
              nowMs={nowMs}
              what={words.temperature}
              valueOf={({ airC }) => airC}
              text={(c) => airTemperature(c, unit.value)}
            />
            <OneDrawn
              history={history}
              nowMs={nowMs}
              what={words.humidity}
              valueOf={({ rhPct }) => rhPct}
              text={humidity}
              upright={percents}
            />
          </div>
          <ul>
            {gapTexts(history, nowMs).map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <Opening summary={words.table} testId="air-table">
            {() => <Table history={history} nowMs={nowMs} />}
          </Opening>
        </>
      )}
    </section>
  );
}

const gapTexts = (history: AirAnswer['history'], nowMs: number): readonly string[] =>
  gapsOf(history, nowMs).map(({ fromMs, toMs }) => words.gap(hourText(fromMs), hourText(toMs)));

const MOST_TICKS = 6;
/** Room over and under what is drawn, as a share of it. */
const ROOM = 0.15;

const percents: Upright = { ticks: (scale) => plainTicks(scale, MOST_TICKS), text: String, sign: '%' };

interface OneDrawnProps extends HistoryProps {
  readonly what: string;
  readonly valueOf: (told: AirAnswer['history'][number]) => number | null;
  readonly text: (value: number) => string;
  readonly upright?: Upright;
}

function OneDrawn({ history, nowMs, what, valueOf, text, upright }: OneDrawnProps) {
  const bounds = boundsOf(history.map(valueOf));
  if (bounds === null) return null;
  const xScale = { from: nowMs - DAY_MS, to: nowMs };
  const yScale = scaleOf([bounds.low, bounds.high], ROOM);
  if (yScale === null) return null;
  const { lines, dots } = drawnOf(history, valueOf);
  const hours = timeTicks({ fromMs: xScale.from, toMs: xScale.to }, MOST_TICKS, hourStart(nowMs));
  return (
    <Plot
      testId="air-drawn"
      label={[words.drawn(what, text(bounds.low), text(bounds.high)), ...gapTexts(history, nowMs)].join(' ')}
      xScale={xScale}
      yScale={yScale}
      xName={words.time}
      xText={hourText}
      xTicks={hours.at}
      lines={lines.map((points) => ({ kind: 'plate', points }))}
      levels={[]}
      dots={dots.map((dot) => ({ ...dot, low: dot.y, high: dot.y }))}
      legend={[
        { kind: 'none', text: what },
        ...(lines.length === 0 ? [] : [{ kind: 'plate' as const, text: words.byProbe }]),
        ...(dots.length === 0 ? [] : [{ kind: 'none' as const, text: words.dots }]),
      ]}
      {...(upright === undefined ? {} : { upright })}
    />
  );
}

const Table = ({ history, nowMs }: HistoryProps) => (
  <table class="air-table">
    <caption>{words.caption}</caption>
    <thead>
      <tr>
        <th scope="col">{words.hour}</th>
        <th scope="col">{words.temperature}</th>
        <th scope="col">{words.humidity}</th>
      </tr>
    </thead>
    <tbody>
      {hoursOf(history, nowMs, hourStart).map(({ fromMs, airC, rhPct }) => (
        <tr key={fromMs}>
          <th scope="row">{hourText(fromMs)}</th>
          <td>{boundsText(airC, (c) => airTemperature(c, unit.value))}</td>
          <td>{boundsText(rhPct, humidity)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const boundsText = (bounds: Bounds | null, text: (value: number) => string): string =>
  bounds === null ? words.nothing : words.between(text(bounds.low), text(bounds.high));
