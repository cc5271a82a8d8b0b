import { signal } from '@preact/signals';
import { keep } from '../../parts/browser.ts';

/** A foot pedal: to the page it is a key. Which one it is has to be taught once on each screen. */

const NAME = 'pedal';

/** The key that the pedal sends, by the name that the browser gives it; null: none taught. */
export const pedal = signal<string | null>(keep.read(NAME) || null);
/** False once this browser has refused to keep it. */
export const pedalKept = signal(!keep.refused);
/** How often it has been pressed since it was taught or the page was opened. */
export const pedalPresses = signal(0);
export const isTeaching = signal(false);
/** The last key that could not be taken for the pedal. */
export const refusedKey = signal<string | null>(null);

/** Keys by which the page itself is worked, and keys that are held with others. */
const ownKeys = new Set(
  (
    'Tab Enter Escape ArrowUp ArrowDown ArrowLeft ArrowRight Backspace Delete ' +
    'Shift Control Alt Meta AltGraph CapsLock Dead Process Unidentified'
  )
    .split(' ')
    .concat(' '),
);

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'altKey' | 'metaKey'>;

/** The key that was pressed, letters small whatever the shift key does; null for one that can't be a pedal. */
export function pedalKey({ key, ctrlKey, altKey, metaKey }: Pressed): string | null {
  if (ctrlKey || altKey || metaKey || ownKeys.has(key)) return null;
  return key.length === 1 ? key.toLowerCase() : key;
}

/** Whether it writes something into a field. */
export const isLetter = (key: string): boolean => key.length === 1;

function setPedal(key: string | null): void {
  pedal.value = key;
  pedalPresses.value = 0;
  pedalKept.value = keep.write(NAME, key ?? '');
}

export const forgetPedal = (): void => setPedal(null);

/** The next key that can be a pedal becomes it, until `stopTeaching`: whoever shows the lesson ends it. */
export function teachPedal(): void {
  isTeaching.value = true;
  refusedKey.value = null;
  window.addEventListener('keydown', listen, true);
}

/** Ends the lesson: keys do again what they do elsewhere. */
export function stopTeaching(): void {
  window.removeEventListener('keydown', listen, true);
  isTeaching.value = false;
  refusedKey.value = null;
}

/** Tab goes on to work the page, and Escape ends the lesson. */
function listen(event: KeyboardEvent): void {
  if (event.key === 'Tab' || event.key === 'Shift' || event.repeat) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  if (event.key === 'Escape') stopTeaching();
  else learn(event);
}

function learn(event: KeyboardEvent): void {
  const key = pedalKey(event);
  if (key === null) {
    refusedKey.value = event.key;
    return;
  }
  stopTeaching();
  setPedal(key);
}

/**
 * Whether a key press is the pedal's. While a field is typed into, a letter belongs to the field; any other key is the
 * pedal's there too.
 */
export function isPedal(event: KeyboardEvent, isTyping: boolean): boolean {
  const key = pedal.peek();
  if (key === null || event.repeat || event.defaultPrevented || pedalKey(event) !== key) return false;
  return !(isLetter(key) && isTyping);
}

/** Notes a press, so that it can be tried. */
export function notePedal(): void {
  pedalPresses.value += 1;
}
