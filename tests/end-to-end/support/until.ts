import { setTimeout as delay } from 'node:timers/promises';

const LOOK_EVERY_MS = 20;
/** Generous: the machine may be busy with other things. Where a time matters it is measured, not waited for. */
const LIMIT_MS = 30_000;

/**
 * Looks until there is something to see and gives it back. `null`, `undefined`, `false` and an error are nothing.
 * @throws Error with `what`, and what was seen last, once `limitMs` have passed
 */
export async function until<T>(
  what: string,
  look: () => T | Promise<T>,
  limitMs = LIMIT_MS,
): Promise<Exclude<T, null | undefined | false>> {
  const endMs = performance.now() + limitMs;
  for (;;) {
    let seen: unknown;
    try {
      const found = await look();
      if (found !== null && found !== undefined && found !== false)
        return found as Exclude<T, null | undefined | false>;
      seen = found;
    } catch (error) {
      seen = error;
    }
    if (performance.now() > endMs)
      throw new Error(`After ${limitMs} ms still not: ${what}. Last: ${String(seen)}`);
    await delay(LOOK_EVERY_MS);
  }
}
