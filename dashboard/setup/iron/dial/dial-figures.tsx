import type { LastLoad, LastStretch, LastWarmUp } from '../../../../shared/iron/dial/kept.ts';
import { formatDuration } from '../../../../shared/units/time.ts';
import { dialSetupWords, dialFigureWords as words } from '../../../../shared/words/dial.ts';
import { dayAndTime } from '../../../parts/day.ts';
import { difference, temperature } from '../../../parts/unit.ts';

/** A figure by its name, with what it means. */
interface Row {
  readonly name: string;
  readonly value: string;
  readonly means?: string;
}

/** The figures of the last stretch on the rest, by the standards' names; what they mean is one touch away. */
export function DialFiguresOf({ last }: { readonly last: LastStretch }) {
  return (
    <Figures
      title={dialSetupWords.figures(String(last.mark), dayAndTime(last.at))}
      rows={stretchRows(last.figures)}
    />
  );
}

/** How far the last spell of work drew the plate down. */
export function DialLoadOf({ load }: { readonly load: LastLoad }) {
  const { meanDropK, troughDropK } = load;
  const lowest = { name: words.loadTrough, value: difference(troughDropK), means: words.loadTroughMeans };
  const mean =
    meanDropK === null ? [] : [{ name: words.load, value: difference(meanDropK), means: words.loadMeans }];
  return (
    <Figures title={dialSetupWords.load(String(load.mark), dayAndTime(load.at))} rows={[...mean, lowest]} />
  );
}

/** How the iron last came up from cold. */
export const DialWarmUpOf = ({ warmUp }: { readonly warmUp: LastWarmUp }) => (
  <Figures
    title={dialSetupWords.warmUp(String(warmUp.mark), dayAndTime(warmUp.at))}
    rows={[
      {
        name: words.heatingUp,
        value: words.from(inSeconds(warmUp.heatingUpS), temperature(warmUp.heatingUpFromC)),
        means: words.heatingUpMeans,
      },
      { name: words.excess, value: difference(warmUp.heatingUpExcessK), means: words.excessMeans },
    ]}
  />
);

const withSpread = (value: string, spread: number | null): string =>
  spread === null ? value : `${value}, ${words.spread(difference(spread))}`;

const inSeconds = (s: number): string => formatDuration(s * 1000);

function stretchRows(figures: LastStretch['figures']): readonly Row[] {
  const { cycles, meanC, meanSpreadK, fluctuationK, fluctuationSpreadK, highestPeakC } = figures;
  const { periodS, periodSpreadS, duty } = figures;
  const spreadS = periodSpreadS === null ? '' : `, ${words.spread(inSeconds(periodSpreadS))}`;
  return [
    { name: words.mean, value: withSpread(temperature(meanC), meanSpreadK), means: words.meanMeans },
    {
      name: words.fluctuation,
      value: withSpread(difference(fluctuationK), fluctuationSpreadK),
      means: words.fluctuationMeans,
    },
    { name: words.highestPeak, value: temperature(highestPeakC) },
    { name: words.period, value: `${inSeconds(periodS)}${spreadS}, ${words.cycles(cycles)}` },
    { name: words.duty, value: `${Math.round(duty * 100)} %`, means: words.dutyMeans },
  ];
}

const Figures = ({ title, rows }: { readonly title: string; readonly rows: readonly Row[] }) => (
  <div class="dial-figures">
    <h4>{title}</h4>
    <dl>
      {rows.map(({ name, value }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
    <details>
      <summary>{dialSetupWords.means}</summary>
      <ul>
        {rows.map(({ name, means }) =>
          means === undefined ? null : (
            <li key={name}>
              {name}: {means}
            </li>
          ),
        )}
      </ul>
      <p class="quiet">{words.named}</p>
    </details>
  </div>
);
