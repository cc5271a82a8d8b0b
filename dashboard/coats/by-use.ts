import { z } from 'zod';
import type { Cement } from '../../shared/cure/cement.ts';
import type { CoatAnswer } from '../../shared/messages/cure.ts';
import { readKept } from '../parts/keep.ts';

/** When each cement was used last, ms since 1970 by the daemon's clock, by its id. */
type Used = Readonly<Record<string, number>>;

const usedSchema = z.record(z.string(), z.number());

/** What was kept; nothing where nothing was, or nothing that can be read. */
export const readUsed = (text: string | null): Used => readKept(text, usedSchema) ?? {};

/** Cements to choose from: the one used last first, the others as they were entered; none that was put away. */
export function byUse(
  cements: readonly Cement[],
  coats: readonly CoatAnswer[],
  used: Used,
): readonly Cement[] {
  const usedMs = (id: string): number =>
    Math.max(
      used[id] ?? 0,
      ...coats.filter(({ cement }) => cement.id === id).map(({ startedAt }) => Date.parse(startedAt)),
    );
  return cements.filter(({ archived }) => !archived).toSorted((a, b) => usedMs(b.id) - usedMs(a.id));
}

/** The one used last; null: none of them was ever used, as far as is known here. */
export function lastUsed(
  cements: readonly Cement[],
  coats: readonly CoatAnswer[],
  used: Used,
): Cement | null {
  const [first] = byUse(cements, coats, used);
  if (first === undefined) return null;
  const known = used[first.id] !== undefined || coats.some(({ cement }) => cement.id === first.id);
  return known ? first : null;
}
