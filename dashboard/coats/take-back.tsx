import { coatWords } from '../../shared/words/coats.ts';
import { viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { lastSaid, takeBackSaid } from './say.ts';

/** What was said last of coats that have no card to say it on: started just now, or gone. */
export function TakeBackSaid() {
  const said = lastSaid.value;
  if (said === null || viewOnly.value) return null;
  return (
    <p class="coat-last" data-testid="coat-last">
      <span>{coatWords.saidLast(said.words)}</span>{' '}
      <Target label={coatWords.takeBackOf(said.words)} onPress={() => takeBackSaid(said)}>
        {coatWords.takeBack}
      </Target>
    </p>
  );
}
