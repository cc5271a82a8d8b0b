import type { RefObject } from 'preact';

/** Saves; where fields are wrong, the first of them gets the focus. `save` gives false then. */
export async function saveOrPointOut(
  save: () => Promise<boolean>,
  card: RefObject<HTMLElement>,
): Promise<void> {
  if (await save()) return;
  requestAnimationFrame(() => card.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
}
