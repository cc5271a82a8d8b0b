import {
  Chart,
  type ChartConfiguration,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  type Scale,
} from 'chart.js';
import type { TemperatureUnit } from '../../shared/units/temperature.ts';
import type { Point } from './columns.ts';
import { type Hatchings, type Look, readHatchings, readLook, watchLook } from './look.ts';
import { MARK_ROOM, overlay } from './overlay.ts';
import { temperatureTicks, timeTicks } from './ticks.ts';
import { noTrace, type TraceData, type TraceMark } from './trace-data.ts';
import { isSame, type View } from './view.ts';

/** A trace on a canvas: the only place that knows the library that draws it. */

Chart.register(LineController, LineElement, PointElement, LinearScale);

export interface TraceOptions {
  readonly view: View;
  readonly unit: () => TemperatureUnit;
  readonly temperatureText: (c: number) => string;
  /** A time on the scale whose lines stand `stepMs` apart. */
  readonly timeText: (ms: number, stepMs: number) => string;
  /** Where a round time stands on the scale, ms. */
  readonly zeroMs: () => number;
}

export interface TraceChart {
  /** What to draw, and which part of it. */
  setColumns(data: TraceData, view?: View): void;
  setView(view: View): void;
  /** Draws again, in another unit perhaps. */
  redraw(): void;
  /** The time at a place of the window, ms. */
  msAt(clientX: number): number;
  /** The mark nearest to a place of the window, if one is near enough for a finger. */
  markAt(clientX: number): string | null;
  /** A place of the window as a distance from the canvas's own left edge, CSS pixels. */
  leftOf(clientX: number): number;
  /** Width of what is drawn, CSS pixels. */
  readonly width: number;
  destroy(): void;
}

/** Half of what a finger needs, CSS pixels. */
const FINGER_PX = 24;
/** Room that a line of a scale and its words need, CSS pixels. */
const TIME_ROOM_PX = 90;
const TEMPERATURE_ROOM_PX = 34;

interface State {
  data: TraceData;
  view: View;
  look: Look;
  hatchings: Hatchings;
  stepMs: number;
}

/** Draws traces on a canvas, which must stand in an element that gives it its size. */
export function mountTrace(canvas: HTMLCanvasElement, options: TraceOptions): TraceChart {
  const context = canvas.getContext('2d');
  if (context === null) throw new TypeError('This browser draws nothing on a canvas.');
  const state: State = {
    data: noTrace,
    view: options.view,
    look: readLook(canvas),
    hatchings: readHatchings(context),
    stepMs: 1000,
  };
  const chart = new Chart(canvas, configuration(state, options));
  const redraw = (): void => {
    applyLook(chart, state.look);
    chart.update('none');
  };
  redraw();
  const endWatch = watchLook(() => {
    state.look = readLook(canvas);
    state.hatchings = readHatchings(context);
    redraw();
  });
  const leftOf = (clientX: number): number => clientX - canvas.getBoundingClientRect().left;
  const msAt = (clientX: number): number =>
    chart.scales['x']?.getValueForPixel(leftOf(clientX)) ?? state.view.fromMs;
  return {
    setColumns(data, view = state.view) {
      state.data = data;
      state.view = view;
      setLines(chart, data.lines, state.look);
      chart.update('none');
    },
    setView(view) {
      if (isSame(view, state.view)) return;
      state.view = view;
      chart.update('none');
    },
    redraw,
    msAt,
    leftOf,
    markAt: (clientX) => nearest(state.data.marks, msAt(clientX), msAt(clientX + FINGER_PX) - msAt(clientX)),
    get width() {
      return chart.chartArea?.width ?? canvas.clientWidth;
    },
    destroy() {
      endWatch();
      chart.destroy();
    },
  };
}

function nearest(marks: readonly TraceMark[], atMs: number, reachMs: number): string | null {
  let best: TraceMark | null = null;
  for (const mark of marks)
    if (best === null || Math.abs(mark.atMs - atMs) < Math.abs(best.atMs - atMs)) best = mark;
  return best !== null && Math.abs(best.atMs - atMs) <= reachMs ? best.id : null;
}

type LineChart = Chart<'line', Point[]>;

function setLines(chart: LineChart, lines: TraceData['lines'], look: Look): void {
  chart.data.datasets.length = Math.min(chart.data.datasets.length, lines.length);
  for (const [i, line] of lines.entries()) {
    const data = line as Point[];
    const there = chart.data.datasets[i];
    if (there === undefined) chart.data.datasets.push({ data, ...styleOf(look, i) });
    else there.data = data;
  }
}

function styleOf(look: Look, i: number) {
  const stroke = look.lines[i % look.lines.length];
  return {
    borderColor: stroke?.colour ?? look.ink,
    borderWidth: stroke?.width ?? 1,
    borderDash: [...(stroke?.dash ?? [])],
  };
}

function applyLook(chart: LineChart, look: Look): void {
  for (const [i, dataset] of chart.data.datasets.entries()) Object.assign(dataset, styleOf(look, i));
  for (const scale of Object.values(chart.options.scales ?? {})) {
    if (scale === undefined) continue;
    Object.assign(scale.ticks ?? {}, { color: look.quiet, font: { family: look.face, size: look.textPx } });
    Object.assign(scale.grid ?? {}, { color: look.grid.colour, lineWidth: look.grid.width });
    Object.assign(scale.border ?? {}, { color: look.quiet });
  }
}

function configuration(state: State, options: TraceOptions): ChartConfiguration<'line', Point[]> {
  return {
    type: 'line',
    data: { datasets: [] },
    options: {
      parsing: false,
      normalized: true,
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      layout: { padding: { top: state.look.markPx * MARK_ROOM, right: state.look.gapPx } },
      spanGaps: false,
      elements: { point: { radius: 0 }, line: { borderJoinStyle: 'bevel' } },
      scales: { x: timeScale(state, options), y: temperatureScale(state, options) },
    },
    plugins: [overlay(() => state)],
  };
}

const timeScale = (state: State, { timeText, zeroMs }: TraceOptions) => ({
  type: 'linear' as const,
  beforeDataLimits: (scale: Scale) => {
    Object.assign(scale.options, { min: state.view.fromMs, max: state.view.toMs });
  },
  afterBuildTicks: (scale: Scale) => {
    const { at, stepMs } = timeTicks(state.view, Math.max(2, scale.width / TIME_ROOM_PX), zeroMs());
    state.stepMs = stepMs;
    scale.ticks = at.map((value) => ({ value }));
  },
  grid: { drawTicks: true },
  border: {},
  ticks: {
    autoSkip: false,
    maxRotation: 0,
    callback: (value: number | string) => timeText(Number(value), state.stepMs),
  },
});

const temperatureScale = (state: State, { unit, temperatureText }: TraceOptions) => ({
  type: 'linear' as const,
  beforeDataLimits: (scale: Scale) => {
    Object.assign(scale.options, { min: state.data.range.lowC, max: state.data.range.highC });
  },
  afterBuildTicks: (scale: Scale) => {
    const most = Math.max(2, scale.height / TEMPERATURE_ROOM_PX);
    scale.ticks = temperatureTicks(state.data.range, unit(), most).map((value) => ({ value }));
  },
  grid: { drawTicks: true },
  border: {},
  ticks: { autoSkip: false, callback: (value: number | string) => temperatureText(Number(value)) },
});
