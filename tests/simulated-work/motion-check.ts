import type { Seed } from '../../daemon/probe/simulated/random.ts';
import { leftOnRest } from '../../daemon/probe/simulated/scenario.ts';
import { saidBy, simulateIron } from '../../daemon/probe/simulated/simulated-iron.ts';
import type { Worker, WorkIronId } from '../../daemon/probe/simulated/worker/worker.ts';
import { parseLine } from '../../daemon/probe/wire/line.ts';
import type { MotionLevels } from '../../shared/iron/motion/check.ts';
import { heardInTrial, startTrial } from '../../shared/iron/motion/trial.ts';

/** The check as the worker does it in Setup, with this iron, board and hand; null where it was refused. */
export function checkedLevels(worker: Worker, iron: WorkIronId, seed: Seed): MotionLevels | null {
  const { traits } = worker.irons[iron];
  const scenario = {
    ...leftOnRest(100),
    turns: [
      { atS: 0, dialC: null },
      { atS: 7.5, place: 'on-work' as const },
    ],
    hand: worker.hand,
  };
  let trial = startTrial(0);
  for (const { lines, tMs } of saidBy(simulateIron(traits, scenario, seed + 99))) {
    for (const line of lines) {
      const parsed = parseLine(line, 'board');
      if (parsed.kind === 'sample') trial = heardInTrial(trial, tMs, parsed.sample.motionG);
    }
    if (trial.end !== null) return trial.end.kind === 'found' ? trial.end.levels : null;
  }
  return null;
}
