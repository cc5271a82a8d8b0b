import type { IronBody, Surroundings } from '../../../daemon/probe/simulated/physics.ts';

/** An iron with round numbers, for checks against closed forms; a check changes what it is about. */
export const roundBody: IronBody = {
  heaterW: 1000,
  heaterMassJPerK: 250,
  plateMassJPerK: 600,
  couplingWPerK: 40,
  heaterLossWPerK: 0.5,
  plateLossWPerK: 0.8,
  clothWPerK: 1.5,
  thermostatOn: 'plate',
  hysteresisK: 10,
};

/** Only the heater body is there: nothing flows to the plate. */
export const heaterAlone: IronBody = { ...roundBody, couplingWPerK: 0, thermostatOn: 'heater' };

/** On its rest in a room of 20 degC. */
export const atRest = (dialC: number | null): Surroundings => ({
  ambientC: 20,
  dialC,
  onWork: false,
  runaway: false,
});

/** Heats without end: as a thermostat that never opens. */
export const fullHeat: Surroundings = { ...atRest(null), runaway: true };
