import type { Trace } from '../../shared/messages/trace.ts';
import { traceWords } from '../../shared/words/records.ts';
import type { View } from '../chart/view.ts';
import { Target } from '../parts/target.tsx';
import type { Found } from './found.ts';

interface FindingsListProps {
  readonly trace: Trace | null;
  readonly found: readonly Found[];
  readonly view: View;
  readonly chosen: string | null;
  readonly timeText: (ms: number) => string;
  readonly choose: (one: Found) => void;
  readonly step: (by: 1 | -1) => void;
}

/** The findings of the span as text, each a target that shows it on the trace. */
export function FindingsList({ trace, found, view, chosen, timeText, choose, step }: FindingsListProps) {
  const shown = found.filter(({ atMs }) => atMs >= view.fromMs && atMs <= view.toMs);
  const picked = found.find((one) => one.id === chosen);
  return (
    <section class="findings" aria-labelledby="findings-title">
      <h3 id="findings-title" class="records-part">
        {traceWords.findings}
      </h3>
      <div class="choice-row">
        <Target disabled={found.length === 0} onPress={() => step(-1)}>
          {traceWords.previous}
        </Target>
        <Target disabled={found.length === 0} onPress={() => step(1)}>
          {traceWords.next}
        </Target>
      </div>
      <p class="findings-chosen" role="status" data-testid="finding-chosen">
        {picked === undefined ? '' : `${timeText(picked.atMs)} ${picked.text}`}
      </p>
      {trace === null ? null : (
        <p class="quiet">
          {shown.length === 0 ? traceWords.noFindings : ''} {traceWords.cycles(trace.cycles)}{' '}
          {trace.findingsLeftOut === 0 ? '' : traceWords.leftOut(trace.findingsLeftOut)}
        </p>
      )}
      <ol class="findings-list">
        {shown.map((one) => (
          <li key={one.id}>
            <button
              type="button"
              class={one.strong ? 'finding finding--strong' : 'finding'}
              aria-pressed={one.id === chosen}
              data-testid="finding"
              onClick={() => choose(one)}
            >
              <span class="finding-time">{timeText(one.atMs)}</span> <span>{one.text}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
