import { setupWords } from '../../shared/words/setup.ts';
import { Target } from '../parts/target.tsx';
import { saidOf } from './changing.ts';

/** What came of the last change at this place, with the way back. */
export function SaidLine({ subject }: { readonly subject: string }) {
  const said = saidOf.value[subject];
  return (
    <div class="said">
      <p role="status" data-testid="said">
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
