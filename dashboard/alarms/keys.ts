import { signal } from '@preact/signals';
import { part, view } from '../frame/nav-view.ts';
import { alarms, viewOnly } from '../link/daemon.ts';
import { keep } from '../parts/browser.ts';
import { pageMs } from '../parts/now.ts';
import { hasPiece, isAtWork } from '../piece/bench.ts';
import { sayNext } from '../piece/next.ts';
import { type PedalActs, type Pressed, pressed } from '../piece/pedal-work.ts';
import { lapDone, onRest, turned, undo, undoNext } from '../piece/say.ts';
import { isPedal, notePedal } from '../setup/screen/pedal.ts';
import { acknowledge, canAcknowledge, canSilence, silence } from './answer.ts';

/** Single keys that answer the first alarm and mark the work; they can be switched off (WCAG 2.2, 2.1.4). */

const NAME = 'keys';

export const keysOn = signal(keep.read(NAME) !== 'off');

export function switchKeys(on: boolean): void {
  keysOn.value = on;
  keep.write(NAME, on ? 'on' : 'off');
}

export const answerKeys = { acknowledge: 'a', silence: 's' } as const;

/** Only where their targets are in sight: on the Piece view. */
export const workKeys = { next: 'n', turned: 't', lapDone: 'l', onRest: 'r', undo: 'u' } as const;

const acts: Readonly<Record<string, () => void>> = {
  [workKeys.next]: sayNext,
  [workKeys.turned]: turned,
  [workKeys.lapDone]: lapDone,
  [workKeys.onRest]: onRest,
  [workKeys.undo]: undo,
};

export function listenForKeys(): void {
  let pedalBefore: Pressed | null = null;
  document.addEventListener('keydown', (event) => {
    if (isPedal(event, isTyping(event.target))) {
      event.preventDefault();
      notePedal();
      if (!viewOnly.value) pedalBefore = pressed(pedalBefore, pageMs(), pedalActs);
      return;
    }
    if (!keysOn.value || viewOnly.value || !isPlainKey(event)) return;
    const key = event.key.toLowerCase();
    if (key === answerKeys.acknowledge) acknowledgeFirst();
    else if (key === answerKeys.silence) silenceFirst();
    else if (isAtWork.value) acts[key]?.();
  });
}

/** Where a pedal is taught, it is tried without marking anything. */
const isTrying = (): boolean => view.value === 'setup' && part.value === 'screen';

const pedalActs: PedalActs = {
  answerAlarm: acknowledgeFirst,
  next: () => (hasPiece.value && !isTrying() ? sayNext() : null),
  undoNext,
  undo: () => {
    if (hasPiece.value && !isTrying()) undo();
  },
};

function acknowledgeFirst(): boolean {
  const first = alarms.value.find(canAcknowledge);
  if (first !== undefined) acknowledge(first);
  return first !== undefined;
}

function silenceFirst(): void {
  const first = alarms.value.find(canSilence);
  if (first !== undefined) silence(first);
}

/** A key pressed once, by itself, and not into a field. */
function isPlainKey(event: KeyboardEvent): boolean {
  if (event.repeat || event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return false;
  return !isTyping(event.target);
}

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable]') !== null;
