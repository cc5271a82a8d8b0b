import type { ComponentChildren } from 'preact';
import type { PieceHeat } from '../../shared/messages/piece.ts';
import type { Piece } from '../../shared/piece/piece.ts';
import { pieceNextWords } from '../../shared/words/piece-work.ts';
import { actWords } from '../../shared/words/pieces.ts';
import { keysOn, workKeys } from '../alarms/keys.ts';
import { isLive, viewOnly } from '../link/daemon.ts';
import { useFocusKept } from '../parts/focus-kept.ts';
import { Target } from '../parts/target.tsx';
import { at, handIron, isInHand } from './bench.ts';
import { heats } from './pieces.ts';
import { lapDone, next, onRest, turned, undo } from './say.ts';

/** What one says of the work: four large targets, and the smaller ones. */
export function Acts({ piece }: { readonly piece: Piece }) {
  if (viewOnly.value) return null;
  const canMark = isInHand.value;
  return (
    <div class="acts" role="group" tabIndex={-1} aria-label={actWords.title} data-testid="acts">
      <NextTarget piece={piece} canMark={canMark} />
      <Target disabled={!canMark || piece.sides.length < 2} onPress={turned} testId="turned">
        {actWords.turned}
        <Small letter={workKeys.turned}>{piece.sides.length < 2 ? actWords.oneSided : ''}</Small>
      </Target>
      <Target disabled={!canMark} onPress={lapDone} testId="lap-done">
        {actWords.lapDone}
        <Small letter={workKeys.lapDone}>{canMark ? actWords.lapOn(at.value?.sideName ?? '') : ''}</Small>
      </Target>
      <Target chosen={handIron.value?.place === 'on-rest'} onPress={onRest} testId="on-rest">
        {actWords.onRest}
        <Small letter={workKeys.onRest} />
      </Target>
      <Target onPress={undo} testId="undo">
        <Named letter={workKeys.undo}>{actWords.undo}</Named>
      </Target>
    </div>
  );
}

/** Names the area that is proposed, and why; or what is missing for one. What waits for the daemon may bring that. */
function NextTarget({ piece, canMark }: { readonly piece: Piece; readonly canMark: boolean }) {
  const heat = heats.value[piece.id];
  const proposed = heat?.next ?? null;
  const hasNone = handIron.value?.stageId == null || (heat !== undefined && proposed === null);
  const isOff = !canMark || (isLive.value && hasNone);
  useFocusKept(String(isOff));
  return (
    <Target main disabled={isOff} onPress={next} testId="next">
      <Named letter={workKeys.next}>{actWords.next}</Named>
      <small>{canMark ? proposedText(piece, proposed) : ''}</small>
    </Target>
  );
}

function proposedText(piece: Piece, proposed: PieceHeat['next']): ComponentChildren {
  if (proposed === null) return handIron.value?.stageId == null ? actWords.noStage : actWords.noNext;
  const name = piece.areas.find((area) => area.id === proposed.area)?.name ?? proposed.area;
  const side = piece.sides.length < 2 ? '' : `, ${piece.sides[proposed.side - 1] ?? ''}`;
  return (
    <>
      <b>
        {name}
        {side}
      </b>{' '}
      · {pieceNextWords[proposed.why]}
    </>
  );
}

/** What stands beneath a target's word: the key that presses it, and what it is for now. */
const Small = ({ letter, children }: { readonly letter: string; readonly children?: string }) => (
  <small>
    {keysOn.value ? <kbd aria-hidden="true">{letter.toUpperCase()}</kbd> : null} {children}
  </small>
);

/** A target's word with the key that presses it. */
const Named = ({ letter, children }: { readonly letter: string; readonly children: string }) => (
  <span class="act-name">
    {children} {keysOn.value ? <kbd aria-hidden="true">{letter.toUpperCase()}</kbd> : null}
  </span>
);
