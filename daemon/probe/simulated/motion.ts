import { type Drawn, gaussian, type Seed, uniform } from './random.ts';
import type { Conditions, Hand } from './scenario.ts';

/** The span over which the board takes one RMS value. */
export interface MotionSpan {
  readonly untilS: number;
  readonly spanS: number;
}

/** INVENTED FIGURES, all of them, g. A still iron shows the sensor's own noise only. */
const resting = { meanG: 0.004, spreadG: 0.0015 };
const carried = { meanG: 0.12, spreadG: 0.04 };
const swept = { meanG: 0.08, spreadG: 0.02 };
/** Somebody knocks the bench so often, and so hard. */
const KNOCKS_PER_S = 1 / 60;
const KNOCK_G = 0.12;
/** No two strokes are alike: the spread of the logarithm of a value. */
const UNLIKE = 0.15;
/** A span is looked at in pieces of this length, s. */
const PIECE_S = 0.025;
const G_M_PER_S2 = 9.80665;

/** RMS acceleration with gravity taken out, g. */
export function motionOf(
  { place, still }: Pick<Conditions, 'place' | 'still'>,
  hand: Hand | undefined,
  span: MotionSpan,
  seed: Seed,
): Drawn {
  if (still || place === 'on-rest') return hand === undefined ? spread(resting, seed) : onBench(span, seed);
  if (place === 'lifted') return spread(carried, seed);
  return hand === undefined ? spread(swept, seed) : overWork(hand, span, seed);
}

function spread({ meanG, spreadG }: typeof resting, seed: Seed): Drawn {
  const noise = gaussian(seed);
  return { value: Math.abs(meanG + spreadG * noise.value), seed: noise.seed };
}

/** At rest on a bench at which somebody works. */
function onBench({ spanS }: MotionSpan, seed: Seed): Drawn {
  const noise = spread(resting, seed);
  const knock = uniform(noise.seed);
  // Drawn once more for how hard, whether it comes or not: a knock shifts nothing of what is drawn later.
  const hard = uniform(knock.seed);
  const knockG = knock.value < KNOCKS_PER_S * spanS ? KNOCK_G * hard.value : 0;
  return { value: Math.hypot(noise.value, knockG), seed: hard.seed };
}

function overWork(hand: Hand, { untilS, spanS }: MotionSpan, seed: Seed): Drawn {
  const pieces = Math.max(1, Math.round(spanS / PIECE_S));
  let sum = 0;
  for (let i = 0; i < pieces; i++) sum += squareAt(hand, untilS - ((i + 0.5) / pieces) * spanS);
  const unlike = gaussian(seed);
  const sensorG = resting.meanG;
  return {
    value: Math.hypot(Math.sqrt(sum / pieces) * Math.exp(UNLIKE * unlike.value), sensorG),
    seed: unlike.seed,
  };
}

/**
 * Square of the acceleration at one moment, g^2: nothing while it rests at the turn; then along a half wave
 * x = -(L/2) cos(pi u) from one end to the other, whose acceleration is (pi/T)^2 (L/2) cos(pi u), and the gliding beside.
 */
function squareAt({ strokeCm, strokeS, turnS, glideG }: Hand, tS: number): number {
  const intoS = ((tS % strokeS) + strokeS) % strokeS;
  if (intoS < turnS) return 0;
  const movesS = strokeS - turnS;
  const u = (intoS - turnS) / movesS;
  const strokeG = ((Math.PI / movesS) ** 2 * (strokeCm / 200) * Math.cos(Math.PI * u)) / G_M_PER_S2;
  return strokeG ** 2 + glideG ** 2;
}
