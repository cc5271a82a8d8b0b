import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { pageMs } from './now.ts';

/** A press so soon after what is under the finger has changed was meant for what was there before, ms. */
const SETTLES_MS = 1000;

/**
 * Keeps the second tap of a sticky finger from meaning something else.
 * @param key what is under the finger now
 * @returns whether a press counts: none does within a second of a change, or of the last one that did
 */
export function useSettled(key: string): () => boolean {
  const shown = useRef<{ readonly key: string | null; readonly atMs: number }>({ key: null, atMs: 0 });
  if (shown.current.key !== key) shown.current = { key, atMs: pageMs() };
  return () => {
    const nowMs = pageMs();
    if (nowMs - shown.current.atMs < SETTLES_MS) return false;
    shown.current = { ...shown.current, atMs: nowMs };
    return true;
  };
}

/**
 * For what is pressed by itself wherever it comes to stand: an alarm that is raised or moves up under a finger.
 * @param key what stands, in its order
 * @returns true for a second after that has changed: until then no press is to land on it
 */
export function useSettling(key: string): boolean {
  const settled = useSignal<string | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => {
      settled.value = key;
    }, SETTLES_MS);
    return () => clearTimeout(timer);
  }, [key, settled]);
  return settled.value !== key;
}
