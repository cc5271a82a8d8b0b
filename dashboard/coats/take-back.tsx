import { coatWords } from '../../shared/words/coats.ts';
import { viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { lastTap, takeBack } from './say.ts';

/** What was said last of coats that have no card to say it on: started just now, or gone. */
export function TakeBackLast() {
  const tap = lastTap.value;
  if (tap === null || tap.coat !== null || viewOnly.value) return null;
  return (
    <p class="coat-last" data-testid="coat-last">
      <span>{coatWords.takenLast(tap.words)}</span>{' '}
      <Target label={coatWords.takeBackOf(tap.words)} onPress={() => takeBack(tap)}>
        {coatWords.takeBack}
      </Target>
    </p>
  );
}
