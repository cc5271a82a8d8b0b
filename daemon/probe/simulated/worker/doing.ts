import type { SideId } from '../../../../shared/piece/piece.ts';
import type { IronPlace } from '../scenario.ts';

/** What is so of one iron, from a moment on. */
export interface Doing {
  readonly atS: number;
  readonly place: IronPlace;
  /** On the work: resting on one spot. */
  readonly still: boolean;
  /** Where it is on the work; null elsewhere. */
  readonly spot: { readonly piece: string; readonly side: SideId; readonly area: string } | null;
  readonly dialC: number | null;
  readonly draws: number;
}

/** What the worker does: `away` walked off from a hot iron, `coffee` a pause with the iron parked and marked so. */
export type Busy = 'working' | 'coffee' | 'away';
