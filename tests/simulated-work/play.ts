import type { Seed } from '../../daemon/probe/simulated/random.ts';
import { type Said, type SimulatedIron, simulateIron } from '../../daemon/probe/simulated/simulated-iron.ts';
import type { SaidMark } from '../../daemon/probe/simulated/worker/marks.ts';
import { planWork, type WorkPlan } from '../../daemon/probe/simulated/worker/plan.ts';
import { type Worker, type WorkIronId, workIrons } from '../../daemon/probe/simulated/worker/worker.ts';
import { parseLine } from '../../daemon/probe/wire/line.ts';
import type { Sample } from '../../shared/thermometer/sample.ts';

/** What comes of a worker's work, in order of time. */
export interface Listener {
  readonly sample: (iron: WorkIronId, tMs: number, sample: Sample, truth: Said['truth']) => void;
  readonly mark?: (said: SaidMark, tMs: number) => void;
}

/** The board of an iron, and its only probe. */
export const boardOf = (iron: WorkIronId): string => `${iron}-board`;
export const probeOf = (iron: WorkIronId): string => `${boardOf(iron)}/1`;

/** Plays the work of one seed: both irons' lines through the wire's parser, and the marks between them. */
export function playWork(worker: Worker, seed: Seed, to: Listener): WorkPlan {
  const plan = planWork(worker, seed);
  const untilMs = plan.lengthS * 1000;
  const irons = workIrons.map((iron, i) => runOf(iron, worker, plan, seed + 7 * i));
  let marks = 0;
  while (true) {
    const next = irons.reduce((a, b) => (b.at.tMs < a.at.tMs ? b : a));
    if (next.at.tMs >= untilMs) return plan;
    for (let said = plan.said[marks]; said !== undefined && said.atS * 1000 <= next.at.tMs; ) {
      to.mark?.(said, Math.round(said.atS * 1000));
      said = plan.said[++marks];
    }
    const { said, state } = next.machine.next(next.at);
    next.at = state;
    for (const line of said.lines) {
      const parsed = parseLine(line, boardOf(next.iron));
      if (parsed.kind === 'sample') to.sample(next.iron, said.tMs, parsed.sample, said.truth);
    }
  }
}

function runOf(iron: WorkIronId, worker: Worker, plan: WorkPlan, seed: Seed) {
  const machine: SimulatedIron = simulateIron(worker.irons[iron].traits, plan.scenarios[iron], seed);
  return { iron, machine, at: machine.start };
}
