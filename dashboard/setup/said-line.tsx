import type { RefObject } from 'preact';
import { useRef } from 'preact/hooks';
import { setupWords } from '../../shared/words/setup.ts';
import { useFocusKept } from '../parts/focus-kept.ts';
import { Target } from '../parts/target.tsx';
import { saidOf } from './changing.ts';

interface SaidLineProps {
  readonly subject: string;
  /** The sentence, where more than the way back leads the focus to it. */
  readonly sentence?: RefObject<HTMLParagraphElement>;
}

/** What came of the last change at this place, with the way back. */
export function SaidLine({ subject, sentence }: SaidLineProps) {
  const own = useRef<HTMLParagraphElement>(null);
  const line = sentence ?? own;
  const said = saidOf.value[subject];
  useFocusKept(said?.sentence ?? '', line);
  return (
    <div class="said">
      <p ref={line} role="status" tabIndex={-1} data-testid="said">
        {said?.sentence ?? ''}
      </p>
      {said === undefined || said.undo === null ? null : (
        <Target testId="undo" onPress={said.undo}>
          {setupWords.undo}
        </Target>
      )}
    </div>
  );
}
