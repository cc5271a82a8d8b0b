import { type SpotPlace, spotPlaces } from '../../shared/iron/spots.ts';
import type { EvennessShown } from '../../shared/messages/evenness.ts';
import { placeWords, evennessWords as words } from '../../shared/words/evenness.ts';

/** How evenly a plate is hot, as one short sentence. */
export function evennessText(
  { by, hottest, coldest, spreadK, offByK }: EvennessShown,
  labelOf: (probe: string) => string,
  difference: (k: number) => string,
): string {
  const name = (at: string): string => (by === 'probes' ? labelOf(at) : words.the(nameOfPlace(at)));
  const source = by === 'probes' ? words.byProbes : words.byTyped;
  if (spreadK <= offByK) return `${source} ${words.even(difference(offByK))}.`;
  const spread = words.spread(name(hottest), difference(spreadK), name(coldest));
  return `${source} ${spread} ${words.offBy(difference(offByK))}.`;
}

const isPlace = (at: string): at is SpotPlace => spotPlaces.some((place) => place === at);

const nameOfPlace = (at: string): string => (isPlace(at) ? placeWords[at] : at);
