import { formatDuration } from '../../shared/units/time.ts';
import { recordWords, traceWords } from '../../shared/words/records.ts';
import { commonGaps, extentOf, peakMs } from '../chart/columns.ts';
import { moved, zoomed } from '../chart/view.ts';
import { Note } from '../parts/note.tsx';
import { isPlainKey } from '../parts/plain-key.ts';
import { sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';
import { temperature } from '../parts/unit.ts';
import { FindingsList } from './findings-list.tsx';
import { ProbeKey } from './probe-key.tsx';
import { around, type SessionTrace, type TraceUse, useSessionTrace } from './use-session-trace.ts';
import '../chart/trace.css';

const NEARER = 0.5;

/** A session's trace with its stages, limits and findings; the findings stand beside it as text too. */
export function TraceView(use: TraceUse) {
  const shown = useSessionTrace(use);
  const { view, trace, found, chosen } = shown;
  const times = sessionTimes(use.session.zone);
  const timeText = (ms: number): string => times.time(Date.parse(use.session.startedAt) + ms);
  return (
    <section
      class="trace"
      aria-labelledby="trace-title"
      data-testid="trace"
      data-complete={trace?.complete === true}
    >
      <div class="trace-main">
        <h3 id="trace-title" class="records-part">
          {traceWords.title}
        </h3>
        <p class="trace-span" data-testid="trace-span">
          {traceWords.span(
            timeText(view.fromMs),
            timeText(view.toMs),
            formatDuration(view.toMs - view.fromMs),
          )}
        </p>
        <Working shown={shown} />
        <Frame shown={shown} name={use.session.iron.name} />
        <Controls shown={shown} />
        {trace === null ? null : <ProbeKey trace={trace} />}
        <p class="quiet">{traceWords.keys}</p>
      </div>
      <FindingsList {...{ trace, found, view, chosen, timeText }} choose={shown.choose} step={shown.step} />
    </section>
  );
}

interface Showing {
  readonly shown: SessionTrace;
}

/** What is still being worked out, and what can't be shown. */
function Working({ shown: { trace, why, failed } }: Showing) {
  const share = trace === null || trace.untilMs === 0 ? 0 : trace.readUntilMs / trace.untilMs;
  return (
    <div role="status">
      {why === '' ? null : <Note hatch="missing">{recordWords.failed(why)}</Note>}
      {failed ? <Note hatch="missing">{traceWords.notLoaded}</Note> : null}
      {trace?.complete === true ? null : (
        <p class="trace-working" data-testid="trace-working">
          {traceWords.working(`${Math.floor(share * 100)} %`)} <progress value={share} aria-hidden="true" />
        </p>
      )}
    </div>
  );
}

/** The trace itself: worked by fingers, or by keys once it has the focus. */
function Frame({ shown, name }: Showing & { readonly name: string }) {
  const { canvas, frame, dragged } = shown;
  return (
    <div
      class="trace-frame trace-frame--worked"
      ref={frame}
      tabIndex={0}
      role="group"
      aria-label={traceWords.name(name)}
      onKeyDown={(event) => {
        const act = isPlainKey(event) ? keyActs(shown)[event.key.toLowerCase()] : undefined;
        if (act === undefined) return;
        event.preventDefault();
        act();
      }}
    >
      <canvas class="trace-canvas" ref={canvas} role="img" aria-label={inWords(shown)} />
      {dragged === null ? null : (
        <span
          class="trace-dragged"
          style={{ insetInlineStart: `${dragged.left}px`, width: `${dragged.width}px` }}
        />
      )}
    </div>
  );
}

function Controls({ shown }: Showing) {
  const { view, whole, trace, go } = shown;
  const peak = trace === null ? null : peakMs(trace.probes);
  return (
    <div class="choice-row" role="group" aria-label={traceWords.controls}>
      <Target onPress={() => go(moved(view, whole, -0.5))}>{traceWords.earlier}</Target>
      <Target onPress={() => go(moved(view, whole, 0.5))}>{traceWords.later}</Target>
      <Target onPress={() => go(zoomed(view, whole, NEARER))}>{traceWords.nearer}</Target>
      <Target onPress={() => go(zoomed(view, whole, 1 / NEARER))}>{traceWords.wider}</Target>
      <Target onPress={() => go(whole)}>{traceWords.whole}</Target>
      {peak === null ? null : <Target onPress={() => go(around(peak, whole))}>{traceWords.peak}</Target>}
    </div>
  );
}

function keyActs({ view, whole, go, step }: SessionTrace): Readonly<Record<string, () => void>> {
  const nearer = (): void => go(zoomed(view, whole, NEARER));
  return {
    arrowleft: () => go(moved(view, whole, -0.25)),
    arrowright: () => go(moved(view, whole, 0.25)),
    '+': nearer,
    '=': nearer,
    '-': () => go(zoomed(view, whole, 1 / NEARER)),
    '0': () => go(whole),
    n: () => step(1),
    p: () => step(-1),
  };
}

/** What the trace shows, for whoever can't see it. */
function inWords({ trace, view }: SessionTrace): string {
  if (trace === null) return traceWords.title;
  const extent = extentOf(trace.probes, view);
  if (extent === null) return traceWords.noReadings;
  const gaps = commonGaps(trace.probes, trace.readUntilMs).filter(
    (gap) => gap.toMs >= view.fromMs && gap.fromMs <= view.toMs,
  );
  const parts = [
    traceWords.summary(temperature(extent.lowC), temperature(extent.highC)),
    traceWords.gaps(gaps.length),
    traceWords.cycles(trace.cycles),
  ];
  return parts.filter((part) => part !== '').join(' ');
}
