import { followPlate } from '../../../../daemon/probe/simulated/probe.ts';
import { gaussian, type Seed } from '../../../../daemon/probe/simulated/random.ts';

/** Records of a probe that meets a step: simulated, of known truth. */

export interface SimulatedStep {
  readonly tauS: number;
  readonly startC: number;
  readonly endC: number;
  readonly onsetS: number;
  readonly lastsS: number;
  readonly periodMs: number;
  readonly noiseK: number;
  readonly resolutionK: number;
  /** How the end itself moves after the step, K after so many seconds. */
  readonly endMovesK?: (sinceS: number) => number;
  readonly seed: Seed;
}

/** The probe's lag is followed exactly over spans of this length, s. */
const SPAN_S = 0.02;

export function recordStep(step: SimulatedStep): { readonly tMs: number; readonly tC: number }[] {
  const { tauS, startC, endC, onsetS, resolutionK, noiseK, endMovesK = () => 0 } = step;
  const record: { tMs: number; tC: number }[] = [];
  let { seed } = step;
  let junctionC = startC;
  let sinceS = 0;
  for (let tMs = 0; tMs <= step.lastsS * 1000; tMs += step.periodMs) {
    for (const toS = tMs / 1000 - onsetS; sinceS < toS; ) {
      const nextS = Math.min(toS, sinceS + SPAN_S);
      const plate = { fromC: endC + endMovesK(sinceS), toC: endC + endMovesK(nextS), dtS: nextS - sinceS };
      junctionC = followPlate(tauS, junctionC, plate);
      sinceS = nextS;
    }
    const noise = gaussian(seed);
    seed = noise.seed;
    const exactC = junctionC + noiseK * noise.value;
    record.push({ tMs, tC: resolutionK > 0 ? Math.round(exactC / resolutionK) * resolutionK : exactC });
  }
  return record;
}

export const plainStep: SimulatedStep = {
  tauS: 2,
  startC: 21,
  endC: 150,
  onsetS: 5.03,
  lastsS: 30,
  periodMs: 100,
  noiseK: 0.1,
  resolutionK: 0.25,
  seed: 1,
};
