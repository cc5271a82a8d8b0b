import type { Iron, IronDraft } from '../../../shared/iron/iron.ts';

/** Which irons have to be written, in which order, so that a probe sits elsewhere, and so that it sits there again. */

export interface Write {
  readonly id: string;
  readonly draft: IronDraft;
}

export interface Move {
  readonly to: Write;
  /** Puts things back: an iron that went because its only probe moved comes back by this too. */
  readonly back: Write;
}

/** What the daemon takes of an iron: what it adds itself is left out. */
export const draftOf = ({ id: _id, simulated: _simulated, ...draft }: Iron): IronDraft => draft;

function draftWithoutSole(iron: Iron): IronDraft {
  const { soleCm2: _soleCm2, ...draft } = draftOf(iron);
  return draft;
}

/** Most probes on one iron, as its schema has it. */
const MOST_PROBES = 8;

export const sitsOn = (irons: readonly Iron[], probe: string): Iron | null =>
  irons.find((iron) => iron.probes.includes(probe)) ?? null;

/** Moves a probe to an iron that exists; null where it sits there already, or nowhere, or there is no room. */
export function moveTo(irons: readonly Iron[], probe: string, target: string): Move | null {
  const from = sitsOn(irons, probe);
  const iron = irons.find((one) => one.id === target);
  if (from === null || iron === undefined || from.id === target || iron.probes.length >= MOST_PROBES)
    return null;
  return {
    to: { id: target, draft: { ...draftOf(iron), probes: [...iron.probes, probe] } },
    back: { id: from.id, draft: draftOf(from) },
  };
}

/** Moves a probe to a new iron that works by the same schedule. */
export function moveToNew(
  irons: readonly Iron[],
  probe: string,
  { id, name }: { readonly id: string; readonly name: string },
): Move | null {
  const from = sitsOn(irons, probe);
  if (from === null || from.probes.length === 1) return null;
  return {
    // Another iron has another sole.
    to: { id, draft: { ...draftWithoutSole(from), name, probes: [probe] } },
    back: { id: from.id, draft: draftOf(from) },
  };
}
