import { useSignal } from '@preact/signals';
import type { IronLive } from '../../../shared/messages/live.ts';
import { typedWords } from '../../../shared/words/checks.ts';
import { ask } from '../../link/commands.ts';
import { tabKeep } from '../../parts/browser.ts';
import { Target } from '../../parts/target.tsx';
import { temperature, unit } from '../../parts/unit.ts';
import { Field } from '../../setup/fields/field.tsx';
import { readPlateC } from '../../setup/fields/number.ts';
import { ageText } from './moment-text.ts';
import './moments.css';

/** Takes what a hand thermometer reads on an iron's plate now, and says what was typed last. */
export function TypedReading({ iron }: { readonly iron: IronLive }) {
  const kept = `typed-${iron.id}`;
  const text = useSignal(tabKeep.read(kept) ?? '');
  const error = useSignal('');
  const put = (typed: string): void => {
    text.value = typed;
    error.value = '';
    tabKeep.write(kept, typed);
  };
  const add = (): void => {
    if (text.peek().trim() === '') return;
    const plateC = readPlateC(text.peek(), unit.peek());
    if (plateC === null) {
      error.value = typedWords.wrong(`°${unit.peek()}`);
      return;
    }
    put('');
    ask({ what: 'typed', iron: iron.id, plateC }, typedWords.command(iron.name, temperature(plateC)));
  };
  return (
    <details class="typed-reading" open={iron.watched === 'typed' || text.peek() !== ''}>
      <summary>{typedWords.title}</summary>
      <div class="typed-line">
        <Field
          id={`hand-${iron.id}`}
          label={typedWords.field}
          number
          sign={`°${unit.value}`}
          text={text.value}
          error={error.value}
          onText={put}
        />
        <Target testId="keep-typed" onPress={add}>
          {typedWords.add}
        </Target>
      </div>
    </details>
  );
}

/** What was typed last of an iron that something else is known of too; over the limit it is answered here at once. */
export function TypedLast({ iron }: { readonly iron: IronLive }) {
  const { typed, schedule, watched } = iron;
  if (typed === null) return null;
  const over = typed.standing.kind === 'over-limit';
  return (
    <div role="status" data-testid="typed-last">
      {watched === 'typed' ? null : (
        <p>
          {temperature(typed.plateC)}, {typedWords.ago(ageText(typed.ageMs))}.
        </p>
      )}
      {over ? (
        <p class="typed-over">
          {typedWords.over(temperature(typed.plateC), temperature(schedule.fabricLimitC))}
        </p>
      ) : null}
    </div>
  );
}
