import { useSignal } from '@preact/signals';
import { dialSetupWords, dialToldWords } from '../../../../shared/words/dial.ts';
import { tabKeep } from '../../../parts/browser.ts';
import { Target } from '../../../parts/target.tsx';
import { unit } from '../../../parts/unit.ts';
import { Field } from '../../fields/field.tsx';
import { changeDial } from './ask-dial.ts';
import { checkDraft, type Draft, emptyDraft, inUnitNow, readDraft } from './typed-draft.ts';

const names = ['mark', 'mean', 'peak', 'trough'] as const;
type Name = (typeof names)[number];

const labels: Readonly<Record<Name, string>> = {
  mark: dialSetupWords.typedMark,
  mean: dialSetupWords.typedMean,
  peak: dialSetupWords.typedPeak,
  trough: dialSetupWords.typedTrough,
};

/** Takes readings of a hand thermometer at a mark; what is typed survives a reload. */
export function TypedPoint({ iron }: { readonly iron: string }) {
  const kept = `dial-typed-${iron}`;
  const draft = useSignal<Draft>(readDraft(tabKeep.read(kept), unit.peek()));
  const wrong = useSignal<{ readonly at: Name; readonly why: string } | null>(null);
  const put = (next: Draft): void => {
    draft.value = next;
    tabKeep.write(kept, JSON.stringify(next));
  };
  const shown = inUnitNow(draft.value, unit.value);
  const add = async (): Promise<void> => {
    const checked = checkDraft(shown);
    wrong.value = checked.kind === 'wrong' ? checked : null;
    if (checked.kind === 'wrong') return;
    const { point } = checked;
    const done = await changeDial(iron, 'points', point, dialSetupWords.added(String(point.mark)));
    if (done) put(emptyDraft(unit.peek()));
  };
  return (
    <details class="dial-typed" open={draft.peek().mark !== ''}>
      <summary>{dialSetupWords.typedTitle}</summary>
      <p class="quiet">
        {dialSetupWords.typedMeans} {dialToldWords.count}
      </p>
      <div class="dial-typed-fields">
        {names.map((name) => (
          <Field
            key={name}
            id={`typed-${iron}-${name}`}
            label={labels[name]}
            number
            {...(name === 'mark' ? {} : { sign: `°${unit.value}` })}
            text={shown[name]}
            error={wrong.value?.at === name ? wrong.value.why : ''}
            onText={(text) => {
              put({ ...shown, [name]: text });
              wrong.value = null;
            }}
          />
        ))}
      </div>
      <Target onPress={() => void add()}>{dialSetupWords.add}</Target>
    </details>
  );
}
