import { gaussian, type Seed } from './random.ts';

/** What stands between the plate's true temperature and the number on the wire. */
export interface ProbeTraits {
  /** Time constant of the first-order lag. */
  readonly lagS: number;
  /** Standard deviation of the noise. */
  readonly noiseK: number;
  /** The step of its numbers. */
  readonly resolutionK: number;
  /** Added to every number. */
  readonly offsetK: number;
}

/** The plate's way over a step. */
export interface PlateStep {
  readonly fromC: number;
  readonly toC: number;
  readonly dtS: number;
}

/**
 * The junction's temperature after a step over which the plate went evenly from one temperature to another: the exact
 * answer of a first-order lag to a ramp, so to a constant too.
 */
export function followPlate(lagS: number, junctionC: number, plate: PlateStep): number {
  if (lagS <= 0) return plate.toC;
  const times = plate.dtS / lagS;
  // How much of the ramp it still trails: 1 over no time at all.
  const trail = times === 0 ? 1 : -Math.expm1(-times) / times;
  return plate.toC - (plate.toC - plate.fromC) * trail + (junctionC - plate.fromC) * Math.exp(-times);
}

/** The number that the probe gives for a junction temperature, as the text that goes onto the wire. */
export function probeText(
  traits: ProbeTraits,
  junctionC: number,
  seed: Seed,
): { readonly text: string; readonly seed: Seed } {
  const noise = gaussian(seed);
  const exactC = junctionC + traits.offsetK + traits.noiseK * noise.value;
  const steps = Math.round(exactC / traits.resolutionK);
  const text = (steps * traits.resolutionK).toFixed(decimalsOf(traits.resolutionK));
  return { text: Number(text) === 0 ? text.replace('-', '') : text, seed: noise.seed };
}

/** Decimals that show every step of this size, six at most. */
function decimalsOf(resolutionK: number): number {
  for (let decimals = 0; decimals < 6; decimals++)
    if (Number(resolutionK.toFixed(decimals)) === resolutionK) return decimals;
  return 6;
}
