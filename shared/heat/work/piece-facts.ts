import type { Piece, SideId } from '../../piece/piece.ts';
import type { HeatStage } from '../schedule.ts';
import type { AreaHeats } from './area-heat.ts';
import type { PieceFacts } from './at.ts';
import { balanceOf } from './balance.ts';
import { imbalanceText } from './imbalance.ts';
import { capC } from './order.ts';

export interface PieceSeen {
  readonly piece: Piece;
  readonly heats: AreaHeats;
  readonly stages: readonly HeatStage[];
  /** The side that is up. */
  readonly side: SideId;
  /** A named person has overruled the order of stages. */
  readonly overruled: boolean;
  /** True for the one iron that tells an imbalance: two irons with the piece are one cause. */
  readonly tells: boolean;
}

/** What the watch of an iron has to know of the piece that it works on. */
export const pieceFacts = ({ piece, heats, stages, side, overruled, tells }: PieceSeen): PieceFacts => ({
  capC: overruled ? null : capC(piece, heats, stages, side),
  imbalance: tells ? imbalanceText(piece, balanceOf(piece, heats)) : '',
});

export const sameFacts = (a: PieceFacts, b: PieceFacts): boolean =>
  a.capC === b.capC && a.imbalance === b.imbalance;
