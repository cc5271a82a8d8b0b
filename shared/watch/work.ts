import { refusals } from '../words/refusals.ts';
import type { Finding } from './finding.ts';
import type { Place, WatchInput } from './input.ts';

/** The slice of what the user has said of the work in hand. */
export interface Work {
  readonly stageId: string | null;
  readonly place: Place;
  readonly recording: boolean;
}

export const newWork: Work = { stageId: null, place: 'unknown', recording: false };

const none: readonly Finding[] = [];

export interface WorkStep {
  readonly work: Work;
  readonly found: readonly Finding[];
}

/** The stages that the heat schedule has. */
export type Stages = readonly { readonly id: string }[];

/** Folds one input into the slice. */
export function stepWork(work: Work, input: WatchInput, stages: Stages): WorkStep {
  switch (input.kind) {
    case 'mark':
      return hearMark(work, input, stages);
    case 'start':
    case 'stop':
      return { work: { ...work, recording: input.kind === 'start' }, found: [] };
    default:
      return { work, found: none };
  }
}

function hearMark(
  work: Work,
  { mark, commandId }: Extract<WatchInput, { kind: 'mark' }>,
  stages: Stages,
): WorkStep {
  switch (mark.kind) {
    case 'place':
      return { work: { ...work, place: mark.place }, found: [] };
    case 'note':
      return { work, found: [] };
    case 'stage': {
      const { stageId } = mark;
      if (stageId !== null && !stages.some((s) => s.id === stageId))
        return { work, found: [{ kind: 'refused', commandId, reason: refusals.noSuchStage }] };
      return { work: { ...work, stageId }, found: [] };
    }
  }
}
