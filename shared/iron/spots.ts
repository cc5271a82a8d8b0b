import { z } from 'zod';
import { rectangularU } from '../calibration/rectangular.ts';
import { plateTemperatureC } from '../units/plate-temperature.ts';
import { type MadeWith, madeWithSchema } from './dial/chart.ts';
import { type Evenness, evennessOf, type Unevenness } from './evenness.ts';

/**
 * Spot readings of a plate, typed from a hand thermometer. Each is held against what the probe read at that moment, so
 * that the thermostat's swing falls out; and all against the one at the probe's own place, so that what probe and
 * thermometer are apart falls out too.
 */

/** Where on the plate. `probe`: beside the probe, which the other places are held against. */
export const spotPlaces = ['probe', 'toe', 'heel', 'left', 'right', 'middle'] as const;
export type SpotPlace = (typeof spotPlaces)[number];

export const typedSpotSchema = z
  .strictObject({
    place: z.enum(spotPlaces),
    readC: plateTemperatureC,
    /** What the hand thermometer may be off by, K either way, as the user states it. */
    thermometerK: z.number().gt(0).max(20),
    /** What the probe read at that moment, degC, and how fast that went, K/s. */
    probeC: z.number(),
    slopeKPerS: z.number(),
    madeWith: madeWithSchema,
    at: z.iso.datetime({ offset: true }),
  })
  .readonly();
export type TypedSpot = z.infer<typeof typedSpotSchema>;

/** How far the hottest of several probes was over the one that leads, K: means over the same whole cycles. */
const probesLookSchema = z
  .strictObject({ lead: z.string(), overLeadK: z.number().min(0), at: z.iso.datetime({ offset: true }) })
  .readonly();
export type ProbesLook = z.infer<typeof probesLookSchema>;

const KEEP_LOOKS = 10;

/** What is kept of how evenly one iron's plate is hot. */
export const keptPlateSchema = z.strictObject({
  iron: z.string().min(1).max(64),
  simulated: z.boolean(),
  /** The last one at each place. */
  spots: z.array(typedSpotSchema).max(spotPlaces.length).readonly(),
  looks: z.array(probesLookSchema).max(KEEP_LOOKS).readonly(),
});
export type KeptPlate = z.infer<typeof keptPlateSchema>;

export const noPlate = (iron: { readonly id: string; readonly simulated: boolean }): KeptPlate => ({
  iron: iron.id,
  simulated: iron.simulated,
  spots: [],
  looks: [],
});

/** With one more spot; it takes the place of an earlier one there. */
export const withSpot = (kept: KeptPlate, spot: TypedSpot): KeptPlate => ({
  ...kept,
  spots: [...kept.spots.filter(({ place }) => place !== spot.place), spot],
});

/** Without the spot at a place; null where there is none. */
export const withoutSpot = (kept: KeptPlate, place: SpotPlace): KeptPlate | null =>
  kept.spots.some((spot) => spot.place === place)
    ? { ...kept, spots: kept.spots.filter((spot) => spot.place !== place) }
    : null;

export const withLook = (kept: KeptPlate, look: ProbesLook): KeptPlate => ({
  ...kept,
  looks: [...kept.looks, look].slice(-KEEP_LOOKS),
});

/** From reading to typing, s: the plate goes on by its slope meanwhile (our own choice). */
const TYPED_WITHIN_S = 5;

/**
 * Standard uncertainty of one spot, K: the thermometer's limits and what the plate went on by, both taken for limits.
 * One thermometer is partly off alike everywhere, which falls out; as nobody knows how much, nothing is taken off for it.
 */
const spotUK = ({ thermometerK, slopeKPerS }: TypedSpot): number =>
  rectangularU(Math.hypot(thermometerK, TYPED_WITHIN_S * slopeKPerS));

const sameProbe = (a: MadeWith, b: MadeWith): boolean =>
  a.probe === b.probe && a.calibration === b.calibration;

/** The spot beside the probe, which the others are held against; null before it is typed. */
const besideProbe = ({ spots }: Pick<KeptPlate, 'spots'>): TypedSpot | null =>
  spots.find(({ place }) => place === 'probe') ?? null;

/** Whether a spot can be held against the one beside the probe: read by the same probe under the same calibration. */
function counts(kept: Pick<KeptPlate, 'spots'>, spot: TypedSpot): boolean {
  const beside = besideProbe(kept);
  return beside !== null && sameProbe(spot.madeWith, beside.madeWith);
}

/** How far a spot is over the probe's place, K; null where it can't be held against that. */
export function overProbeK(kept: Pick<KeptPlate, 'spots'>, spot: TypedSpot): number | null {
  const beside = besideProbe(kept);
  if (beside === null || !counts(kept, spot)) return null;
  return spot.readC - spot.probeC - (beside.readC - beside.probeC);
}

/** The evenness that the typed spots show, with the probe's place leading; null for fewer than two that count. */
export function typedEvenness(kept: Pick<KeptPlate, 'spots'>): Evenness | null {
  const beside = besideProbe(kept);
  if (beside === null) return null;
  const spots = kept.spots.flatMap((spot) => {
    const overK = overProbeK(kept, spot);
    return overK === null ? [] : [{ at: spot.place, plateC: beside.readC + overK, uK: spotUK(spot) }];
  });
  return evennessOf(spots, 'probe');
}

/** For one probe; null where no spot was found hotter than its own place, or it was not looked at. */
export function unevennessFor(kept: Pick<KeptPlate, 'spots'>, probe: string): Unevenness | null {
  if (besideProbe(kept)?.madeWith.probe !== probe) return null;
  const { overLeadK = null, overLeadUK = null } = typedEvenness(kept) ?? {};
  if (overLeadK === null || overLeadUK === null || overLeadK <= 0) return null;
  return { overK: overLeadK, uK: overLeadUK };
}

/** How far the plate is to be expected to be over what one probe reads, K: the most that spots or probes have shown. */
export const expectedOverK = (kept: Pick<KeptPlate, 'spots' | 'looks'>, probe: string): number =>
  Math.max(
    0,
    unevennessFor(kept, probe)?.overK ?? 0,
    ...kept.looks.flatMap((look) => (look.lead === probe ? [look.overLeadK] : [])),
  );

/** What keeps a spot from being taken. */
export type SpotObjection = 'no-reading' | 'cold' | 'moving' | 'far-off';

/** A plate under this is no iron at work, degC; one that goes faster can't be read by hand, K/s (our own choices). */
const LEAST_C = 60;
const FASTEST_K_PER_S = 0.5;
/** No plate in use is so uneven, K (our own choice). */
const FAR_OFF_K = 60;

/** Looks at a spot that was typed against what the probe reads at that moment; null: nothing is against it. */
export function objectionToSpot(
  readC: number,
  probe: { readonly plateC: number; readonly slopeKPerS: number | null } | null,
): SpotObjection | null {
  if (probe?.slopeKPerS === null || probe === null) return 'no-reading';
  if (probe.plateC < LEAST_C) return 'cold';
  if (Math.abs(probe.slopeKPerS) > FASTEST_K_PER_S) return 'moving';
  return Math.abs(readC - probe.plateC) > FAR_OFF_K ? 'far-off' : null;
}
