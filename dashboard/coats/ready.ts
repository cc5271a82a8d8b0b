import { z } from 'zod';
import type { CoatAnswer, CoatStageAnswer } from '../../shared/messages/cure.ts';
import { readKept } from '../parts/keep.ts';
import { isToTest, stageNow } from './coat-text.ts';

/** Which coats were told of as ready, so that each is told once a stage, over reloads too. Pure. */

/** By coat and stage: when it had been said to be still tacky there as it was told; null: never. */
export type Told = Readonly<Record<string, string | null>>;

const toldSchema = z.record(z.string(), z.string().nullable());

/** What was kept; nothing where nothing was, or nothing that can be read. */
export const readTold = (text: string | null): Told => readKept(text, toldSchema) ?? {};

const keyOf = (id: string, stage: CoatAnswer['stage']): string => `${id} ${stage ?? ''}`;

/** The stages that are told of with the one asked about: nobody need hear of an earlier one after it. */
const upToNow = ({ stage, stages }: CoatAnswer): CoatAnswer['stages'] =>
  stages.slice(0, stages.findIndex(({ kind }) => kind === stage) + 1);

/**
 * What is to be told now. A coat that was told of at a stage is told again there only where somebody has found it tacky
 * since, and it went on drying: a range that moves with the air makes no second notice.
 */
export function readyStep(
  told: Told,
  coats: readonly CoatAnswer[],
): { readonly told: Told; readonly ready: readonly CoatAnswer[] } {
  const ready = coats.filter((coat) => isToTest(coat) && told[keyOf(coat.id, coat.stage)] === undefined);
  return {
    ready,
    told: Object.fromEntries([
      ...coats.flatMap((coat) => stillTold(told, coat)),
      ...ready.flatMap((coat) =>
        upToNow(coat).map(({ kind, saidTacky }) => [keyOf(coat.id, kind), saidTacky] as const),
      ),
    ]),
  };
}

const stillTold = (told: Told, coat: CoatAnswer): readonly (readonly [string, string | null])[] =>
  coat.stages.flatMap(({ kind, saidTacky }) => {
    const before = told[keyOf(coat.id, kind)];
    const holds = before === saidTacky || (kind === coat.stage && isToTest(coat));
    return before !== undefined && holds ? [[keyOf(coat.id, kind), before] as const] : [];
  });

/** Of what waited to be heard: what is to be tested still, at that stage, as it is now. */
export function stillReady(
  waiting: readonly CoatAnswer[],
  coats: readonly CoatAnswer[],
): readonly CoatAnswer[] {
  const waits = new Set(waiting.map(({ id, stage }) => keyOf(id, stage)));
  return coats.filter((coat) => isToTest(coat) && waits.has(keyOf(coat.id, coat.stage)));
}

/** What one has understood of a notice: of this coat, at this stage, since it was found tacky last. */
export const noticeKey = (coat: CoatAnswer): string => keyAt(coat, stageNow(coat));

/** The same of earlier stages too: who has understood a notice has understood those. */
export const noticeKeys = (coat: CoatAnswer): readonly string[] =>
  upToNow(coat).map((stage) => keyAt(coat, stage));

/** The same of every stage of it. */
export const allNoticeKeys = (coat: CoatAnswer): readonly string[] =>
  coat.stages.map((stage) => keyAt(coat, stage));

const keyAt = ({ id }: CoatAnswer, stage: CoatStageAnswer | null): string =>
  `${keyOf(id, stage?.kind ?? null)} ${stage?.saidTacky ?? ''}`;
