import type { PlaceDraft, ProbePlace } from '../../shared/thermometer/place.ts';
import type { ProbeId } from '../../shared/thermometer/sample.ts';
import { settingsWords } from '../../shared/words/settings.ts';
import { Refusal } from '../refusal.ts';
import { checked } from './change.ts';
import { sitsOn } from './moved.ts';
import type { Settings } from './settings.ts';

/** Changes of where probes are. */

/** Takes in what the user says of where a probe is, on the iron that it sits on now. */
export function withPlace(
  settings: Settings,
  probe: ProbeId,
  is: PlaceDraft,
  toldAt: string,
): { readonly settings: Settings; readonly place: ProbePlace } {
  if (!settings.probes.some((p) => p.id === probe))
    throw new Refusal('unknown', settingsWords.noProbe(probe));
  const iron = sitsOn(settings.irons, probe);
  if (iron === undefined) throw new Refusal('conflict', settingsWords.sitsNowhere, 'id');
  const place = { probe, iron: iron.id, toldAt, is };
  const others = settings.places.filter((p) => p.probe !== probe);
  return { settings: checked({ ...settings, places: [...others, place] }), place };
}
