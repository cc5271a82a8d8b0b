import type { ChartPoint } from '../../../../shared/iron/dial/chart.ts';
import type { IronDial } from '../../../../shared/messages/dial.ts';
import { dialDrawingWords as words } from '../../../../shared/words/dial.ts';
import { dayAndTime } from '../../../parts/day.ts';
import { difference, temperature } from '../../../parts/unit.ts';
import { Plot } from '../../../plot/plot.tsx';
import { scaleOf } from '../../../plot/scale.ts';

/** Room to either side of what is drawn, as a share of it. */
const X_ROOM = 0.05;
const Y_ROOM = 0.08;

type Drawn = IronDial['drawing']['stretches'][number];

/** The dial chart as a curve, its points with their ±, and the hottest to be expected under the fabric limit. */
export function ChartDrawn({ dial }: { readonly dial: IronDial }) {
  const { chart, drawing, uncertaintyK } = dial;
  const { mean, hottest, fabricLimitC } = drawing;
  const xScale = scaleOf(
    chart.points.map((p) => p.mark),
    X_ROOM,
  );
  const dots = chart.points.map((point) => dotOf(point, uncertaintyK));
  const seenC = [...dots.flatMap(({ low, high }) => [low, high]), ...hottest.map((p) => p.plateC)];
  const yScale = scaleOf([...seenC, fabricLimitC], Y_ROOM);
  if (mean.length === 0 || xScale === null || yScale === null) return null;
  const limit = temperature(fabricLimitC);
  return (
    <section class="dial-drawing">
      <h4>{words.chart}</h4>
      <Plot
        testId="dial-chart-drawn"
        label={words.chartSays(chart.points.map((p) => pointText(p, uncertaintyK)).join(', '), limit)}
        xScale={xScale}
        yScale={yScale}
        xName={words.marks}
        xText={String}
        lines={[
          { kind: 'mean', points: mean.map(({ mark, plateC }) => ({ x: mark, y: plateC })) },
          { kind: 'hottest', points: hottest.map(({ mark, plateC }) => ({ x: mark, y: plateC })) },
        ]}
        levels={[{ kind: 'limit', y: fabricLimitC }]}
        dots={dots}
        legend={[
          { kind: 'mean', text: words.mean },
          ...(hottest.length === 0 ? [] : [{ kind: 'hottest' as const, text: words.hottest }]),
          { kind: 'limit', text: words.limit(limit) },
        ]}
      />
      <p class="quiet">{words.dots(difference(uncertaintyK))}</p>
    </section>
  );
}

const dotOf = ({ mark, meanC }: ChartPoint, offByK: number) => ({
  x: mark,
  y: meanC,
  low: meanC - offByK,
  high: meanC + offByK,
});

const pointText = ({ mark, meanC }: ChartPoint, offByK: number): string =>
  words.point(String(mark), temperature(meanC), difference(offByK));

/** The last cycles at each mark, with their mean, the highest of the stage that they are for, and the fabric limit. */
export function CyclesDrawn({ dial: { drawing } }: { readonly dial: IronDial }) {
  if (drawing.stretches.length === 0) return null;
  return (
    <details class="dial-drawing">
      <summary>{words.show}</summary>
      {drawing.stretches.map((stretch) => (
        <StretchDrawn key={String(stretch.mark)} stretch={stretch} fabricLimitC={drawing.fabricLimitC} />
      ))}
    </details>
  );
}

/** A limit further off than so many times what else is drawn would press the cycles flat: it is told in words only. */
const LIMIT_WITHIN = 1.5;

function StretchDrawn({ stretch, fabricLimitC }: { readonly stretch: Drawn; readonly fabricLimitC: number }) {
  const { mark, at, lines, lastS, meanC, highestC, lowestC, stage } = stretch;
  const topC = Math.max(highestC, stage?.highC ?? highestC);
  const lowC = Math.min(lowestC, stage?.highC ?? lowestC);
  const isNear = Math.abs(fabricLimitC - topC) <= LIMIT_WITHIN * (topC - lowC);
  const yScale = scaleOf([topC, lowC, ...(isNear ? [fabricLimitC] : [])], Y_ROOM);
  if (yScale === null) return null;
  const limit = (isNear ? words.limit : words.limitFar)(temperature(fabricLimitC));
  const high = stage === null ? null : words.stageHigh(stage.name, temperature(stage.highC));
  return (
    <section class="dial-drawing">
      <h4>{words.cycles(String(mark), dayAndTime(at))}</h4>
      <Plot
        testId="dial-cycles-drawn"
        label={[cyclesText(stretch), high, limit].filter((one) => one !== null).join(' ')}
        xScale={{ from: 0, to: lastS }}
        yScale={yScale}
        xName={words.seconds}
        xText={String}
        lines={lines.map((line) => ({
          kind: 'plate',
          points: line.map(({ s, plateC }) => ({ x: s, y: plateC })),
        }))}
        levels={[
          ...(isNear ? [{ kind: 'limit' as const, y: fabricLimitC }] : []),
          ...(stage === null ? [] : [{ kind: 'stage' as const, y: stage.highC }]),
          { kind: 'mean', y: meanC },
        ]}
        dots={[]}
        legend={[
          { kind: 'plate', text: words.turns },
          { kind: 'mean', text: words.meanIs(temperature(meanC)) },
          ...(high === null ? [] : [{ kind: 'stage' as const, text: high }]),
          { kind: isNear ? 'limit' : 'none', text: limit },
        ]}
      />
    </section>
  );
}

const cyclesText = ({ mark, count, meanC, lowestC, highestC }: Drawn): string =>
  words.cyclesSay({
    mark: String(mark),
    count,
    mean: temperature(meanC),
    low: temperature(lowestC),
    high: temperature(highestC),
  });
