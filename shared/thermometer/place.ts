import { z } from 'zod';
import { probeIdSchema } from './probe.ts';

/** Where a probe is: on the sole plate of its iron, in the iron's check pad, or lying loose. */

export const plateSpots = ['middle', 'tip', 'heel', 'edge'] as const;
export const fixings = ['clamped', 'sprung', 'fixed'] as const;

/** What the user says of it. */
export const placeDraftSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fitted'), spot: z.enum(plateSpots), by: z.enum(fixings) }),
  z.strictObject({ kind: z.literal('check-pad') }),
  z.strictObject({ kind: z.literal('loose') }),
]);

/** A place holds for one iron: on another one the probe has no place until it is told. */
export const probePlaceSchema = z.strictObject({
  probe: probeIdSchema,
  iron: z.string().min(1).max(64),
  /** Null: nobody told it, it was there before anybody was asked. */
  toldAt: z.iso.datetime({ offset: true }).nullable(),
  /** Null: taken to be fitted to the plate, since an iron with a new probe is watched from its first line on. */
  is: placeDraftSchema.nullable(),
});

export type PlateSpot = (typeof plateSpots)[number];
export type Fixing = (typeof fixings)[number];
export type PlaceDraft = z.infer<typeof placeDraftSchema>;
export type ProbePlace = z.infer<typeof probePlaceSchema>;

/** How a probe serves an iron; of one that was moved here and not told yet, nothing is known. */
export const seats = ['fitted', 'check-pad', 'loose', 'not-told'] as const;
export type Seat = (typeof seats)[number];

/** A probe with its place; none: nothing was said of it since it was first seen. */
export interface Placed {
  readonly place?: ProbePlace;
}

export function seatOf({ place }: Placed, iron: string): Seat {
  if (place === undefined) return 'fitted';
  if (place.iron !== iron) return 'not-told';
  return place.is?.kind ?? 'fitted';
}

/**
 * What stands behind what is said of an iron: a probe on its plate (monitored), a check pad (checked), a hand
 * thermometer (typed); or a probe whose place has yet to be told, and nothing else.
 */
export const watchedHows = ['monitored', 'checked', 'typed', 'not-told'] as const;
export type WatchedHow = (typeof watchedHows)[number];

export function watchedHow(probes: readonly Placed[], iron: string): WatchedHow {
  const here = probes.map((p) => seatOf(p, iron));
  if (here.includes('fitted')) return 'monitored';
  if (here.includes('check-pad')) return 'checked';
  return here.includes('not-told') ? 'not-told' : 'typed';
}
