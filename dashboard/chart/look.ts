import { type HatchName, hatches } from '../parts/hatch.tsx';

/** How a trace looks, read from the style sheets: the canvas names no colour and no size of its own. */

export interface Stroke {
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
}

export interface Look {
  /** One for each probe; where there are more probes than these, they begin anew. */
  readonly lines: readonly Stroke[];
  readonly grid: Stroke;
  readonly band: Stroke;
  readonly fabric: Stroke;
  readonly cement: Stroke;
  readonly mark: Stroke;
  readonly chosen: Stroke;
  readonly ink: string;
  readonly sheet: string;
  readonly quiet: string;
  readonly face: string;
  readonly textPx: number;
  /** Half the width of a mark, and how far words stand from what they name. */
  readonly markPx: number;
  readonly gapPx: number;
}

export const LINES = 4;
const SVG = 'http://www.w3.org/2000/svg';

/** Reads the look that holds beside `canvas`. */
export function readLook(canvas: HTMLCanvasElement): Look {
  const sheet = document.createElementNS(SVG, 'svg');
  sheet.setAttribute('class', 'trace-look');
  (canvas.parentElement ?? document.body).append(sheet);
  const stroke = (name: string): Stroke => {
    const path = document.createElementNS(SVG, 'path');
    path.setAttribute('class', `trace-stroke trace-stroke--${name}`);
    sheet.append(path);
    const { stroke: colour, strokeWidth, strokeDasharray } = getComputedStyle(path);
    return { colour, width: Number.parseFloat(strokeWidth), dash: dashOf(strokeDasharray) };
  };
  const own = getComputedStyle(canvas);
  const look = {
    lines: Array.from({ length: LINES }, (_, i) => stroke(`line-${i + 1}`)),
    grid: stroke('grid'),
    band: stroke('band'),
    fabric: stroke('fabric'),
    cement: stroke('cement'),
    mark: stroke('mark'),
    chosen: stroke('chosen'),
    ink: own.color,
    sheet: own.backgroundColor,
    quiet: own.outlineColor,
    face: own.fontFamily,
    textPx: Number.parseFloat(own.fontSize),
    markPx: Number.parseFloat(own.columnGap),
    gapPx: Number.parseFloat(own.rowGap),
  };
  sheet.remove();
  return look;
}

const dashOf = (text: string): number[] =>
  text === 'none' ? [] : text.split(/[\s,]+/).map((part) => Number.parseFloat(part));

export type Hatchings = Readonly<Record<HatchName, CanvasPattern | null>>;

/** The page's own hatchings as fills for a canvas, as they are drawn now. */
export function readHatchings(context: CanvasRenderingContext2D): Hatchings {
  const fills = hatches.map((name) => [name, patternOf(context, name)]);
  return Object.fromEntries(fills) as Hatchings;
}

function patternOf(context: CanvasRenderingContext2D, name: HatchName): CanvasPattern | null {
  const pattern = document.querySelector(`#hatch-${name}`);
  const path = pattern?.querySelector('path') ?? null;
  const size = Number(pattern?.getAttribute('width') ?? 0);
  if (path === null || size === 0) return null;
  const { stroke, strokeWidth } = getComputedStyle(path);
  const pixels = Math.ceil(size * window.devicePixelRatio);
  const tile = document.createElement('canvas');
  tile.width = pixels;
  tile.height = pixels;
  const pen = tile.getContext('2d');
  if (pen === null) return null;
  pen.scale(pixels / size, pixels / size);
  pen.strokeStyle = stroke;
  pen.lineWidth = Number.parseFloat(strokeWidth);
  pen.stroke(new Path2D(path.getAttribute('d') ?? ''));
  const fill = context.createPattern(tile, 'repeat');
  fill?.setTransform(new DOMMatrix().scale(size / pixels));
  return fill;
}

/** Tells when colours may have changed: light to dark, forced colours, or a choice of the user; returns its end. */
export function watchLook(changed: () => void): () => void {
  const queries = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map((query) =>
    matchMedia(query),
  );
  for (const query of queries) query.addEventListener('change', changed);
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, {
    attributes: true,
    attributeFilter: ['class', 'data-scheme', 'data-look', 'data-colours', 'data-theme'],
  });
  return () => {
    for (const query of queries) query.removeEventListener('change', changed);
    observer.disconnect();
  };
}
