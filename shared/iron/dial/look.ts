import type { Behaviour } from '../behaviour.ts';
import type { Cycle } from '../cycle.ts';
import type { Place } from '../place.ts';
import type { TimedCycle } from './figures.ts';
import type { ToldDial } from './mark.ts';

/** What a slice that learns an iron's dial is told with each valid reading of the leading probe. */
export interface Look {
  readonly tMs: number;
  /** The probe that leads: another one begins anew, since it sits elsewhere on the plate. */
  readonly probe: string;
  /** After this reading; `cycle` is the whole cycle that this reading has completed. */
  readonly behaviour: Pick<Behaviour, 'phase' | 'smooth' | 'peak' | 'trough'>;
  readonly cycle: Cycle | null;
  /** Null where the user has not said what the dial stands at. */
  readonly dial: ToldDial | null;
  readonly place: Place;
  readonly stageId: string | null;
}

/** Without a reading for longer than this a peak may have gone unseen, ms (our own choice: a plate goes 4 K in it). */
export const UNSEEN_MS = 5000;

/** The smoothed plate temperature, degC; null before there is one. */
export const levelOf = ({ behaviour }: Look): number | null => behaviour.smooth?.levelC ?? null;

/** The cycle that this look completes, with the moment of its peak and the trough that ends it. */
export function timedCycleOf({ cycle, behaviour: { peak, trough } }: Look): TimedCycle | null {
  if (cycle === null || peak === null || trough === null) return null;
  const { fromMs, toMs, peakC, meanC } = cycle;
  const between = peak.tMs > fromMs && peak.tMs < toMs;
  return between ? { fromMs, peakMs: peak.tMs, toMs, peakC, troughC: trough.plateC, meanC } : null;
}
