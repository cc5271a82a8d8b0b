import { signal } from '@preact/signals';
import { alarms, viewOnly } from '../link/daemon.ts';
import { keep } from '../parts/browser.ts';
import { isPedal, notePedal } from '../setup/screen/pedal.ts';
import { acknowledge, canAcknowledge, canSilence, silence } from './answer.ts';

/** Single keys that answer the first alarm; they can be switched off (WCAG 2.2, 2.1.4). */

const NAME = 'keys';

export const keysOn = signal(keep.read(NAME) !== 'off');

export function switchKeys(on: boolean): void {
  keysOn.value = on;
  keep.write(NAME, on ? 'on' : 'off');
}

export const answerKeys = { acknowledge: 'a', silence: 's' } as const;

export function listenForKeys(): void {
  document.addEventListener('keydown', (event) => {
    if (isPedal(event, isTyping(event.target))) {
      event.preventDefault();
      notePedal();
      if (!viewOnly.value) acknowledgeFirst();
      return;
    }
    if (!keysOn.value || viewOnly.value || !isPlainKey(event)) return;
    const key = event.key.toLowerCase();
    if (key === answerKeys.acknowledge) acknowledgeFirst();
    else if (key === answerKeys.silence) silenceFirst();
  });
}

function acknowledgeFirst(): void {
  const first = alarms.value.find(canAcknowledge);
  if (first !== undefined) acknowledge(first);
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
