import type { CoatAnswer } from '../../shared/messages/cure.ts';
import type { AtLive } from '../../shared/messages/piece.ts';
import { pieceCoatWords as words } from '../../shared/words/coats.ts';
import { coatsNowMs } from '../cure/clock.ts';
import { clockTime } from '../parts/clock-time.ts';
import { ironTime, listText } from './coat-text.ts';
import { coats } from './coats.ts';

/** Wet cement on the piece that is worked, but not where the iron is: one line, quiet. */
export function WetElsewhere({ here }: { readonly here: AtLive | null }) {
  const nowMs = coatsNowMs.value;
  if (here === null || nowMs === null) return null;
  const wet = coats.value.filter((coat) => coat.wet && coat.piece === here.piece && !isHere(coat, here));
  if (wet.length === 0) return null;
  return (
    <p class="quiet" data-testid="wet-elsewhere">
      {words.elsewhere(listText(wet.map((coat) => placeText(coat, nowMs))))}
    </p>
  );
}

/** A coat on the whole side is wherever the iron is on it; one on an area is not, while nobody has named the iron's. */
const isHere = ({ side, area }: CoatAnswer, here: AtLive): boolean =>
  side === here.side && (area === null || area === here.area);

/** Without the piece's own name, which stands above. */
function placeText(coat: CoatAnswer, nowMs: number): string {
  const { placeName, pieceName } = coat;
  const place = placeName.startsWith(`${pieceName}, `) ? placeName.slice(pieceName.length + 2) : placeName;
  const time = ironTime(coat, nowMs, clockTime);
  return time === '' ? place : words.about(place, time);
}
