import { type CoatFacts, noCoats } from '../cure/facts.ts';
import { type At, noFacts, type PieceFacts } from '../heat/work/at.ts';
import type { ToldDial } from '../iron/dial/mark.ts';
import type { Place } from '../iron/place.ts';
import { refusals } from '../words/refusals.ts';
import type { Finding } from './finding.ts';
import type { Mark, WatchInput } from './input.ts';

/** The slice of what the user has said of the work in hand. */
export interface Work extends Where {
  readonly stageId: string | null;
  /** What the dial stands at; null: not said. */
  readonly dial: ToldDial | null;
  readonly recording: boolean;
  /** When it was last said where the iron is, ms. */
  readonly saidMs: number;
  /** What is known of the piece in hand from elsewhere. */
  readonly facts: PieceFacts;
  readonly coats: CoatFacts;
  /** What undo goes back to, the newest last: how things stood before each mark that can be taken back. */
  readonly back: readonly Where[];
}

interface Where {
  readonly place: Place;
  /** Where on a piece it works; null: on none that was named. */
  readonly at: At | null;
}

export const newWork: Work = {
  stageId: null,
  place: 'unknown',
  at: null,
  dial: null,
  recording: false,
  saidMs: 0,
  facts: noFacts,
  coats: noCoats,
  back: [],
};

/** So many marks can be taken back, one after the other. */
const BACK_AT_MOST = 10;

const none: readonly Finding[] = [];

export interface WorkStep {
  readonly work: Work;
  readonly found: readonly Finding[];
}

/** The stages that the heat schedule has. */
export type Stages = readonly { readonly id: string }[];

/** Folds one input, of the time `tMs`, into the slice. */
export function stepWork(work: Work, input: WatchInput, stages: Stages, tMs: number): WorkStep {
  switch (input.kind) {
    case 'mark':
      return hearMark(work, input, stages, tMs);
    case 'piece-facts':
      return { work: { ...work, facts: input.facts }, found: none };
    case 'coat-facts':
      return { work: { ...work, coats: input.facts }, found: none };
    case 'start':
    case 'stop':
      return { work: { ...work, recording: input.kind === 'start' }, found: none };
    default:
      return { work, found: none };
  }
}

function hearMark(
  work: Work,
  { mark, commandId }: Extract<WatchInput, { kind: 'mark' }>,
  stages: Stages,
  tMs: number,
): WorkStep {
  const refuse = (reason: string): WorkStep => ({ work, found: [{ kind: 'refused', commandId, reason }] });
  switch (mark.kind) {
    case 'place':
      return { work: moved(work, { place: mark.place, at: work.at }, tMs), found: none };
    case 'at':
      return { work: moved(work, { place: placeAfter(work.place, mark), at: mark.at }, tMs), found: none };
    case 'lap-done':
      if (work.at === null) return refuse(refusals.noPiece);
      return { work: moved(work, work, work.saidMs), found: none };
    case 'undo': {
      const last = work.back.at(-1);
      if (last === undefined) return refuse(refusals.nothingToUndo);
      return { work: { ...work, ...last, back: work.back.slice(0, -1) }, found: none };
    }
    case 'dial':
      return {
        work: { ...work, dial: mark.mark === null ? null : { mark: mark.mark, toldMs: tMs } },
        found: none,
      };
    case 'note':
    case 'typed':
      return { work, found: none };
    case 'stage': {
      const { stageId } = mark;
      if (stageId !== null && !stages.some((s) => s.id === stageId)) return refuse(refusals.noSuchStage);
      return { work: { ...work, stageId }, found: none };
    }
  }
}

const moved = (work: Work, { place, at }: Where, saidMs: number): Work => ({
  ...work,
  place,
  at,
  saidMs,
  back: [...work.back, { place: work.place, at: work.at }].slice(-BACK_AT_MOST),
});

/** Who names an area irons it; turning the piece over, or taking up another one, says nothing of that. */
const placeAfter = (place: Place, { said, at }: Extract<Mark, { kind: 'at' }>): Place =>
  at === null || said === 'turned' || said === 'piece' ? place : 'on-work';
