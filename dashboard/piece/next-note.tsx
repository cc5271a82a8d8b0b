import { pageWords } from '../../shared/words/page.ts';
import { nextNoteWords } from '../../shared/words/pieces.ts';
import { canAcknowledge } from '../alarms/answer.ts';
import { view } from '../frame/nav-view.ts';
import { alarms } from '../link/daemon.ts';
import { Note } from '../parts/note.tsx';
import { Target } from '../parts/target.tsx';
import { nextInVain } from './next.ts';

/**
 * That "next" has marked nothing: a key and the pedal have no target that could say it, and the pedal works on every view.
 * An alarm that nobody has seen needs the room first.
 */
export const NextNote = () => (
  <div role="status">
    {nextInVain.value && !alarms.value.some(canAcknowledge) ? (
      <Note hatch="act-soon" testId="next-in-vain">
        <strong>{nextNoteWords.noStage}</strong>
        {view.value === 'piece' ? null : (
          <a class="way" href="#piece">
            {nextNoteWords.toStages}
          </a>
        )}
        <Target onPress={() => (nextInVain.value = false)}>{pageWords.dismiss}</Target>
      </Note>
    ) : null}
  </div>
);
