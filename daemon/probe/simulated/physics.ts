/**
 * An iron as two thermal masses: the heater body with its element, and the sole plate. Heat flows between them through
 * one conductance, from each to the air, and from the plate into the cloth. All flows are in proportion to a difference
 * of temperatures (Newton's law of cooling), so that between two clicks of the thermostat the iron is a linear system,
 * which is solved exactly: its two modes are found by turning the symmetrised matrix onto its axes.
 */

export interface IronBody {
  readonly heaterW: number;
  /** Heat capacities. */
  readonly heaterMassJPerK: number;
  readonly plateMassJPerK: number;
  /** Between heater body and sole plate. */
  readonly couplingWPerK: number;
  /** To the air. */
  readonly heaterLossWPerK: number;
  readonly plateLossWPerK: number;
  /** From the plate into the cloth while it is on the work: it keeps coming to fresh cloth, as warm as the air. */
  readonly clothWPerK: number;
  /** The mass that the thermostat feels. */
  readonly thermostatOn: 'heater' | 'plate';
  /** The thermostat opens half of it above the dial's mean and closes half of it below; more than 0. */
  readonly hysteresisK: number;
}

export interface BodyState {
  readonly heaterC: number;
  readonly plateC: number;
  readonly heaterOn: boolean;
}

/** What acts on the iron from outside; held constant over a step. */
export interface Surroundings {
  readonly ambientC: number;
  /** Mean temperature that the dial asks for; null: switched off. */
  readonly dialC: number | null;
  readonly onWork: boolean;
  /** How much of `clothWPerK` this cloth takes, 1 where left out: more over a bonded edge, less where it is hot already. */
  readonly draws?: number;
  /** The thermostat's contacts are stuck: it heats whatever the dial says. */
  readonly runaway: boolean;
}

/** An iron that has stood cold at `ambientC`. */
export const coldBody = (ambientC: number): BodyState => ({
  heaterC: ambientC,
  plateC: ambientC,
  heaterOn: false,
});

/** A thermostat that clicks twice within this span would be missed; heat moves far slower than that. */
const LONGEST_STEP_S = 1;
/** Halvings that place a click: 1 s / 2^40 is about a picosecond. */
const CLICK_HALVINGS = 40;

/**
 * The iron `dtS` seconds on. The thermostat's clicks fall where the felt temperature crosses its edge, not at the end
 * of a step, so that the result doesn't depend on how a span is cut into steps.
 * @throws RangeError where the hysteresis is not above 0: such a thermostat would click endlessly within an instant.
 */
export function advanceBody(body: IronBody, from: BodyState, around: Surroundings, dtS: number): BodyState {
  if (!(body.hysteresisK > 0)) throw new RangeError(`hysteresis of ${body.hysteresisK} K: must be above 0`);
  let state = from;
  for (let leftS = dtS; leftS > 0; ) {
    state = withThermostat(body, state, around);
    const stepS = Math.min(leftS, LONGEST_STEP_S);
    const ahead = flow(body, state, around, stepS);
    if (withThermostat(body, ahead, around).heaterOn === state.heaterOn) {
      state = ahead;
      leftS -= stepS;
    } else {
      const clickS = timeOfClick(body, state, around, stepS);
      state = flow(body, state, around, clickS);
      leftS -= clickS;
    }
  }
  return withThermostat(body, state, around);
}

/** The first instant within `stepS` by which the thermostat has clicked, s. */
function timeOfClick(body: IronBody, from: BodyState, around: Surroundings, stepS: number): number {
  let before = 0;
  let after = stepS;
  for (let i = 0; i < CLICK_HALVINGS; i++) {
    const middle = (before + after) / 2;
    const clicked = withThermostat(body, flow(body, from, around, middle), around).heaterOn !== from.heaterOn;
    if (clicked) after = middle;
    else before = middle;
  }
  return after;
}

function withThermostat(body: IronBody, state: BodyState, around: Surroundings): BodyState {
  const heaterOn = isHeating(body, state, around);
  return heaterOn === state.heaterOn ? state : { ...state, heaterOn };
}

function isHeating(body: IronBody, state: BodyState, around: Surroundings): boolean {
  if (around.runaway) return true;
  if (around.dialC === null) return false;
  const feltC = body.thermostatOn === 'heater' ? state.heaterC : state.plateC;
  if (feltC >= around.dialC + body.hysteresisK / 2) return false;
  if (feltC <= around.dialC - body.hysteresisK / 2) return true;
  return state.heaterOn;
}

/**
 * Heater held as it is for `dtS` seconds, exactly. With y = sqrt(heat capacity) * temperature the matrix of
 * y' = S y + v is symmetric; turned by an angle it falls apart into two modes z' = rate * z + push.
 */
function flow(body: IronBody, from: BodyState, around: Surroundings, dtS: number): BodyState {
  const rootH = Math.sqrt(body.heaterMassJPerK);
  const rootP = Math.sqrt(body.plateMassJPerK);
  const plateLossWPerK = body.plateLossWPerK + (around.onWork ? body.clothWPerK * (around.draws ?? 1) : 0);
  const sH = -(body.couplingWPerK + body.heaterLossWPerK) / body.heaterMassJPerK;
  const sP = -(body.couplingWPerK + plateLossWPerK) / body.plateMassJPerK;
  const sHP = body.couplingWPerK / (rootH * rootP);
  const vH = ((from.heaterOn ? body.heaterW : 0) + body.heaterLossWPerK * around.ambientC) / rootH;
  const vP = (plateLossWPerK * around.ambientC) / rootP;

  const angle = Math.atan2(2 * sHP, sH - sP) / 2;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const yH = rootH * from.heaterC;
  const yP = rootP * from.plateC;
  const z1 = mode(c * c * sH + 2 * c * s * sHP + s * s * sP, c * vH + s * vP, c * yH + s * yP, dtS);
  const z2 = mode(s * s * sH - 2 * c * s * sHP + c * c * sP, c * vP - s * vH, c * yP - s * yH, dtS);
  return { ...from, heaterC: (c * z1 - s * z2) / rootH, plateC: (s * z1 + c * z2) / rootP };
}

/** z' = rate * z + push, from `z`, after `dtS` seconds. */
function mode(rate: number, push: number, z: number, dtS: number): number {
  const grown = rate === 0 ? dtS : Math.expm1(rate * dtS) / rate;
  return z + (rate * z + push) * grown;
}
