import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type Outcome, outcomeSchema } from '../../../shared/messages/command.ts';
import type { AirAnswer, Forecast } from '../../../shared/messages/cure.ts';
import { forecastWords as words } from '../../../shared/words/air.ts';
import { readAir } from '../../cure/air.ts';
import { viewOnly } from '../../link/daemon.ts';
import { requestIds } from '../../link/request-ids.ts';
import { tabKeep } from '../../parts/browser.ts';
import { dayAndTime } from '../../parts/day.ts';
import { useFocusKept } from '../../parts/focus-kept.ts';
import { Target } from '../../parts/target.tsx';
import { unit } from '../../parts/unit.ts';
import { put } from '../ask-daemon.ts';
import { sayOf, unsay } from '../changing.ts';
import { keptText, notKept } from '../kept-text.ts';
import { SaidLine } from '../said-line.tsx';
import {
  checkDraft,
  type Draft,
  inUnitNow,
  MOST_ROWS,
  readDraft,
  startingDraft,
  withNewRow,
} from './forecast-draft.ts';
import { ForecastRows } from './forecast-rows.tsx';

const KEPT = 'forecast-typed';
const SUBJECT = 'forecast';

interface ForecastFormProps {
  readonly forecast: AirAnswer['forecast'];
  /** The daemon's time. */
  readonly nowMs: number;
}

/** A day's forecast, typed in row by row; what is typed and not kept yet survives a reload. */
export function ForecastForm({ forecast, nowMs }: ForecastFormProps) {
  const draft = useSignal<Draft | null>(readDraft(tabKeep.read(KEPT)));
  const isTried = useSignal(false);
  const ids = useRef(requestIds());
  const shown = inUnitNow(draft.value ?? startingDraft(forecast, nowMs, unit.value), unit.value);
  const checked = checkDraft(shown, nowMs);
  const change = (next: Draft | null): void => {
    draft.value = next;
    isTried.value = isTried.value && next !== null;
    tabKeep.write(KEPT, JSON.stringify(next));
    unsay(SUBJECT);
  };
  const putBack = (): void =>
    void send(pointsOf(forecast), (outcome) => keptText(outcome, words.putBack), null);
  const send = async (
    points: Forecast['points'],
    text: (outcome: Outcome) => string,
    undo: (() => void) | null,
  ): Promise<void> => {
    const commandId = ids.current.idOf(points);
    const answer = await put('/api/air/forecast', { commandId, points }, outcomeSchema);
    if (answer.kind === 'done') {
      ids.current.arrived();
      change(null);
      await readAir();
      sayOf(SUBJECT, text(answer.value), undo);
    } else sayOf(SUBJECT, notKept(answer));
  };
  const keep = (): void => {
    isTried.value = true;
    const last = checked.points?.at(-1);
    if (checked.points === null || last === undefined)
      sayOf(SUBJECT, checked.errors.get('whole') ?? words.wrongFields);
    else {
      const until = dayAndTime(last.at);
      const text = (outcome: Outcome): string => keptText(outcome, words.kept(until), words.taken(until));
      void send(checked.points, text, putBack);
    }
  };
  const clear = (): void => void send([], (outcome) => keptText(outcome, words.cleared), putBack);
  const until = forecast.at(-1)?.at;
  const title = useRef<HTMLHeadingElement>(null);
  useFocusKept(`${draft.value === null} ${until === undefined}`, title);
  return (
    <section class="air-form" aria-label={words.title} data-testid="forecast">
      <h3 ref={title} tabIndex={-1}>
        {words.title}
      </h3>
      <p class="quiet">{words.means}</p>
      <p data-testid="forecast-stands">
        {until === undefined ? words.none : words.stands(dayAndTime(until))}
      </p>
      {viewOnly.value ? null : (
        <>
          <p class="quiet">{words.rowsMean}</p>
          <ForecastRows draft={shown} errors={isTried.value ? checked.errors : null} onChange={change} />
          <div class="choice-row">
            {shown.rows.length >= MOST_ROWS ? null : (
              <Target testId="add-hour" onPress={() => change(withNewRow(shown))}>
                {words.add}
              </Target>
            )}
            {draft.value === null ? null : <Target onPress={() => change(null)}>{words.drop}</Target>}
            {until === undefined ? null : (
              <Target testId="clear-forecast" onPress={clear}>
                {words.clear}
              </Target>
            )}
          </div>
          <div class="said">
            <Target main testId="keep-forecast" onPress={keep}>
              {words.save}
            </Target>
            {draft.value === null ? null : <p>{words.unsaved}</p>}
            <SaidLine subject={SUBJECT} />
          </div>
        </>
      )}
    </section>
  );
}

const pointsOf = (forecast: AirAnswer['forecast']): Forecast['points'] =>
  forecast.map(({ at, airC, rhPct }) => ({ at, airC, rhPct }));
