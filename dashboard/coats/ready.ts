import { z } from 'zod';
import type { CoatAnswer } from '../../shared/messages/cure.ts';
import { readKept } from '../parts/keep.ts';
import { isToTest, stageNow } from './coat-text.ts';

/** Which coats were told of as ready, so that each is told once a stage, over reloads too. Pure. */

/** By coat and stage: when it had been said to be still tacky as it was told; null: never. */
export type Told = Readonly<Record<string, string | null>>;

const toldSchema = z.record(z.string(), z.string().nullable());

/** What was kept; nothing where nothing was, or nothing that can be read. */
export const readTold = (text: string | null): Told => readKept(text, toldSchema) ?? {};

const keyOf = ({ id, stage }: CoatAnswer): string => `${id} ${stage ?? ''}`;
const tackyOf = (coat: CoatAnswer): string | null => stageNow(coat)?.saidTacky ?? null;

/**
 * What is to be told now. A coat that was told of is told again only where somebody has found it tacky since, and it went
 * on drying: a range that moves with the air makes no second notice.
 */
export function readyStep(
  told: Told,
  coats: readonly CoatAnswer[],
): { readonly told: Told; readonly ready: readonly CoatAnswer[] } {
  const ready = coats.filter((coat) => isToTest(coat) && told[keyOf(coat)] === undefined);
  const kept = coats.filter((coat) => {
    const before = told[keyOf(coat)];
    return before !== undefined && (isToTest(coat) || before === tackyOf(coat));
  });
  return {
    ready,
    told: Object.fromEntries([
      ...kept.map((coat) => [keyOf(coat), told[keyOf(coat)] ?? null] as const),
      ...ready.map((coat) => [keyOf(coat), tackyOf(coat)] as const),
    ]),
  };
}

/** What one has understood of a notice: of this coat, at this stage, since it was found tacky last. */
export const noticeKey = (coat: CoatAnswer): string => `${keyOf(coat)} ${tackyOf(coat) ?? ''}`;
