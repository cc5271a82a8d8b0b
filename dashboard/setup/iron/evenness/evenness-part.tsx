import { useSignal } from '@preact/signals';
import type { Iron } from '../../../../shared/iron/iron.ts';
import type { IronEvenness } from '../../../../shared/messages/evenness.ts';
import { evennessWords, placeWords } from '../../../../shared/words/evenness.ts';
import { evennessText } from '../../../evenness/evenness-text.ts';
import { useEvenness } from '../../../evenness/evennesses.ts';
import { viewOnly } from '../../../link/daemon.ts';
import { Target } from '../../../parts/target.tsx';
import { difference, temperature } from '../../../parts/unit.ts';
import { probes } from '../../daemon-settings.ts';
import { changeEvenness, evennessSaid } from './ask-evenness.ts';
import { SpotForm } from './spot-form.tsx';
import './evenness.css';

/** How evenly an iron's plate is hot: what its probes and typed spots say, and spots to type, one after the other. */
export function EvennessPart({ iron }: { readonly iron: Iron }) {
  const known = useEvenness(iron.id);
  if (known === null) return null;
  const some = known.spots.length > 0 || known.looks.length > 0;
  return (
    <section class="evenness" aria-label={`${evennessWords.title}: ${iron.name}`} data-testid="evenness-part">
      <h3>{evennessWords.title}</h3>
      <Summary known={known} />
      {known.spots.length === 0 ? null : <Spots known={known} />}
      {viewOnly.value ? null : <SpotForm known={known} />}
      {viewOnly.value || !some ? null : <Forget iron={iron.id} />}
      <p role="status" class="evenness-said" data-testid="evenness-said">
        {evennessSaid.value[iron.id] ?? ''}
      </p>
    </section>
  );
}

const labelOf = (id: string): string => probes.value?.find((one) => one.id === id)?.label ?? id;

function Summary({ known }: { readonly known: IronEvenness }) {
  const { typed, limitsOverK, adviceOverK } = known;
  const said = [known.probes, typed].filter((one) => one !== null);
  return (
    <>
      {said.length === 0 && adviceOverK === 0 ? <p>{evennessWords.unknown}</p> : null}
      {said.map((one) => (
        <p key={one.by}>{evennessText(one, labelOf, difference)}</p>
      ))}
      {adviceOverK === 0 ? null : (
        <p data-testid="evenness-counted">
          {evennessWords.counted(difference(limitsOverK), difference(adviceOverK))}
        </p>
      )}
    </>
  );
}

const Spots = ({ known }: { readonly known: IronEvenness }) => (
  <ul class="evenness-spots">
    {known.spots.map((spot) => (
      <li key={spot.place} data-testid="evenness-spot" data-place={spot.place}>
        <p>
          <strong>{placeWords[spot.place]}</strong>
          <span>{evennessWords.spot(temperature(spot.readC), temperature(spot.probeC))}</span>
          <span class="quiet">{againstProbe(spot)}</span>
        </p>
        {viewOnly.value ? null : (
          <Target
            label={evennessWords.takeOutOf(placeWords[spot.place])}
            onPress={() =>
              void changeEvenness(known.iron, 'removal', { place: spot.place }, () =>
                evennessWords.takenOut(placeWords[spot.place]),
              )
            }
          >
            {evennessWords.takeOut}
          </Target>
        )}
      </li>
    ))}
  </ul>
);

function againstProbe({ place, overProbeK }: IronEvenness['spots'][number]): string {
  if (place === 'probe') return evennessWords.base;
  if (overProbeK === null) return evennessWords.waits;
  if (overProbeK === 0) return evennessWords.same;
  const by = difference(Math.abs(overProbeK));
  return overProbeK > 0 ? evennessWords.over(by) : evennessWords.under(by);
}

function Forget({ iron }: { readonly iron: string }) {
  const asked = useSignal(false);
  if (!asked.value) return <Target onPress={() => (asked.value = true)}>{evennessWords.forget}</Target>;
  return (
    <div class="choice-row">
      <Target
        onPress={() => {
          asked.value = false;
          void changeEvenness(iron, 'forgetting', {}, () => evennessWords.forgotten);
        }}
      >
        {evennessWords.reallyForget}
      </Target>
      <Target onPress={() => (asked.value = false)}>{evennessWords.keepThem}</Target>
    </div>
  );
}
