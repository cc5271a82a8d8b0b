import { saysCold } from '../iron/check/pad.ts';
import { seatOf, watchedHow } from '../thermometer/place.ts';
import { COLD_C } from '../thermometer/thermometer.ts';
import type { WatchState } from './state.ts';

/** Whether its plate was hot, and has not been measured cold since. */
export const isHotNow = (state: WatchState): boolean => state.heat.is === 'hot' && isHot(state);

/** Whether an iron is in use: measured hot, or said to be on the work while nothing says that it is cold. */
export const isInUse = (state: WatchState): boolean =>
  isHotNow(state) || (state.work.place === 'on-work' && isHot(state));

/**
 * Whether a plate is to be treated as hot: until it was measured under 43 degC by whatever serves it, and always while
 * nothing does.
 */
export function isHot({ settings, thermometers, checks }: WatchState): boolean {
  if (settings === null) return true;
  const { iron, probes } = settings;
  const own = probes.filter((p) => iron.probes.includes(p.id));
  const seats = own.map((p) => seatOf(p, iron.id));
  if (seats.includes('not-told')) return true;
  switch (watchedHow(own, iron.id)) {
    case 'monitored':
      return own.some((p, i) => seats[i] === 'fitted' && thermometers[p.id]?.heat !== 'cold');
    case 'checked': {
      const lies = Object.values(checks.pads).some(
        ({ contact }) => contact !== null && contact.hottestC >= COLD_C,
      );
      return checks.last === null || !saysCold(checks.last) || lies;
    }
    case 'typed':
      return checks.typed === null || checks.typed.plateC >= COLD_C;
    case 'not-told':
      return true;
  }
}
