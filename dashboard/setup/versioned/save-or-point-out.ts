import type { RefObject } from 'preact';

const WRONG = '[aria-invalid="true"], [data-wrong] button';

/** Saves; where fields are wrong, the first of them gets the focus. `save` gives false then. */
export async function saveOrPointOut(
  save: () => Promise<boolean>,
  card: RefObject<HTMLElement>,
): Promise<void> {
  if (await save()) return;
  requestAnimationFrame(() => card.current?.querySelector<HTMLElement>(WRONG)?.focus());
}
