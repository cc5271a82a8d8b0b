import type { Session } from '../../shared/messages/sessions.ts';
import type { Trace } from '../../shared/messages/trace.ts';
import { commonGaps, extentOf, pointsOf } from '../chart/columns.ts';
import { gapText } from '../chart/gap-text.ts';
import { heldSpans, type Range, rangeOf, traceSpan } from '../chart/spans.ts';
import type { TraceData } from '../chart/trace-data.ts';
import type { Found } from './found.ts';

/** From what the daemon answers to what is drawn. Pure. */

/** Widens a range by what was just read, so that the scale stays where it is while one looks closer. */
export function widened(before: Range | null, trace: Trace, session: Session): Range {
  const read = extentOf(trace.probes);
  const peakC = session.peakC ?? read?.highC ?? 0;
  const all = [before, read].filter((one) => one !== null);
  return {
    lowC: Math.min(...all.map((one) => one.lowC), peakC),
    highC: Math.max(...all.map((one) => one.highC), peakC),
  };
}

export interface Shown {
  readonly trace: Trace;
  readonly found: readonly Found[];
  readonly chosen: string | null;
  readonly read: Range;
}

/** @param text a temperature in the unit that is shown */
export function drawn({ trace, found, chosen, read }: Shown, text: (c: number) => string): TraceData {
  const held = heldSpans(trace.settings, trace.work, trace.untilMs);
  return {
    lines: trace.probes.map(pointsOf),
    spans: held.map((one) => traceSpan(one, text)),
    gaps: commonGaps(trace.probes, trace.readUntilMs).map((gap) => ({ ...gap, text: gapText(gap.fault) })),
    marks: found,
    chosen,
    range: rangeOf(held, read),
    quiet: false,
  };
}

/** The finding before or after the chosen one, or the first beyond a moment where none is chosen; null at the end. */
export function neighbour(
  found: readonly Found[],
  chosen: string | null,
  by: 1 | -1,
  fromMs: number,
): Found | null {
  const at = found.findIndex((one) => one.id === chosen);
  if (at >= 0) return found[at + by] ?? null;
  return (
    (by > 0 ? found.find((one) => one.atMs >= fromMs) : found.findLast((one) => one.atMs <= fromMs)) ?? null
  );
}
