import { useSignal } from '@preact/signals';
import { fixings, type PlaceDraft, type PlateSpot, plateSpots } from '../../../shared/thermometer/place.ts';
import { fixingWords, placeWords, spotWords } from '../../../shared/words/checks.ts';
import { Target } from '../../parts/target.tsx';
import { tellPlace } from '../../setup/changing.ts';
import './moments.css';

interface PlaceAskProps {
  readonly probe: { readonly id: string; readonly label: string };
  readonly ironName: string;
  /** Why it is asked. */
  readonly why?: string;
  readonly onTold?: () => void;
}

/** Asks where a probe is by large targets: two touches for one on the plate, one for any other. */
export function PlaceAsk({ probe, ironName, why, onTold }: PlaceAskProps) {
  const spot = useSignal<PlateSpot | null>(null);
  const tell = async (place: PlaceDraft): Promise<void> => {
    if (await tellPlace(probe.id, place, placeWords.told(probe.label, placeText(place)))) onTold?.();
  };
  const at = spot.value;
  return (
    <section
      class="place-ask"
      aria-label={placeWords.ask(probe.label, ironName)}
      data-testid="place-ask"
      data-probe={probe.id}
    >
      <p class="place-question">
        {at === null ? placeWords.ask(probe.label, ironName) : placeWords.askHow(spotWords[at])}
      </p>
      {why === undefined ? null : <p>{why}</p>}
      {at === null ? (
        <div class="choice-row" role="group" aria-label={placeWords.title}>
          {plateSpots.map((one) => (
            <Target key={one} onPress={() => (spot.value = one)}>
              {placeWords.spot[one]}
            </Target>
          ))}
          <Target onPress={() => void tell({ kind: 'check-pad' })}>{placeWords.pad}</Target>
          <Target onPress={() => void tell({ kind: 'loose' })}>{placeWords.loose}</Target>
        </div>
      ) : (
        <div class="choice-row" role="group" aria-label={placeWords.askHow(spotWords[at])}>
          {fixings.map((by) => (
            <Target key={by} onPress={() => void tell({ kind: 'fitted', spot: at, by })}>
              {fixingWords[by]}
            </Target>
          ))}
          <Target onPress={() => (spot.value = null)}>{placeWords.back}</Target>
        </div>
      )}
    </section>
  );
}

/** A place in words; null: nobody told it. */
export function placeText(place: PlaceDraft | null): string {
  if (place === null) return placeWords.assumed;
  switch (place.kind) {
    case 'fitted':
      return placeWords.fitted(spotWords[place.spot], fixingWords[place.by].toLowerCase());
    case 'check-pad':
      return placeWords.inPad;
    case 'loose':
      return placeWords.isLoose;
  }
}
