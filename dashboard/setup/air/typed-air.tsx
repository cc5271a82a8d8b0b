import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type Outcome, outcomeSchema } from '../../../shared/messages/command.ts';
import type { AirSaid } from '../../../shared/messages/cure.ts';
import {
  airLineWords,
  airTemperature,
  humidity as humidityText,
  typedAirWords as words,
} from '../../../shared/words/air.ts';
import { air, readAir } from '../../cure/air.ts';
import { requestIds } from '../../link/request-ids.ts';
import { tabKeep } from '../../parts/browser.ts';
import { unit } from '../../parts/unit.ts';
import { post } from '../ask-daemon.ts';
import { Field } from '../fields/field.tsx';
import { keptText, notKept } from '../kept-text.ts';
import { checkDraft, type Draft, emptyDraft, inUnitNow, readDraft } from './typed-draft.ts';

const KEPT = 'air-typed';

/** The air typed in by hand; what is typed and not kept yet survives a reload. */
export function TypedAir() {
  const draft = useSignal<Draft>(readDraft(tabKeep.read(KEPT), unit.peek()));
  const isTried = useSignal(false);
  const said = useSignal('');
  const ids = useRef(requestIds());
  const shown = inUnitNow(draft.value, unit.value);
  const checked = checkDraft(shown);
  const put = (next: Draft): void => {
    draft.value = next;
    tabKeep.write(KEPT, JSON.stringify(next));
  };
  const keep = async (): Promise<void> => {
    isTried.value = true;
    said.value = '';
    if (checked.said === null) return;
    const commandId = ids.current.idOf(checked.said);
    const answer = await post('/api/air', { commandId, ...checked.said }, outcomeSchema);
    if (answer.kind === 'done') {
      ids.current.arrived();
      put(emptyDraft(unit.peek()));
      isTried.value = false;
      said.value = saidText(checked.said, answer.value);
      await readAir();
    } else said.value = notKept(answer);
  };
  return (
    <form
      class="air-form"
      aria-label={words.title}
      data-testid="typed-air"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <h3>{words.title}</h3>
      <p class="quiet">{words.means}</p>
      {air.value?.probes.some(({ heard }) => heard) === true ? (
        <p data-testid="probe-tells">{words.probeTells}</p>
      ) : null}
      <div class="air-fields">
        <Field
          number
          id="air-temperature"
          label={words.temperature}
          sign={`°${unit.value}`}
          text={shown.temperature}
          error={isTried.value ? checked.temperature : ''}
          onText={(temperature) => put({ ...shown, temperature })}
        />
        <Field
          number
          id="air-humidity"
          label={words.humidity}
          sign="%"
          text={shown.humidity}
          error={isTried.value ? checked.humidity : ''}
          means={words.humidityMeans}
          onText={(humidity) => put({ ...shown, humidity })}
        />
      </div>
      <div class="said">
        <button type="submit" class="target target--main" data-testid="keep-air">
          {words.keep}
        </button>
        <p role="status" data-testid="air-said">
          {said.value}
        </p>
      </div>
    </form>
  );
}

function saidText({ airC, rhPct }: AirSaid, outcome: Outcome): string {
  const air = [
    airTemperature(airC, unit.peek()),
    rhPct === null ? airLineWords.noHumidity : airLineWords.humidity(humidityText(rhPct)),
  ] as const;
  return keptText(outcome, words.kept(...air), words.taken(...air));
}
