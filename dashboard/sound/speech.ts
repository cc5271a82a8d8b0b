import { signal } from '@preact/signals';
import { keep } from '../parts/browser.ts';

/** Words said aloud by a voice of the device. A voice that a browser fetches from elsewhere is not used. */

const NAME = 'spoken';

/** Whether the user wants notices spoken, as last chosen in this browser. */
export const spoken = signal(keep.read(NAME) === 'on');
/** False once this browser has refused to keep the choice. */
export const spokenKept = signal(!keep.refused);

export function chooseSpoken(on: boolean): void {
  spoken.value = on;
  spokenKept.value = keep.write(NAME, on ? 'on' : 'off');
}

/** The voice that speaks; null: there is none. */
export const voice = signal<SpeechSynthesisVoice | null>(null);

/** English ones first: what is said is English. */
const findVoice = (): SpeechSynthesisVoice | null => {
  const own = speechSynthesis.getVoices().filter(({ localService }) => localService);
  return own.find(({ lang }) => /^en\b/i.test(lang)) ?? own[0] ?? null;
};

const look = (): void => {
  voice.value = findVoice();
};

/** Looks for a voice, now and whenever the browser has found more: many tell of theirs late. */
export function followVoices(): void {
  if (!('speechSynthesis' in window)) return;
  look();
  speechSynthesis.addEventListener('voiceschanged', look);
}

export function speak(sentence: string): void {
  if (voice.peek() === null) return;
  const utterance = new SpeechSynthesisUtterance(sentence);
  utterance.voice = voice.peek();
  utterance.lang = 'en';
  speechSynthesis.speak(utterance);
}

/** Ends what is being said, and drops what was to be said after it. */
export function hush(): void {
  if (voice.peek() !== null) speechSynthesis.cancel();
}
