import { temperatureTicks } from '../chart/ticks.ts';
import { figure, unit } from '../parts/unit.ts';
import { across, down, plainTicks, type Scale } from './scale.ts';
import './plot.css';

export type LineKind = 'plate' | 'mean' | 'hottest' | 'stage' | 'limit';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface PlotLine {
  readonly kind: LineKind;
  readonly points: readonly Point[];
}

/** A point with what it may be off by, or how far it reaches, up and down. */
export interface PlotDot extends Point {
  readonly low: number;
  readonly high: number;
}

/** What goes up: where its round values lie, and how they are written. */
export interface Upright {
  readonly ticks: (scale: Scale) => readonly number[];
  readonly text: (value: number) => string;
  readonly sign: string;
}

interface PlotProps {
  /** The whole of it in words: what a picture says to those who don't see it. */
  readonly label: string;
  readonly xScale: Scale;
  readonly yScale: Scale;
  readonly xName: string;
  readonly xText: (x: number) => string;
  /** Where the round values across lie; left out: plain numbers. */
  readonly xTicks?: readonly number[];
  /** Left out: temperatures in degC, shown in the user's unit. */
  readonly upright?: Upright;
  readonly lines: readonly PlotLine[];
  /** Levels that go all across. */
  readonly levels: readonly { readonly kind: LineKind; readonly y: number }[];
  readonly dots: readonly PlotDot[];
  /** What the lines are; `none`: only words, of what is not drawn. */
  readonly legend: readonly { readonly kind: LineKind | 'none'; readonly text: string }[];
  readonly testId: string;
}

const MOST_TICKS = 6;

/** A still drawing of temperatures, or of something else, over marks or time; lines keep their width whatever the size. */
export const Plot = (props: PlotProps) => (
  <figure class="plot" data-testid={props.testId}>
    <div class="plot-frame" role="img" aria-label={props.label}>
      <svg class="plot-lines" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
        <Grid {...props} />
        {props.levels.map(({ kind, y }) => (
          <path key={kind} class={`plot-line plot-line--${kind}`} d={levelPath(props.yScale, y)} />
        ))}
        {props.lines.map(({ kind, points }, i) => (
          <path key={`${kind} ${i}`} class={`plot-line plot-line--${kind}`} d={linePath(props, points)} />
        ))}
        {props.dots.map((dot) => (
          <Dot key={dot.x} dot={dot} {...props} />
        ))}
      </svg>
      <Ticks {...props} />
    </div>
    <Legend lines={props.legend} />
  </figure>
);

const levelPath = (scale: Scale, y: number): string => `M0 ${down(scale, y)}H100`;

const linePath = (
  { xScale, yScale }: Pick<PlotProps, 'xScale' | 'yScale'>,
  points: readonly Point[],
): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${across(xScale, x)} ${down(yScale, y)}`).join('');

const temperatures = (): Upright => ({
  ticks: ({ from, to }) => temperatureTicks({ lowC: from, highC: to }, unit.value, MOST_TICKS),
  text: figure,
  sign: `°${unit.value}`,
});

const Grid = ({ yScale, upright = temperatures() }: Pick<PlotProps, 'yScale' | 'upright'>) => (
  <>
    {upright.ticks(yScale).map((y) => (
      <path key={y} class="plot-line plot-line--grid" d={levelPath(yScale, y)} />
    ))}
  </>
);

/** A dot is a line of no length with a round end: drawn as a square's corner would be, it would be stretched. */
const Dot = ({ dot: { x, y, low, high }, xScale, yScale }: { readonly dot: PlotDot } & PlotProps) => {
  const at = across(xScale, x);
  return (
    <>
      <path class="plot-line plot-line--reach" d={`M${at} ${down(yScale, low)}V${down(yScale, high)}`} />
      <path class="plot-line plot-line--dot" d={`M${at} ${down(yScale, y)}h0`} />
    </>
  );
};

const Ticks = ({ xScale, yScale, xText, xName, xTicks, upright = temperatures() }: PlotProps) => (
  <>
    {upright.ticks(yScale).map((y) => (
      <span key={y} class="plot-tick plot-tick--y" style={{ top: `${down(yScale, y)}%` }}>
        {upright.text(y)}
      </span>
    ))}
    {(xTicks ?? plainTicks(xScale, MOST_TICKS)).map((x) => (
      <span key={x} class="plot-tick plot-tick--x" style={{ left: `${across(xScale, x)}%` }}>
        {xText(x)}
      </span>
    ))}
    <span class="plot-unit">{upright.sign}</span>
    <span class="plot-name">{xName}</span>
  </>
);

const Legend = ({ lines }: { readonly lines: PlotProps['legend'] }) => (
  <figcaption>
    <ul class="plot-key">
      {lines.map(({ kind, text }) => (
        <li key={kind}>
          {kind === 'none' ? null : <Sample kind={kind} />}
          {text}
        </li>
      ))}
    </ul>
  </figcaption>
);

const Sample = ({ kind }: { readonly kind: LineKind }) => (
  <svg class="plot-sample" viewBox="0 0 40 10" aria-hidden="true">
    <path class={`plot-line plot-line--${kind}`} d="M0 5H40" />
  </svg>
);
