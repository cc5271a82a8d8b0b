import type { Iron } from '../../shared/iron/iron.ts';
import {
  type KeptPlate,
  type SpotPlace,
  type TypedSpot,
  withoutSpot,
  withSpot,
} from '../../shared/iron/spots.ts';
import { evennessWords } from '../../shared/words/evenness.ts';
import { Refusal } from '../refusal.ts';
import { checked } from './change.ts';
import { plateOf, type Settings } from './settings.ts';

/** Changes of what is kept of how evenly irons' plates are hot. */

type Change = { readonly settings: Settings };

/** Puts what is kept of one plate in the place of what was. */
export function withPlate(settings: Settings, plate: KeptPlate): Settings {
  const others = settings.plates.filter((p) => p.iron !== plate.iron || p.simulated !== plate.simulated);
  return { ...settings, plates: [...others, plate] };
}

const changed = (settings: Settings, plate: KeptPlate): Change => ({
  settings: checked(withPlate(settings, plate)),
});

/** Adds a spot that was typed; it takes the place of an earlier one there. */
export const withTypedSpot = (settings: Settings, iron: Iron, spot: TypedSpot): Change =>
  changed(settings, withSpot(plateOf(settings, iron), spot));

/** Takes a wrong spot out. */
export function withoutTypedSpot(settings: Settings, iron: Iron, place: SpotPlace): Change {
  const plate = withoutSpot(plateOf(settings, iron), place);
  if (plate === null) throw new Refusal('conflict', evennessWords.notTyped, 'place');
  return changed(settings, plate);
}

/** Forgets all that was typed and measured of a plate's evenness. */
export const withForgottenPlate = (settings: Settings, iron: Iron): Change =>
  changed(settings, { ...plateOf(settings, iron), spots: [], looks: [] });
