import type { Area, SideId } from '../../../../shared/piece/piece.ts';
import type { IronTraits } from '../irons.ts';
import type { Hand } from '../scenario.ts';

/** A simulated worker: the irons, the piece, and how well the work goes. ALL FIGURES INVENTED. */

/** The small one for edges and tapes, the big one to sweep. */
export const workIrons = ['small', 'big'] as const;
export type WorkIronId = (typeof workIrons)[number];

export interface WorkIron {
  readonly traits: IronTraits;
  /** Where its dial is set for a stage, degC, by the id of the stage. */
  readonly dialC: Readonly<Record<string, number>>;
}

/** One round of work over a piece: a stage, with one iron, on the areas of some kinds. */
export interface Round {
  readonly stageId: string;
  readonly iron: WorkIronId;
  readonly kinds: readonly Area['kind'][];
}

export interface WorkPiece {
  readonly id: string;
  readonly sides: readonly SideId[];
  readonly areas: readonly Pick<Area, 'id' | 'side' | 'kind'>[];
}

/** What goes wrong. Shares are of 0 to 1. */
export interface Mistakes {
  /** Rests on one spot, hot: how many an hour of contact, and how long, s. */
  readonly spotsPerHour: number;
  readonly spotS: readonly [number, number];
  /** Marks that are never given. */
  readonly forgottenMarks: number;
  /** Areas that are marked as another; half of them are undone and said right. */
  readonly wrongMarks: number;
  /** Of pauses: the worker walks off and leaves the iron hot on its rest, so long, s. */
  readonly walksAway: number;
  readonly awayS: readonly [number, number];
}

export interface Worker {
  readonly irons: Readonly<Record<WorkIronId, WorkIron>>;
  readonly pieces: readonly WorkPiece[];
  /** Gone through for each piece in turn, again and again. */
  readonly rounds: readonly Round[];
  readonly hand: Hand;
  readonly mistakes: Mistakes;
  readonly ambientC: number;
  readonly lengthS: number;
}

/** Correct work: every mark is given, though not at once, and the iron never rests on the cloth. */
export const noMistakes: Mistakes = {
  spotsPerHour: 0,
  spotS: [5, 40],
  forgottenMarks: 0,
  wrongMarks: 0,
  walksAway: 0,
  awayS: [1200, 2400],
};

export const usualMistakes: Mistakes = {
  ...noMistakes,
  spotsPerHour: 6,
  forgottenMarks: 0.15,
  wrongMarks: 0.05,
  walksAway: 0.2,
};

/** Tack the edges, shrink in three stages, smooth the tapes. The ids are those of the shipped schedule's stages. */
export const usualRounds: readonly Round[] = [
  { stageId: 'tack', iron: 'small', kinds: ['edge'] },
  { stageId: 'initial', iron: 'big', kinds: ['cloth'] },
  { stageId: 'intermediate', iron: 'big', kinds: ['cloth'] },
  { stageId: 'final', iron: 'big', kinds: ['cloth'] },
  { stageId: 'tape', iron: 'small', kinds: ['tape'] },
];
