import { effect, signal } from '@preact/signals';
import type { CoatAnswer } from '../../shared/messages/cure.ts';
import { dryingStageWords, readyWords } from '../../shared/words/coats.ts';
import { tabKeep } from '../parts/browser.ts';
import { alarmSounds, playOnce, soundState } from '../sound/sound.ts';
import { hush, speak, spoken } from '../sound/speech.ts';
import { toTestText } from './coat-text.ts';
import { coats, coatsRead } from './coats.ts';
import { readTold, readyStep, stillReady } from './ready.ts';

/** Lets a coat be heard once as it may be ready: a sound of its own, and words where the user wants them. */

const NAME = 'coats-told';

/** One sentence, however many there are: nobody listens to twelve. */
function speech(ready: readonly CoatAnswer[]): string {
  const [first, ...more] = ready;
  return first !== undefined && first.stage !== null && more.length === 0
    ? readyWords.spoken(first.placeName, dryingStageWords[first.stage])
    : readyWords.spokenMany(toTestText(ready));
}

export function hearReady(): void {
  let told = readTold(tabKeep.read(NAME));
  /** What is to be heard once no alarm sounds. */
  const waiting = signal<readonly CoatAnswer[]>([]);
  effect(() => {
    const read = coatsRead.value;
    if (read === null) return;
    const step = readyStep(told, read.coats);
    told = step.told;
    tabKeep.write(NAME, JSON.stringify(told));
    // Where sound is not armed the notice alone tells; it is not made up for later.
    if (step.ready.length > 0 && soundState.peek() === 'on')
      waiting.value = [...waiting.peek(), ...step.ready];
  });
  // Nothing is to be heard over an alarm.
  effect(() => {
    if (alarmSounds.value) hush();
  });
  effect(() => {
    const some = waiting.value;
    const isOn = soundState.value === 'on';
    if (some.length === 0 || (isOn && alarmSounds.value)) return;
    waiting.value = [];
    // While it waited somebody may have touched it, or have done with it.
    const ready = stillReady(some, coats.peek());
    if (!isOn || ready.length === 0) return;
    playOnce('ready');
    if (spoken.peek()) speak(speech(ready));
  });
}
