import type { Chart, ChartArea, Plugin } from 'chart.js';
import type { Hatchings, Look, Stroke } from './look.ts';
import type { TraceData } from './trace-data.ts';

/** What stands behind and over the lines of a trace: bands, limits, gaps, marks. */

export interface Drawn {
  readonly data: TraceData;
  readonly look: Look;
  readonly hatchings: Hatchings;
}

/** @param drawn gives what is to be drawn now */
export const overlay = (drawn: () => Drawn): Plugin<'line'> => ({
  id: 'overlay',
  beforeDatasetsDraw: (chart) => {
    const pen = penOf(chart, drawn());
    clipped(pen, () => {
      drawSpans(pen);
      drawGaps(pen);
      drawLimits(pen);
    });
    drawLabels(pen);
  },
  afterDatasetsDraw: (chart) => {
    drawMarks(penOf(chart, drawn()));
  },
});

interface Pen extends Drawn {
  readonly context: CanvasRenderingContext2D;
  readonly area: ChartArea;
  x(ms: number): number;
  y(c: number): number;
}

function penOf(chart: Chart, drawn: Drawn): Pen {
  const { ctx: context, chartArea: area, scales } = chart;
  const at = (axis: string, value: number): number => scales[axis]?.getPixelForValue(value) ?? 0;
  return { ...drawn, context, area, x: (ms) => at('x', ms), y: (c) => at('y', c) };
}

function clipped({ context, area }: Pen, draw: () => void): void {
  context.save();
  context.beginPath();
  context.rect(area.left, area.top, area.width, area.height);
  context.clip();
  draw();
  context.restore();
}

/** Rounded to whole pixels, so that an edge is sharp. */
function box(
  pen: Pen,
  from: number,
  to: number,
  lowC: number,
  highC: number,
): [number, number, number, number] {
  const left = Math.round(Math.max(pen.area.left - 2, pen.x(from)));
  const right = Math.round(Math.min(pen.area.right + 2, pen.x(to)));
  const top = Math.round(pen.y(highC));
  return [left, top, Math.max(0, right - left), Math.round(pen.y(lowC)) - top];
}

function drawSpans(pen: Pen): void {
  const { context, hatchings, look, data } = pen;
  for (const { fromMs, toMs, bands, fabricC, warnC } of data.spans) {
    for (const { lowC, highC, working } of bands) {
      const rect = box(pen, fromMs, toMs, lowC, highC);
      context.fillStyle = hatchings[working ? 'working' : 'band'] ?? look.sheet;
      if (working || !data.quiet) context.fillRect(...rect);
      strokeWith(context, look.band, () => context.rect(...rect));
    }
    context.fillStyle = hatchings.allowance ?? look.sheet;
    context.fillRect(...box(pen, fromMs, toMs, warnC, fabricC));
    context.fillStyle = hatchings.beyond ?? look.sheet;
    context.fillRect(...box(pen, fromMs, toMs, fabricC, data.range.highC));
  }
}

function drawLimits(pen: Pen): void {
  const { context, look, data } = pen;
  for (const { fromMs, toMs, fabricC, cementC } of data.spans) {
    const across = (c: number, stroke: Stroke): void =>
      strokeWith(context, stroke, () => {
        context.moveTo(pen.x(fromMs), pen.y(c));
        context.lineTo(pen.x(toMs), pen.y(c));
      });
    across(fabricC, look.fabric);
    if (cementC !== null) across(cementC, look.cement);
  }
}

/** A gap is left as one: hatched over the whole height, with its reason where there is room. */
function drawGaps(pen: Pen): void {
  const { context, area, hatchings, look, data } = pen;
  let wordsUntil = Number.NEGATIVE_INFINITY;
  for (const { fromMs, toMs, text } of data.gaps) {
    const left = Math.max(area.left, pen.x(fromMs));
    const right = Math.min(area.right, pen.x(toMs));
    if (right < area.left || left > area.right) continue;
    context.fillStyle = look.sheet;
    context.fillRect(left, area.top, Math.max(1, right - left), area.height);
    context.fillStyle = hatchings.missing ?? look.quiet;
    context.fillRect(left, area.top, Math.max(1, right - left), area.height);
    context.font = fontOf(look);
    if (left < wordsUntil || context.measureText(text).width + look.gapPx * 4 > right - left) continue;
    words(pen, text, { x: (left + right) / 2, y: area.top + area.height / 2, align: 'center' });
    wordsUntil = right;
  }
}

/** Words for the limits and bands that are in sight, each at its own height, those in one place once. */
function drawLabels(pen: Pen): void {
  const { area, look, data } = pen;
  const span = data.spans.findLast(
    ({ fromMs, toMs }) => pen.x(fromMs) < area.right && pen.x(toMs) > area.left,
  );
  if (span === undefined || data.quiet) return;
  const right = { x: area.right - look.gapPx, align: 'right' } as const;
  words(pen, span.fabricText, { ...right, y: pen.y(span.fabricC) });
  if (span.cementC !== null) words(pen, span.cementText, { ...right, y: pen.y(span.cementC) });
  for (const { lowC, highC, text } of span.bands)
    words(pen, text, { ...right, y: pen.y((lowC + highC) / 2) });
}

interface At {
  readonly x: number;
  readonly y: number;
  readonly align: 'center' | 'right';
}

/** Words on a ground of their own, so that nothing runs through them. */
function words({ context, area, look }: Pen, text: string, { x, y, align }: At): void {
  if (y < area.top || y > area.bottom) return;
  context.save();
  context.font = fontOf(look);
  context.textAlign = align;
  context.textBaseline = 'middle';
  const width = context.measureText(text).width + look.gapPx;
  const height = look.textPx * 1.25;
  const left = align === 'right' ? x - width : x - width / 2;
  const middle = Math.min(Math.max(y, area.top + height / 2), area.bottom - height / 2);
  context.fillStyle = look.sheet;
  context.fillRect(left, middle - height / 2, width, height);
  context.fillStyle = look.ink;
  const inset = align === 'right' ? -look.gapPx / 2 : 0;
  context.fillText(text, x + inset, middle);
  context.restore();
}

/** A finding stands on the upper edge: filled where an alarm was raised. The chosen one goes down to the foot. */
function drawMarks(pen: Pen): void {
  const { context, area, look, data } = pen;
  for (const { id, atMs, strong } of data.marks) {
    const x = pen.x(atMs);
    if (x < area.left || x > area.right) continue;
    const chosen = id === data.chosen;
    const stroke = chosen ? look.chosen : look.mark;
    const size = chosen ? look.markPx * CHOSEN : look.markPx;
    if (chosen)
      strokeWith(context, stroke, () => {
        context.moveTo(x, area.top);
        context.lineTo(x, area.bottom);
      });
    context.fillStyle = strong || chosen ? stroke.colour : look.sheet;
    strokeWith(context, stroke, () => {
      context.moveTo(x - size, area.top - size * MARK_TALL);
      context.lineTo(x + size, area.top - size * MARK_TALL);
      context.lineTo(x, area.top);
      context.closePath();
      context.fill();
    });
  }
}

function strokeWith(
  context: CanvasRenderingContext2D,
  { colour, width, dash }: Stroke,
  draw: () => void,
): void {
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.setLineDash([...dash]);
  context.beginPath();
  draw();
  context.stroke();
  context.setLineDash([]);
}

/** How tall a mark is, in its half widths; the chosen one is larger by `CHOSEN`. */
const MARK_TALL = 1.6;
const CHOSEN = 1.5;
/** Room over a trace for its marks, in their half widths. */
export const MARK_ROOM = MARK_TALL * CHOSEN + 1;

const fontOf = ({ textPx, face }: Look): string => `600 ${textPx}px ${face}`;
