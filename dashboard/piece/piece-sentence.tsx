import type { RefObject } from 'preact';
import type { Piece } from '../../shared/piece/piece.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { dwellWords, whereWords } from '../../shared/words/pieces.ts';
import { whereText } from '../iron/sentence.tsx';
import { Note } from '../parts/note.tsx';
import { at, isInHand } from './bench.ts';
import { heats } from './pieces.ts';

interface PieceSentenceProps {
  readonly piece: Piece;
  /** The element, which takes the focus. */
  readonly title: RefObject<HTMLHeadingElement>;
}

/** Piece, side, area, and the stage that this visit has reached, or before it the area. */
export function PieceSentence({ piece, title }: PieceSentenceProps) {
  const now = at.value;
  if (now === null || !isInHand.value)
    return (
      <h2 class="sentence" ref={title} tabIndex={-1} data-testid="piece-sentence">
        {piece.name}
      </h2>
    );
  const had = now.area === null ? undefined : heats.value[piece.id]?.areas[now.area];
  const stage = now.reached ?? had?.reached?.name ?? null;
  const reached = stage === null ? whereWords.noneReached : whereWords.reached(stage);
  return (
    <h2 class="sentence" ref={title} tabIndex={-1} data-testid="piece-sentence">
      {whereText(now)}: <strong>{reached}</strong>.
    </h2>
  );
}

/** How long the iron has been on this area, by what that is known, and whether that is long for its size. */
export function Dwell() {
  const now = at.value;
  if (now === null || !isInHand.value) return null;
  const area = now.areaName ?? dwellWords.side;
  const time = formatDuration(now.contactMs);
  const most = now.limitMs === null ? null : formatDuration(now.limitMs);
  const isOver = now.limitMs !== null && now.contactMs > now.limitMs;
  return (
    <>
      {isOver && most !== null ? (
        <Note hatch="act-soon" testId="dwell-over">
          <strong>{dwellWords.over(area, most)}</strong>
        </Note>
      ) : null}
      <p class="dwell" data-testid="dwell">
        {dwellWords.time(area, most === null ? time : dwellWords.ofMost(time, most))}
        {most === null ? `, ${dwellWords.noLimit}` : ''}.{' '}
        {now.contactBy === 'marks' ? dwellWords.byMarks : dwellWords.byMotion}
      </p>
    </>
  );
}
