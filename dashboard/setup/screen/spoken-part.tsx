import { spokenWords } from '../../../shared/words/coats.ts';
import { Target } from '../../parts/target.tsx';
import { soundState } from '../../sound/sound.ts';
import { chooseSpoken, speak, spoken, spokenKept, voice } from '../../sound/speech.ts';

/** Whether what may be ready is spoken too, and how that sounds. */
export const SpokenPart = () => (
  <section class="card" aria-labelledby="spoken-title" data-testid="spoken">
    <h3 id="spoken-title">{spokenWords.title}</h3>
    <p>{spokenWords.means}</p>
    {spokenKept.value ? null : <p>{spokenWords.notKept}</p>}
    {voice.value === null ? <p>{spokenWords.noVoice}</p> : <Choices />}
  </section>
);

const Choices = () => (
  <>
    {soundState.value === 'on' ? null : <p>{spokenWords.soundOff}</p>}
    <div class="choice-row" role="group" aria-label={spokenWords.title}>
      <Target chosen={spoken.value} onPress={() => chooseSpoken(true)}>
        {spokenWords.on}
      </Target>
      <Target chosen={!spoken.value} onPress={() => chooseSpoken(false)}>
        {spokenWords.off}
      </Target>
      <Target onPress={() => speak(spokenWords.attemptText)}>{spokenWords.attempt}</Target>
    </div>
  </>
);
