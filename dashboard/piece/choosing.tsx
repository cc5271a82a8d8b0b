import type { Piece } from '../../shared/piece/piece.ts';
import { pieceWords } from '../../shared/words/pieces.ts';
import { viewOnly } from '../link/daemon.ts';
import { Opening } from '../parts/opening.tsx';
import { Target } from '../parts/target.tsx';
import { isInHand, recentPieces, shownPiece } from './bench.ts';
import { pieceOf, pieces } from './pieces.ts';
import { pieceNow } from './say.ts';

/** All pieces, each to be looked at or taken in hand. */
export function Choosing() {
  const all = (pieces.value ?? []).toSorted((a, b) => a.name.localeCompare(b.name));
  const away = all.filter((piece) => piece.archived);
  const there = all.filter((piece) => !piece.archived);
  return (
    <section class="pieces" aria-labelledby="pieces-title" data-testid="pieces">
      <h2 id="pieces-title" class="piece-title">
        {there.length === 0 ? pieceWords.none : pieceWords.all}
      </h2>
      {there.length === 0 ? <p class="piece-means">{pieceWords.noneMeans}</p> : null}
      <PieceList pieces={there} />
      <div class="choice-row">
        {viewOnly.value ? null : (
          <a class="target target--main" href="#piece/new">
            {pieceWords.add}
          </a>
        )}
      </div>
      {away.length === 0 ? null : (
        <Opening summary={pieceWords.away(away.length)} testId="pieces-away">
          {() => <PieceList pieces={away} />}
        </Opening>
      )}
    </section>
  );
}

const PieceList = ({ pieces: listed }: { readonly pieces: readonly Piece[] }) => (
  <ul class="piece-list">
    {listed.map((piece) => (
      <li key={piece.id} class="piece-item" data-testid="piece-item">
        <a class="way piece-name" href={`#piece/${encodeURIComponent(piece.id)}`}>
          {piece.name}
        </a>
        <span class="quiet">
          {[piece.frame, piece.sides.join(', ')].filter((text) => text !== '').join(' · ')}
        </span>
        {viewOnly.value || piece.archived ? null : (
          <Target label={pieceWords.thisNowOf(piece.name)} onPress={() => takeInHand(piece)}>
            {pieceWords.thisNow}
          </Target>
        )}
      </li>
    ))}
  </ul>
);

/** Says that it is in hand and shows the piece in hand, whichever that is. */
function takeInHand(piece: Piece): void {
  pieceNow(piece.id, piece.name);
  location.hash = '#piece';
}

/** "This piece now", one press each, of those that were worked last. */
export function RecentPieces() {
  const recent = recentPieces.value.flatMap((id) => pieceOf(id) ?? []);
  return (
    <div class="choice-row" role="group" aria-label={pieceWords.recent} data-testid="recent-pieces">
      {viewOnly.value
        ? null
        : recent.map((piece) => (
            <Target
              key={piece.id}
              chosen={isInHand.value && piece.id === shownPiece.value}
              label={pieceWords.thisNowOf(piece.name)}
              onPress={() => takeInHand(piece)}
            >
              {piece.name}
            </Target>
          ))}
      <a class="target" href="#piece/all">
        {pieceWords.all}
      </a>
    </div>
  );
}
