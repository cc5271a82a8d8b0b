import { useEffect, useRef, useState } from 'preact/hooks';
import type { Session } from '../../shared/messages/sessions.ts';
import { POINTS_AT_MOST, type Trace } from '../../shared/messages/trace.ts';
import { useTrace } from '../chart/load.ts';
import type { TraceChart, TraceOptions } from '../chart/mount.ts';
import type { Range } from '../chart/spans.ts';
import { between, isSame, showing, type View, within, withMargin, zoomed } from '../chart/view.ts';
import { onceAFrame } from '../parts/once-a-frame.ts';
import { sessionTimes } from '../parts/session-times.ts';
import { difference, figure, temperature, unit } from '../parts/unit.ts';
import { type Found, foundIn } from './found.ts';
import { type Gestures, listenForGestures } from './gestures.ts';
import { TraceFeed } from './trace-feed.ts';
import { drawn, neighbour, widened } from './trace-state.ts';

/** Around a moment that is looked at, ms to either side. */
const AROUND_MS = 60_000;
/** Rows a pixel that are asked for. */
const ROWS_A_PIXEL = 2;
/** Width of a trace that isn't drawn yet, CSS pixels. */
const USUAL_WIDTH_PX = 800;
const DAY_MS = 86_400_000;

/** Part of the trace's frame that is being dragged over, CSS pixels. */
export interface DraggedSpan {
  readonly left: number;
  readonly width: number;
}

export interface TraceUse {
  readonly session: Session;
  /** The moment to begin with, session ms; null: the whole session. */
  readonly atMs: number | null;
  /** Told whatever comes in of the session. */
  readonly told: (trace: Trace) => void;
}

export type SessionTrace = ReturnType<typeof useSessionTrace>;

/** A session's trace as it is looked at: what is shown of it, fetched and drawn, and how that is changed. */
export function useSessionTrace({ session, atMs, told }: TraceUse) {
  const [untilMs, setUntilMs] = useState(session.lengthMs);
  const whole: View = { fromMs: 0, toMs: Math.max(1, session.lengthMs, untilMs) };
  // Null: the whole session, however long it gets.
  const [part, setPart] = useState(() => (atMs === null ? null : around(atMs, whole)));
  const view = part ?? whole;
  const [chosen, setChosen] = useState<string | null>(null);
  const now = useRef({ view, whole });
  now.current = { view, whole };
  const go = (next: View): void => {
    setPart(isSame(next, now.current.whole) ? null : next);
  };
  const drawing = useDrawing({ session, now, go, setChosen });
  const { trace, why, read } = useFetched({
    session,
    part,
    view,
    whole,
    width: drawing.width,
    told: (got) => {
      setUntilMs(got.untilMs);
      told(got);
    },
  });
  const found = trace === null ? [] : foundIn(trace, { temperature, difference });
  drawing.draw.current = (chart) => {
    if (trace === null || read === null) chart.setView(view);
    else chart.setColumns(drawn({ trace, found, chosen, read }, temperature), view);
  };
  useEffect(() => drawing.ask.ask(), [trace, view, chosen, unit.value]);
  const choose = (one: Found | null): void => {
    if (one === null) return;
    setChosen(one.id);
    go(showing(now.current.view, now.current.whole, one.atMs));
  };
  const step = (by: 1 | -1): void => choose(neighbour(found, chosen, by, by > 0 ? view.fromMs : view.toMs));
  return { ...drawing, view, whole, trace, why, found, chosen, go, choose, step };
}

export const around = (atMs: number, whole: View): View =>
  within({ fromMs: atMs - AROUND_MS, toMs: atMs + AROUND_MS }, whole);

interface Fetching extends Omit<TraceUse, 'atMs'> {
  readonly part: View | null;
  readonly view: View;
  readonly whole: View;
  readonly width: () => number;
}

/** What the daemon gives of the view, with the range of all that was read so far. */
function useFetched({ session, part, view, whole, width, told }: Fetching) {
  const [trace, setTrace] = useState<Trace | null>(null);
  const [why, setWhy] = useState('');
  const read = useRef<Range | null>(null);
  const feed = useRef<TraceFeed | null>(null);
  const newest = useRef(session);
  newest.current = session;
  useEffect(() => {
    const came = (got: Trace): void => {
      read.current = widened(read.current, got, newest.current);
      setWhy('');
      setTrace(got);
      told(got);
    };
    const runs = (): boolean => newest.current.endedAt === null;
    const fed = new TraceFeed(session.id, { trace: came, failed: setWhy }, runs);
    feed.current = fed;
    return () => fed.stop();
  }, []);
  useEffect(() => {
    const points = Math.min(POINTS_AT_MOST, Math.round(width() * ROWS_A_PIXEL));
    feed.current?.want(part === null ? null : withMargin(view, whole), points);
  }, [part]);
  return { trace, why, read: read.current };
}

interface Moving {
  readonly now: { readonly current: { readonly view: View; readonly whole: View } };
  readonly go: (view: View) => void;
  readonly setChosen: (id: string | null) => void;
}

/** The canvas, what fingers do on it, and one drawing a frame at most. */
function useDrawing({ session, now, go, setChosen }: Moving & { readonly session: Session }) {
  const [dragged, setDragged] = useState<DraggedSpan | null>(null);
  const frame = useRef<HTMLDivElement>(null);
  const chart = useRef<TraceChart | null>(null);
  const draw = useRef<(chart: TraceChart) => void>(() => undefined);
  const [ask] = useState(() =>
    onceAFrame(() => {
      if (chart.current !== null) draw.current(chart.current);
    }),
  );
  const mounted = (made: TraceChart): (() => void) => {
    chart.current = made;
    ask.ask();
    const gestures = gesturesOn(made, { now, go, setChosen, setDragged });
    const endGestures = frame.current === null ? null : listenForGestures(frame.current, gestures);
    return () => {
      endGestures?.();
      ask.stop();
      chart.current = null;
    };
  };
  const { canvas, failed } = useTrace(() => optionsOf(session, now.current.view), mounted);
  return { canvas, frame, failed, dragged, draw, ask, width: () => chart.current?.width ?? USUAL_WIDTH_PX };
}

function optionsOf({ zone, startedAt }: Session, view: View): TraceOptions {
  const times = sessionTimes(zone);
  const startUtcMs = Date.parse(startedAt);
  return {
    view,
    unit: () => unit.peek(),
    temperatureText: figure,
    timeText: (ms, stepMs) => times.onScale(startUtcMs + ms, stepMs),
    zeroMs: () => -startUtcMs % DAY_MS,
  };
}

const gesturesOn = (
  chart: TraceChart,
  { now, go, setChosen, setDragged }: Moving & { readonly setDragged: (span: DraggedSpan | null) => void },
): Gestures => ({
  dragging: (over) => {
    if (over === null) setDragged(null);
    else {
      const left = chart.leftOf(Math.min(over.fromX, over.toX));
      setDragged({ left, width: Math.abs(over.toX - over.fromX) });
    }
  },
  chosen: (fromX, toX) => go(between(chart.msAt(fromX), chart.msAt(toX), now.current.whole)),
  tapped: (x) => setChosen(chart.markAt(x)),
  pinched: (factor, x) => go(zoomed(now.current.view, now.current.whole, factor, chart.msAt(x))),
});
