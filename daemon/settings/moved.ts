import type { Iron } from '../../shared/iron/iron.ts';
import type { ProbePlace } from '../../shared/thermometer/place.ts';
import type { ProbeId } from '../../shared/thermometer/sample.ts';
import type { Settings } from './settings.ts';

/** The iron that a probe sits on. */
export const sitsOn = (irons: readonly Iron[], probe: ProbeId): Iron | undefined =>
  irons.find((i) => i.probes.includes(probe));

/**
 * The places after probes have gone from iron to iron: one that was never asked about was taken to be fitted to the iron
 * that it leaves, so that on another one it has to be told.
 */
export function placesAfter(settings: Settings, irons: readonly Iron[]): readonly ProbePlace[] {
  const left = settings.irons.flatMap(({ id, probes }) =>
    probes
      .filter((p) => sitsOn(irons, p)?.id !== id && !settings.places.some((place) => place.probe === p))
      .map((probe) => ({ probe, iron: id, toldAt: null, is: null })),
  );
  return [...settings.places, ...left];
}
