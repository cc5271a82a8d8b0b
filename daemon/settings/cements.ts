import type { Cement, CementDraft } from '../../shared/cure/cement.ts';
import { cementRefusals } from '../../shared/words/drying.ts';
import { Refusal } from '../refusal.ts';
import { checked } from './change.ts';
import { nextVersion } from './next-version.ts';
import { currentCements, type Settings } from './settings.ts';

/** Changes of the cements. */

/** The newest version of a cement. Throws `Refusal` where there is none of this id. */
export function cementOf(settings: Settings, id: string, where = 'cement'): Cement {
  const cement = currentCements(settings).find((one) => one.id === id);
  if (cement === undefined) throw new Refusal('unknown', cementRefusals.none(id), where);
  return cement;
}

/** Adds a version of a cement, made from the version `basedOn` (0: a new cement). Earlier ones stay as they are. */
export function withCement(
  settings: Settings,
  draft: CementDraft,
  head: { readonly id: string; readonly basedOn: number; readonly madeAt: string },
): { readonly settings: Settings; readonly cement: Cement } {
  const { id, basedOn, madeAt } = head;
  const version = nextVersion(settings.cements, head, {
    none: cementRefusals.none(id),
    changed: (newest) => cementRefusals.changed(draft.name, newest, basedOn),
  });
  const cement = { ...draft, id, version, madeAt };
  return { settings: checked({ ...settings, cements: [...settings.cements, cement] }), cement };
}
