import type { Settings } from '../settings/settings.ts';
import type { Program } from './program.ts';

/** Changes what is settled, and brings it to the watches. Rejects with `Refusal` where it can't be; nothing has changed then. */
export async function settle<T extends { readonly settings: Settings }>(
  program: Program,
  make: (settings: Settings) => T,
): Promise<T> {
  const made = await program.options.settings.change(make);
  await program.applySettings();
  return made;
}
