import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';

/**
 * What was pressed in a part goes as it is answered: the focus stays in that part, at its begin. It goes to no other
 * button: a key that is held would answer one after the other.
 * @param part takes the focus itself (tabIndex -1)
 * @param key changes with what can be pressed in it
 */
export function useFocusStays(part: RefObject<HTMLElement>, key: string): void {
  const wasIn = useRef(false);
  useEffect(() => {
    const note = ({ target }: FocusEvent): void => {
      wasIn.current = target instanceof Node && (part.current?.contains(target) ?? false);
    };
    document.addEventListener('focusin', note);
    return () => document.removeEventListener('focusin', note);
  }, [part]);
  useLayoutEffect(() => {
    if (wasIn.current && document.activeElement === document.body)
      part.current?.focus({ preventScroll: true });
  }, [part, key]);
}
