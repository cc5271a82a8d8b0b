import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';
import { shippedSchedule } from '../../shared/heat/shipped.ts';
import type { Piece, SideId } from '../../shared/piece/piece.ts';
import { pieceCoatWords } from '../../shared/words/coats.ts';
import { pieceEditorWords } from '../../shared/words/piece-editor.ts';
import { pieceWords } from '../../shared/words/pieces.ts';
import { ironTime, wetAreas, wetText } from '../coats/coat-text.ts';
import { coats } from '../coats/coats.ts';
import { WetElsewhere } from '../coats/wet-elsewhere.tsx';
import { coatsNowMs } from '../cure/clock.ts';
import { leadIron } from '../iron/irons.ts';
import { isLive, viewOnly } from '../link/daemon.ts';
import { clockTime } from '../parts/clock-time.ts';
import { Note } from '../parts/note.tsx';
import { sessionTimes } from '../parts/session-times.ts';
import { Target } from '../parts/target.tsx';
import { Acts } from './acts.tsx';
import type { WetMark } from './area-text.ts';
import { at, handIron, hereArea, isInHand, isReady } from './bench.ts';
import { RecentPieces } from './choosing.tsx';
import { Hand, HandMore } from './hand.tsx';
import { Legend } from './legend.tsx';
import { PieceCoats } from './piece-coats.tsx';
import { Dwell, PieceSentence } from './piece-sentence.tsx';
import { followHeat, heats, pieceOf } from './pieces.ts';
import { onArea, pieceNow } from './say.ts';
import { isFine, Sheet } from './sheet.tsx';
import { SideLine } from './side-line.tsx';
import { Balance, Items, OrderNotes } from './standing.tsx';

interface WorkViewProps {
  readonly id: string;
  /** Its title, which takes the focus. */
  readonly title: RefObject<HTMLHeadingElement>;
}

/** One piece at the bench: its sides as facing pages, where the iron is, where it goes next, and what one says of it. */
export function WorkView({ id, title }: WorkViewProps) {
  useEffect(() => followHeat(id), [id]);
  const piece = heats.value[id]?.piece ?? pieceOf(id);
  if (piece === null)
    return (
      <>
        <p role="status">{pieceWords.noSuch}</p>
        <RecentPieces />
      </>
    );
  return (
    <div class="work-view">
      <div class="work-piece">
        <div class="work-where">
          <PieceSentence piece={piece} title={title} />
          <InHand piece={piece} />
          <OrderNotes piece={piece} />
          <Dwell />
          {isInHand.value ? <WetElsewhere here={at.value} /> : null}
        </div>
        <Facing piece={piece} />
        <div class="work-more">
          <Balance piece={piece} />
          <Items id={id} />
          <PieceCoats piece={piece} />
          <RecentPieces />
          <Legend schedule={scheduleNow()} />
          <Ways piece={piece} />
        </div>
      </div>
      <Hand />
      <Acts piece={piece} />
      <HandMore />
    </div>
  );
}

/** Of the iron in hand; before any iron is there, the one that the program starts with names the levels. */
const scheduleNow = () => handIron.value?.schedule ?? leadIron.value?.schedule ?? shippedSchedule;

/** Whether marks go to this piece, and the way to make them. */
function InHand({ piece }: { readonly piece: Piece }) {
  if (!isLive.value) return <p class="quiet">{pieceWords.asItWas}</p>;
  if (!isReady.value)
    return (
      <Note hatch="know" testId="not-ready">
        {pieceWords.notReadYet}
      </Note>
    );
  if (isInHand.value || viewOnly.value || piece.archived) return null;
  return (
    <Note hatch="know" testId="not-in-hand">
      <span>{pieceWords.notInHand(piece.name)}</span>
      <Target main onPress={() => pieceNow(piece.id, piece.name)}>
        {pieceWords.thisNow}
      </Target>
    </Note>
  );
}

/** By clock times, so that nothing of the drawing changes as time goes on. */
function wetMarks(piece: Piece): ReadonlyMap<string, WetMark> {
  const nowMs = coatsNowMs.peek() ?? 0;
  const marks = [...wetAreas(coats.value, piece)].map(([id, coat]) => {
    const time = ironTime(coat, nowMs, clockTime);
    const short = time === '' ? pieceCoatWords.wet : pieceCoatWords.wetUntil(time);
    return [id, { short, full: wetText(coat, nowMs, clockTime) }] as const;
  });
  return new Map(marks);
}

/** Both sides as facing pages; nothing of it changes with a reading. */
function Facing({ piece }: { readonly piece: Piece }) {
  const heat = heats.value[piece.id] ?? null;
  const isHere = isInHand.value;
  const mayMark = isHere && !viewOnly.value;
  const wet = wetMarks(piece);
  return (
    <section class={isFine(piece) ? 'facing facing--fine' : 'facing'} aria-label={pieceWords.sides}>
      {piece.sides.map((name, i) => {
        const side: SideId = i === 0 ? 1 : 2;
        return (
          <div key={side} class="face">
            <h3 class="face-name">{name}</h3>
            <Sheet
              piece={piece}
              side={side}
              schedule={scheduleNow()}
              heat={heat}
              here={isHere ? hereArea.value : null}
              next={heat?.next?.area ?? null}
              wet={wet}
              onArea={mayMark ? (area) => onArea(area.id, area.name) : null}
            />
            <SideLine piece={piece} side={side} />
          </div>
        );
      })}
    </section>
  );
}

const Ways = ({ piece }: { readonly piece: Piece }) => (
  <div class="work-ways">
    {viewOnly.value ? null : (
      <a class="way" href={`#piece/${encodeURIComponent(piece.id)}/edit`}>
        {pieceWords.edit}
      </a>
    )}
    <a class="way" href={`#piece/${encodeURIComponent(piece.id)}/visits`}>
      {pieceWords.visits}
    </a>
    <a class="way" href="#piece/shrinkage">
      {pieceWords.shrinkage}
    </a>
    <p class="quiet" data-testid="map-version">
      {pieceWords.version(piece.version, sessionTimes('').dateTime(Date.parse(piece.madeAt)))}
      {piece.archived ? ` ${pieceEditorWords.isAway}` : ''}
    </p>
  </div>
);
