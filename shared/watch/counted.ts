import { seatOf } from '../thermometer/place.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import { noChecks } from './checks.ts';
import type { WatchState } from './state.ts';

/** Why what a probe reads is no plate temperature: nothing lies on its pad, it is loose, or its place was not told. */
export const uncounted = ['bare', 'loose', 'not-told'] as const;
export type Uncounted = (typeof uncounted)[number];

/** What a probe's reading counts as: of a plate watched all the time, of one on its check pad, or of none. */
const countedAs = ['monitored', 'checked', 'settling', ...uncounted] as const;
export type CountedAs = (typeof countedAs)[number];

/** As much of a state as this takes; without settings nothing is known of any place. */
export type CountingState = Partial<Pick<WatchState, 'settings' | 'checks'>>;

export function countsAs({ settings = null, checks = noChecks }: CountingState, id: ProbeId): CountedAs {
  const probe = settings?.probes.find((p) => p.id === id);
  if (settings === null || probe === undefined) return 'monitored';
  const seat = seatOf(probe, settings.iron.id);
  if (seat === 'fitted') return 'monitored';
  if (seat !== 'check-pad') return seat;
  const contact = checks.pads[id]?.contact ?? null;
  if (contact === null) return 'bare';
  return contact.settledMs === null ? 'settling' : 'checked';
}

export const isCounted = (as: CountedAs): as is Exclude<CountedAs, Uncounted> =>
  !uncounted.some((one) => one === as);
