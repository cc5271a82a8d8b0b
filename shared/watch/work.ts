import type { ToldDial } from '../iron/dial/mark.ts';
import { refusals } from '../words/refusals.ts';
import type { Finding } from './finding.ts';
import type { Place, WatchInput } from './input.ts';

/** The slice of what the user has said of the work in hand. */
export interface Work {
  readonly stageId: string | null;
  readonly place: Place;
  /** What the dial stands at; null: not said. */
  readonly dial: ToldDial | null;
  readonly recording: boolean;
}

export const newWork: Work = { stageId: null, place: 'unknown', dial: null, recording: false };

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
  tMs: number,
): WorkStep {
  switch (mark.kind) {
    case 'place':
      return { work: { ...work, place: mark.place }, found: [] };
    case 'dial':
      return {
        work: { ...work, dial: mark.mark === null ? null : { mark: mark.mark, toldMs: tMs } },
        found: [],
      };
    case 'note':
    case 'typed':
      return { work, found: [] };
    case 'stage': {
      const { stageId } = mark;
      if (stageId !== null && !stages.some((s) => s.id === stageId))
        return { work, found: [{ kind: 'refused', commandId, reason: refusals.noSuchStage }] };
      return { work: { ...work, stageId }, found: [] };
    }
  }
}
