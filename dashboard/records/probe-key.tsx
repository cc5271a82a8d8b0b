import type { Trace } from '../../shared/messages/trace.ts';
import { seatWords } from '../../shared/words/checks.ts';
import { LINES } from '../chart/look.ts';

/** Which line is which probe's, where there are several. */
export function ProbeKey({ trace }: { readonly trace: Trace }) {
  if (trace.probes.length < 2) return null;
  const labels = new Map(
    trace.settings.flatMap(({ probes }) =>
      probes.map(({ id, label, seat }) => [id, seat === 'fitted' ? label : `${label} (${seatWords[seat]})`]),
    ),
  );
  return (
    <ul class="probe-key">
      {trace.probes.map(({ id }, i) => (
        <li key={id}>
          <svg class="probe-line" viewBox="0 0 48 8" aria-hidden="true" focusable="false">
            <path class={`trace-stroke trace-stroke--line-${(i % LINES) + 1}`} d="M0 4 H48" />
          </svg>
          {labels.get(id) ?? id}
        </li>
      ))}
    </ul>
  );
}
