import { useSignal } from '@preact/signals';
import { spotPlaces } from '../../../../shared/iron/spots.ts';
import type { IronEvenness } from '../../../../shared/messages/evenness.ts';
import { evennessWords, placeWords } from '../../../../shared/words/evenness.ts';
import { tabKeep } from '../../../parts/browser.ts';
import { Target } from '../../../parts/target.tsx';
import { unit } from '../../../parts/unit.ts';
import { Field, Pick } from '../../fields/field.tsx';
import { changeEvenness } from './ask-evenness.ts';
import { checkDraft, type Draft, inUnitNow, nextPlace, readDraft } from './spot-draft.ts';

/** Takes one spot after the other; what is typed survives a reload, and what was kept is with the daemon. */
export function SpotForm({ known }: { readonly known: IronEvenness }) {
  const { iron } = known;
  const kept = `spot-typed-${iron}`;
  const draft = useSignal<Draft>(readDraft(tabKeep.read(kept), unit.peek()));
  const wrong = useSignal<{ readonly at: 'reading' | 'offBy'; readonly why: string } | null>(null);
  const put = (next: Draft): void => {
    draft.value = next;
    wrong.value = null;
    tabKeep.write(kept, JSON.stringify(next));
  };
  const shown = inUnitNow(draft.value, unit.value);
  const place = shown.place ?? nextPlace(known) ?? 'probe';
  const add = async (): Promise<void> => {
    const checked = checkDraft(shown, place);
    wrong.value = checked.kind === 'wrong' ? checked : null;
    if (checked.kind === 'wrong') return;
    const after = await changeEvenness(iron, 'spots', checked.spot, (now) => saidOf(place, now));
    if (after !== null) put({ ...shown, place: null, reading: '' });
  };
  return (
    <details class="evenness-typed" open={known.spots.length > 0 || draft.peek().reading !== ''}>
      <summary>{evennessWords.typedTitle}</summary>
      <p class="evenness-caution">{evennessWords.caution}</p>
      <p class="quiet">
        {evennessWords.means} {evennessWords.named}
      </p>
      <Pick
        label={evennessWords.place}
        options={spotPlaces.map((one) => [one, placeWords[one]] as const)}
        chosen={place}
        onPick={(picked) => put({ ...shown, place: picked })}
      />
      <div class="evenness-fields">
        <Field
          id={`spot-${iron}-reading`}
          label={evennessWords.reading}
          fullLabel={evennessWords.readingOf(placeWords[place])}
          number
          sign={`°${unit.value}`}
          text={shown.reading}
          error={wrong.value?.at === 'reading' ? wrong.value.why : ''}
          onText={(reading) => put({ ...shown, reading })}
        />
        <Field
          id={`spot-${iron}-off`}
          label={evennessWords.thermometer}
          means={evennessWords.thermometerMeans}
          number
          sign={`°${unit.value}`}
          text={shown.offBy}
          error={wrong.value?.at === 'offBy' ? wrong.value.why : ''}
          onText={(offBy) => put({ ...shown, offBy })}
        />
      </div>
      <Target main onPress={() => void add()}>
        {evennessWords.keep}
      </Target>
    </details>
  );
}

function saidOf(place: keyof typeof placeWords, now: IronEvenness): string {
  const next = nextPlace(now);
  return next === null
    ? evennessWords.kept(placeWords[place])
    : evennessWords.keptNext(placeWords[place], placeWords[next]);
}
