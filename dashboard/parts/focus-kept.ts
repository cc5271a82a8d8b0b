import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/**
 * What was pressed is often gone with what it did, and the focus with it. Once `step` has changed so, the focus goes to
 * what came of it. What is still there, only moved in its list, gets it back; where it can't be pressed any more, the part
 * that it stands in takes it. Any other focus is left where it is.
 * @param to what takes it, the first of these that is there; a text is made able to by `tabIndex={-1}`
 */
export function useFocusKept(step: string, ...to: readonly RefObject<HTMLElement>[]): void {
  const before = useRef(step);
  // As it is before what has changed is drawn.
  const held = document.activeElement;
  useEffect(() => {
    if (step === before.current) return;
    before.current = step;
    if (!(held instanceof HTMLElement) || held === document.body || !isLost(held)) return;
    const part = held.isConnected ? held.closest<HTMLElement>('[tabindex]') : null;
    const next = part ?? to.find(({ current }) => current !== null)?.current;
    (canHold(held) ? held : next)?.focus();
  }, [step]);
}

const canHold = (element: HTMLElement): boolean => element.isConnected && !element.matches(':disabled');

/** Whether nothing has the focus now that can be worked with. */
function isLost(held: HTMLElement): boolean {
  const now = document.activeElement;
  return now === null || now === document.body || (now === held && !canHold(held));
}
