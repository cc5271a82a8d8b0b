import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { pieceWords } from '../../shared/words/pieces.ts';
import { detail, part } from '../frame/nav-view.ts';
import { isLive } from '../link/daemon.ts';
import { useFocusKept } from '../parts/focus-kept.ts';
import { Note } from '../parts/note.tsx';
import { isInHand, shownPiece } from './bench.ts';
import { Choosing } from './choosing.tsx';
import { Editor } from './edit/editor.tsx';
import { followPieces, pieces, piecesTrouble } from './pieces.ts';
import { Shrinkage } from './shrinkage.tsx';
import { VisitsPage } from './visits.tsx';
import { WorkView } from './work-view.tsx';
import './piece.css';

/** The pieces: the one that is worked with its sides, and behind it the list of all, its map, and what stages do. */
export function PiecePage() {
  useEffect(followPieces, []);
  const title = useRef<HTMLHeadingElement>(null);
  useFocusKept(`${shownPiece.value} ${isInHand.value}`, title);
  return (
    <div class="piece" data-testid="piece">
      <Shown title={title} />
    </div>
  );
}

function Shown({ title }: { readonly title: RefObject<HTMLHeadingElement> }) {
  if (part.value === 'shrinkage') return <Shrinkage />;
  if (pieces.value === null) return <NotRead />;
  if (part.value === 'new') return <Editor key="new" id={null} />;
  if (part.value === 'all' || shownPiece.value === null) return <Choosing />;
  if (detail.value === 'edit') return <Editor key={shownPiece.value} id={shownPiece.value} />;
  if (detail.value === 'visits') return <VisitsPage key={shownPiece.value} id={shownPiece.value} />;
  return <WorkView key={shownPiece.value} id={shownPiece.value} title={title} />;
}

const NotRead = () =>
  piecesTrouble.value === '' || !isLive.value ? (
    <p role="status">{pieceWords.reading}</p>
  ) : (
    <Note hatch="missing" testId="pieces-failed">
      {pieceWords.notRead(piecesTrouble.value)}
    </Note>
  );
