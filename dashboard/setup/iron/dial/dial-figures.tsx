import type { LastLoad, LastStretch } from '../../../../shared/iron/dial/kept.ts';
import { formatDuration } from '../../../../shared/units/time.ts';
import { dialSetupWords, dialFigureWords as words } from '../../../../shared/words/dial.ts';
import { difference, temperature } from '../../../parts/unit.ts';
import { dayAndTime } from '../../day.ts';

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
  const value = meanDropK === null ? difference(troughDropK) : difference(meanDropK);
  const means = meanDropK === null ? words.loadTroughMeans : words.loadMeans;
  return (
    <Figures
      title={dialSetupWords.load(String(load.mark), dayAndTime(load.at))}
      rows={[{ name: words.load, value, means }]}
    />
  );
}

const withSpread = (value: string, spread: number | null): string =>
  spread === null ? value : `${value}, ${words.spread(difference(spread))}`;

const inSeconds = (s: number): string => formatDuration(s * 1000);

function stretchRows(figures: LastStretch['figures']): readonly Row[] {
  const { cycles, meanC, meanSpreadK, fluctuationK, fluctuationSpreadK, highestPeakC } = figures;
  const { periodS, duty, heatingUpS, heatingUpExcessK } = figures;
  const rows: Row[] = [
    { name: words.mean, value: withSpread(temperature(meanC), meanSpreadK), means: words.meanMeans },
    {
      name: words.fluctuation,
      value: withSpread(difference(fluctuationK), fluctuationSpreadK),
      means: words.fluctuationMeans,
    },
    { name: words.highestPeak, value: temperature(highestPeakC) },
    { name: words.period, value: `${inSeconds(periodS)}, ${words.cycles(cycles)}` },
    { name: words.duty, value: `${Math.round(duty * 100)} %`, means: words.dutyMeans },
  ];
  if (heatingUpS !== null)
    rows.push({ name: words.heatingUp, value: inSeconds(heatingUpS), means: words.heatingUpMeans });
  if (heatingUpExcessK !== null)
    rows.push({ name: words.excess, value: difference(heatingUpExcessK), means: words.excessMeans });
  return rows;
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
