import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/**
 * What was pressed is gone with its step: the focus goes to what came in its place, marked `data-begin`.
 * @returns the part in which the steps follow each other
 */
export function useFocusFollows(step: string): RefObject<HTMLElement> {
  const part = useRef<HTMLElement>(null);
  const before = useRef(step);
  useEffect(() => {
    if (step === before.current) return;
    before.current = step;
    part.current?.querySelector<HTMLElement>('[data-begin]')?.focus();
  }, [step]);
  return part;
}
