import { useEffect, useState } from 'preact/hooks';
import type { Piece } from '../../shared/piece/piece.ts';
import { pieceCoatWords as words } from '../../shared/words/coats.ts';
import { CementDoubts } from '../coats/cement-doubts.tsx';
import { lastCement } from '../coats/cements-by-use.ts';
import { CoatCard } from '../coats/coat-card.tsx';
import { Lately } from '../coats/lately.tsx';
import { listedCoats } from '../coats/order.ts';
import { startCoats } from '../coats/say.ts';
import { followCements } from '../cure/cements.ts';
import { coatsNowMs } from '../cure/clock.ts';
import { viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { at, isInHand } from './bench.ts';

/** The coats of this piece, and the clock of where one works, started in one press. */
export function PieceCoats({ piece }: { readonly piece: Piece }) {
  useEffect(followCements, []);
  const nowMs = coatsNowMs.value;
  const own = listedCoats.value.filter((coat) => coat.piece === piece.id);
  return (
    <section class="piece-coats" aria-labelledby="piece-coats-title" data-testid="piece-coats">
      <h3 id="piece-coats-title">{words.title}</h3>
      {viewOnly.value ? null : <CementHere piece={piece} />}
      {own.length === 0 ? <p class="quiet">{words.none}</p> : null}
      {nowMs === null || own.length === 0 ? null : (
        <ul class="coats" aria-labelledby="piece-coats-title">
          {own.map((coat, i) => (
            <CoatCard key={coat.id} coat={coat} nowMs={nowMs} place={i} />
          ))}
        </ul>
      )}
    </section>
  );
}

/** On the area under work, else on the whole side, with the cement that was used last. */
function CementHere({ piece }: { readonly piece: Piece }) {
  const place = isInHand.value ? at.value : null;
  const cement = lastCement.value;
  const [refused, setRefused] = useState('');
  const start = (): void => {
    if (place === null || cement === null) return;
    setRefused(startCoats({ cement, piece, places: [{ side: place.side, area: place.area }], agoS: 0 }));
  };
  return (
    <>
      <div class="choice-row">
        <Target disabled={place === null || cement === null} onPress={start} testId="cement-here">
          {words.here}
          <small>
            {place === null
              ? words.hereNot
              : cement === null
                ? words.hereNoCement
                : words.hereOf(place.areaName ?? place.sideName, cement.name)}
          </small>
          {cement === null ? null : <CementDoubts cement={cement} />}
        </Target>
        <a class="target" href={`#bench/${encodeURIComponent(piece.id)}`}>
          {words.other}
        </a>
      </div>
      <p role="status" data-testid="start-refused">
        {refused}
      </p>
      <Lately piece={piece.id} />
    </>
  );
}
