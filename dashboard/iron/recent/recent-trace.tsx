import { effect } from '@preact/signals';
import { formatDuration } from '../../../shared/units/time.ts';
import { traceWords } from '../../../shared/words/records.ts';
import { type Columns, commonGaps, extentOf, pointsOf } from '../../chart/columns.ts';
import { gapText } from '../../chart/gap-text.ts';
import { useTrace } from '../../chart/load.ts';
import type { TraceChart, TraceOptions } from '../../chart/mount.ts';
import { type Held, rangeOf, traceSpan } from '../../chart/spans.ts';
import type { TraceData } from '../../chart/trace-data.ts';
import { nowMs, pageMs } from '../../parts/now.ts';
import { betweenFrames, onceAFrame } from '../../parts/once-a-frame.ts';
import { figure, temperature, unit } from '../../parts/unit.ts';
import { lead } from '../irons.ts';
import type { IronView } from '../plate.ts';
import { recent, recentChanged } from './follow.ts';
import { RECENT_MS } from './recent.ts';
import '../../chart/trace.css';

/** Drawn no more often than this, ms: it moves by a pixel or two meanwhile. */
const DRAW_EVERY_MS = 2000;
const MINUTE_MS = 60_000;

/** The last minutes of the plate in hand, quietly. */
export function RecentTrace() {
  const { canvas, failed } = useTrace(options, (chart) => followOn(chart, canvas.current));
  return (
    <figure class="recent" data-testid="recent">
      <figcaption class="quiet">{traceWords.recent(RECENT_MS / MINUTE_MS)}</figcaption>
      <div class="trace-frame trace-frame--quiet">
        <canvas class="trace-canvas" ref={canvas} role="img" aria-label={traceWords.recentName} />
      </div>
      {failed ? <p>{traceWords.notLoaded}</p> : null}
    </figure>
  );
}

const options = (): TraceOptions => ({
  view: viewAt(pageMs()),
  unit: () => unit.peek(),
  temperatureText: figure,
  timeText: (ms) => minutesAgo(pageMs() - ms),
  zeroMs: pageMs,
});

/** Keeps a chart up to date until the function that it returns is called. */
function followOn(chart: TraceChart, canvas: HTMLCanvasElement | null): () => void {
  let drawnAtMs = Number.NEGATIVE_INFINITY;
  const frame = onceAFrame(() => {
    drawnAtMs = pageMs();
    const view = lead.peek();
    if (view === null) return;
    const said = draw(chart, view);
    canvas?.setAttribute('aria-label', said);
  }, betweenFrames());
  const endAsking = effect(() => {
    const due = nowMs.value - drawnAtMs >= DRAW_EVERY_MS;
    if (recentChanged.value >= 0 && due) frame.ask();
  });
  const endUnit = effect(() => {
    if (unit.value !== null) frame.ask();
  });
  return () => {
    endAsking();
    endUnit();
    frame.stop();
  };
}

const viewAt = (atMs: number) => ({ fromMs: Math.floor(atMs - RECENT_MS), toMs: Math.floor(atMs) });

const minutesAgo = (ms: number): string => {
  const minutes = Math.round(ms / MINUTE_MS);
  return minutes <= 0 ? traceWords.now : traceWords.minutesAgo(minutes);
};

/** Draws the last minutes of an iron, and gives them in words. */
function draw(chart: TraceChart, { iron }: IronView): string {
  const view = viewAt(pageMs());
  const probes = iron.probes.map((id) => recent.columns(id));
  const { schedule, stageId } = iron;
  const held: Held = { ...view, schedule, stageId, guardBandK: 0 };
  chart.setColumns(dataOf(probes, held), view);
  return `${traceWords.recentName}. ${inWords(probes)}`;
}

function dataOf(probes: readonly Columns[], held: Held): TraceData {
  return {
    lines: probes.map(pointsOf),
    spans: [traceSpan(held, temperature)],
    gaps: commonGaps(probes, held.toMs).map((gap) => ({ ...gap, text: gapText(gap.fault) })),
    marks: [],
    chosen: null,
    range: rangeOf([held], extentOf(probes)),
    quiet: true,
  };
}

function inWords(probes: readonly Columns[]): string {
  const extent = extentOf(probes);
  const said =
    extent === null
      ? traceWords.noReadings
      : traceWords.summary(temperature(extent.lowC), temperature(extent.highC));
  return `${said} ${formatDuration(RECENT_MS)}.`;
}
