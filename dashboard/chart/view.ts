/** The part of a trace that is shown. Pure. */
export interface View {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Nothing shorter than this is shown, ms. */
export const SHORTEST_MS = 2000;

const lengthOf = (view: View): number => view.toMs - view.fromMs;

/** The view within the whole, no shorter than may be and no longer than the whole. */
export function within(view: View, whole: View): View {
  const most = Math.max(lengthOf(whole), SHORTEST_MS);
  const length = Math.min(most, Math.max(SHORTEST_MS, lengthOf(view)));
  const middle = (view.fromMs + view.toMs) / 2;
  const from = Math.min(Math.max(middle - length / 2, whole.fromMs), whole.fromMs + most - length);
  return { fromMs: Math.floor(from), toMs: Math.ceil(from + length) };
}

/** Makes the span `factor` times as long; what stands at `aboutMs` stays where it is. */
export function zoomed(view: View, whole: View, factor: number, aboutMs?: number): View {
  const about = aboutMs ?? (view.fromMs + view.toMs) / 2;
  const from = about - (about - view.fromMs) * factor;
  return within({ fromMs: from, toMs: from + lengthOf(view) * factor }, whole);
}

/** Moves on by a share of what is shown; a negative one goes back. */
export function moved(view: View, whole: View, share: number): View {
  const byMs = lengthOf(view) * share;
  return within({ fromMs: view.fromMs + byMs, toMs: view.toMs + byMs }, whole);
}

/** The span between two moments, in either order. */
export const between = (oneMs: number, otherMs: number, whole: View): View =>
  within({ fromMs: Math.min(oneMs, otherMs), toMs: Math.max(oneMs, otherMs) }, whole);

/** Shows a moment: the view stays where that is in it already, well away from its edges. */
export function showing(view: View, whole: View, atMs: number): View {
  const edge = lengthOf(view) * 0.1;
  if (atMs >= view.fromMs + edge && atMs <= view.toMs - edge) return view;
  const half = lengthOf(view) / 2;
  return within({ fromMs: atMs - half, toMs: atMs + half }, whole);
}

/** A view with as much again to either side, within the whole: what is fetched, so that a move has something to show. */
export const withMargin = (view: View, whole: View): View => {
  const margin = Math.round(lengthOf(view) / 2);
  return {
    fromMs: Math.max(whole.fromMs, view.fromMs - margin),
    toMs: Math.max(view.toMs, Math.min(whole.toMs, view.toMs + margin)),
  };
};

export const isSame = (a: View, b: View): boolean => a.fromMs === b.fromMs && a.toMs === b.toMs;
