import { advanceBody, type BodyState, coldBody, type IronBody, type Surroundings } from './physics.ts';

/** What an iron's thermostat truly does once it has settled: known truth to hold findings against. */
export interface TrueCycle {
  readonly peakC: number;
  readonly troughC: number;
  /** Mean over time. */
  readonly meanC: number;
  readonly periodS: number;
  /** Share of the time in which the plate rises. */
  readonly rising: number;
}

const LOOK_S = 0.1;
const LONGEST_WARM_UP_S = 3600;
/** The first click already sets the next cycle but for the quick mode, which dies within a cycle. */
const CYCLES_BEFORE = 3;

/**
 * The plate's cycle with the dial left alone, measured on the fourth one after a cold start, to about 0.02 K.
 * @throws RangeError where the iron doesn't cycle within an hour of simulated time: too weak for this setting.
 */
export function settledCycle(body: IronBody, around: Surroundings): TrueCycle {
  let state = coldBody(around.ambientC);
  for (let i = 0; i < CYCLES_BEFORE; i++) state = untilHeaterComesOn(body, state, around, () => {});
  let peakC = -Infinity;
  let troughC = Infinity;
  let sumC = 0;
  let count = 0;
  let risingCount = 0;
  let beforeC = state.plateC;
  untilHeaterComesOn(body, state, around, ({ plateC }) => {
    peakC = Math.max(peakC, plateC);
    troughC = Math.min(troughC, plateC);
    sumC += plateC;
    count++;
    if (plateC > beforeC) risingCount++;
    beforeC = plateC;
  });
  return { peakC, troughC, meanC: sumC / count, periodS: count * LOOK_S, rising: risingCount / count };
}

function untilHeaterComesOn(
  body: IronBody,
  from: BodyState,
  around: Surroundings,
  look: (state: BodyState) => void,
): BodyState {
  let before = from;
  for (let tS = 0; tS < LONGEST_WARM_UP_S; tS += LOOK_S) {
    const state = advanceBody(body, before, around, LOOK_S);
    look(state);
    if (state.heaterOn && !before.heaterOn && tS > 0) return state;
    before = state;
  }
  throw new RangeError(`no thermostat cycle within an hour at a dial of ${around.dialC} degC`);
}

/** The dial setting whose settled cycle has the plate at `meanC` on average, to 0.05 K. */
export function dialForMean(body: IronBody, meanC: number, around: Omit<Surroundings, 'dialC'>): number {
  let dialC = meanC;
  for (let i = 0; i < 20; i++) {
    const offK = meanC - settledCycle(body, { ...around, dialC }).meanC;
    if (Math.abs(offK) < 0.05) return dialC;
    dialC += offK;
  }
  throw new RangeError(`no dial setting gives this iron a plate mean of ${meanC} degC`);
}
