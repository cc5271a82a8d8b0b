import type { CoatAnswer } from '../../shared/messages/cure.ts';
import type { SideId } from '../../shared/piece/piece.ts';
import type { Waiting } from '../link/outbox.ts';

/** What a tap on coats goes by. Pure. */

const actOf = ({ command: { asked } }: Waiting) => (asked.what === 'coat' ? asked.act : null);

/**
 * Id of the command of the tap on a coat that "take back" is for: one that waits to be sent, else the last one that the
 * daemon has. Null: there is none, or it is being taken back.
 */
export function tapOf(
  { id, lastTap }: Pick<CoatAnswer, 'id' | 'lastTap'>,
  waiting: readonly Waiting[],
): string | null {
  const own = waiting.findLast((one) => {
    const act = actOf(one);
    return act?.kind === 'check' && act.coat === id;
  });
  const tap = own?.command.commandId ?? lastTap;
  return tap !== null && isTakenBack(tap, waiting) ? null : tap;
}

/** Whether a command is on its way that takes this one back. @param of its id */
export const isTakenBack = (of: string, waiting: readonly Waiting[]): boolean =>
  waiting.some((one) => {
    const act = actOf(one);
    return act?.kind === 'take-back' && act.of === of;
  });

/** One coat of a start. */
export interface PutOn {
  readonly cement: string;
  readonly piece: string;
  readonly side: SideId;
  readonly area: string | null;
  /** When it was put on, ms since 1970 by the daemon's clock. */
  readonly atMs: number;
}

/** Nobody puts the same cement on the same place twice within so long, ms. */
const TWICE_MS = 60_000;

export const isSamePlace = (one: Omit<PutOn, 'atMs'>, other: Omit<PutOn, 'atMs'>): boolean =>
  one.cement === other.cement &&
  one.piece === other.piece &&
  one.side === other.side &&
  one.area === other.area;

/** Those of a start whose clocks were started already. */
export const startedTwice = (start: readonly PutOn[], before: readonly PutOn[]): readonly PutOn[] =>
  start.filter((one) =>
    before.some((other) => isSamePlace(one, other) && Math.abs(one.atMs - other.atMs) < TWICE_MS),
  );

export const putOnOf = ({ cement, piece, side, area, startedAt }: CoatAnswer): PutOn => ({
  cement: cement.id,
  piece,
  side,
  area,
  atMs: Date.parse(startedAt),
});
