/**
 * The fabric under a plate, as a first-order response: it goes towards the plate's temperature with one time constant.
 *
 * The time constant is areal heat over contact conductance, both from memory: the polyester cloth of the trade has 60 to
 * 130 g/m2 and 1.0 to 1.5 kJ/(kg K) between the room and 180 degC, so 60 to 200 J/(m2 K); a plate that lies lightly on
 * cloth, with air between the threads and on the far side, passes some 100 to 500 W/(m2 K). That gives 0.1 to 2 s.
 */

/** Time constant of the fabric under the plate, s (our own starting value, in the upper part of that range). */
export const FABRIC_TAU_S = 1;

/** What the fabric starts from, degC (our own choice): a cool shop, so that a brush past never counts for too much. */
export const FABRIC_ROOM_C = 20;

/**
 * The fabric's temperature after a while in contact, degC, by T(t) = plate + (T(0) - plate) exp(-t / tau): exact for a
 * plate that stays as it is, so that two halves of a time equal the whole.
 * @param fabricC what it had before, degC; `FABRIC_ROOM_C` where contact begins
 * @param plateC of the plate meanwhile, degC
 * @param dtS how long, s; any length, and nothing happens in less than none
 */
export const followFabric = (fabricC: number, plateC: number, dtS: number): number =>
  dtS > 0 ? plateC + (fabricC - plateC) * Math.exp(-dtS / FABRIC_TAU_S) : fabricC;
