import { dialForMean, settledCycle } from '../../daemon/probe/simulated/cycle.ts';
import { drawOf } from '../../daemon/probe/simulated/draw.ts';
import type { IronTraits } from '../../daemon/probe/simulated/irons.ts';
import type { Seed } from '../../daemon/probe/simulated/random.ts';
import type { Hand } from '../../daemon/probe/simulated/scenario.ts';
import { varyIron } from '../../daemon/probe/simulated/vary.ts';
import {
  type Mistakes,
  usualRounds,
  type Worker,
  type WorkIron,
  type WorkPiece,
} from '../../daemon/probe/simulated/worker/worker.ts';
import { shippedSchedule } from '../../shared/heat/shipped.ts';
import { type SideId, sideIds } from '../../shared/piece/piece.ts';
import { LIMIT_C } from '../unit/watch/support/settings.ts';
import { swingingBy } from '../unit/watch/support/worked-iron.ts';

/** Workers by seed, each with two irons, a hand and pieces of its own. DEMO DATA, all of it invented. */

/** So many bays of cloth between the edges of each side, worked by skipping about; a tape along each second rib. */
function demoPanel(id: string, bays: number): WorkPiece {
  const order = Array.from({ length: bays }, (_, i) => (3 * i) % bays);
  const areasOf = (side: SideId): WorkPiece['areas'] => [
    ...['root', 'tip', 'front', 'rear'].map((at) => ({
      id: `${at}-edge-${side}`,
      side,
      kind: 'edge' as const,
    })),
    ...order.map((bay) => ({ id: `bay-${bay}-${side}`, side, kind: 'cloth' as const })),
    ...order
      .filter((bay) => bay % 2 === 0)
      .map((bay) => ({ id: `rib-tape-${bay}-${side}`, side, kind: 'tape' as const })),
  ];
  return { id, sides: sideIds, areas: sideIds.flatMap(areasOf) };
}

/** How far under the limit the peaks of a carefully set iron stay on its rest, K. */
const SPARE_K = 6;

export interface WorkerOptions {
  readonly mistakes: Mistakes;
  readonly hours: number;
  /** True: both boards have a motion sensor whatever the seed drew. */
  readonly motion?: boolean;
}

export function workerOf(seed: Seed, { mistakes, hours, motion }: WorkerOptions): Worker {
  const draw = drawOf(seed * 7919 + 3);
  const sensed = (traits: IronTraits): IronTraits =>
    motion === true ? { ...traits, wire: { ...traits.wire, motion } } : traits;
  return {
    irons: {
      big: setWell(sensed(varyIron(seed)), draw.between(8, 18)),
      small: setWell(sensed(varyIron(seed + 50_000)), draw.between(8, 18)),
    },
    // Of the Halvorsen Two-Seater; no multiples of 3, so that skipping by 3 comes to every bay.
    pieces: [demoPanel('left-wing-panel', 11), demoPanel('left-flap', 5)],
    rounds: usualRounds,
    hand: handOf(draw.between),
    mistakes,
    ambientC: draw.between(12, 30),
    lengthS: hours * 3600,
  };
}

/** Slow and long, or short and quick: what a hand does on tight cloth. */
const handOf = (between: (low: number, high: number) => number): Hand => ({
  strokeCm: between(15, 45),
  strokeS: between(0.8, 3),
  turnS: between(0.05, 0.4),
  glideG: between(0.02, 0.06),
});

/**
 * Set as a careful worker does: between what has the mean on target on the rest and what has it there on the work, and
 * never so that a peak on the rest comes near the limit.
 */
function setWell(varied: IronTraits, swingK: number): WorkIron {
  const { traits } = swingingBy(varied, swingK, 150);
  const around = { ambientC: 21, runaway: false };
  const dialC: Record<string, number> = {};
  for (const { id, targetC } of shippedSchedule.stages) {
    const rest = dialForMean(traits.body, targetC, { ...around, onWork: false });
    const work = dialForMean(traits.body, targetC, { ...around, onWork: true });
    const middleC = (rest + work) / 2;
    const { peakC } = settledCycle(traits.body, { ...around, onWork: false, dialC: middleC });
    dialC[id] = middleC - Math.max(0, peakC - (LIMIT_C - SPARE_K));
  }
  return { traits, dialC };
}
