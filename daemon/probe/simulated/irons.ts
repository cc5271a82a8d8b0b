import type { ThermocoupleType } from '../../../shared/thermocouple/types.ts';
import type { IronBody } from './physics.ts';
import type { ProbeTraits } from './probe.ts';

/** How the simulated board speaks. */
export interface WireTraits {
  /** Its probe's name. */
  readonly probe: string;
  /** Whole milliseconds between two lines. */
  readonly periodMs: number;
  /** Whether it has a motion sensor. */
  readonly motion: boolean;
  /** The thermocouple whose emf it sends; null: it makes the temperature itself. */
  readonly emf: EmfTraits | null;
}

export interface EmfTraits {
  readonly type: ThermocoupleType;
  /** Whether its two wires are swapped. */
  readonly reversed: boolean;
  readonly coldJunctionC: number;
}

export interface IronTraits {
  readonly name: string;
  readonly body: IronBody;
  readonly probe: ProbeTraits;
  readonly wire: WireTraits;
  /** Where its probe is in a check pad: how slowly that comes to the room's temperature with nothing on it, s. */
  readonly padAirS?: number;
}

/** INVENTED DEMO DATA: none of these is a measured iron; they only have plausible sizes. */

const board: WireTraits = { probe: '1', periodMs: 100, motion: true, emf: null };
const quarterDegree: ProbeTraits = { lagS: 1.5, noiseK: 0.12, resolutionK: 0.25, offsetK: 0 };

/** An iron whose board sends the emf of a thermocouple, by its cold junction a little warmer than the shop. */
export const withEmf = (iron: IronTraits, emf: Pick<EmfTraits, 'type' | 'reversed'>): IronTraits => ({
  ...iron,
  wire: { ...iron.wire, emf: { ...emf, coldJunctionC: 24.5 } },
});

/** Sweeps; about 17 K (30 degF) from trough to peak. */
export const bigIron: IronTraits = {
  name: 'Big demo iron',
  body: {
    heaterW: 1000,
    heaterMassJPerK: 260,
    plateMassJPerK: 640,
    couplingWPerK: 45,
    heaterLossWPerK: 0.6,
    plateLossWPerK: 0.9,
    clothWPerK: 1.8,
    thermostatOn: 'plate',
    hysteresisK: 14,
  },
  probe: quarterDegree,
  wire: board,
};

/** The same, whose probe is in a check pad: its rest. A copper disc of 1 mm, pressed well. */
export const padIron: IronTraits = {
  ...bigIron,
  name: 'Big demo iron with a check pad',
  probe: { ...quarterDegree, lagS: 6 },
  wire: { ...board, motion: false },
  padAirS: 70,
};

/** A household iron that swings some 28 K (50 degF) around its mean. */
export const swingingIron: IronTraits = {
  name: 'Swinging demo iron',
  body: {
    heaterW: 1100,
    heaterMassJPerK: 240,
    plateMassJPerK: 560,
    couplingWPerK: 38,
    heaterLossWPerK: 0.4,
    plateLossWPerK: 0.7,
    clothWPerK: 1.8,
    thermostatOn: 'plate',
    hysteresisK: 25,
  },
  probe: quarterDegree,
  wire: board,
};

/** For edges and tapes; its thermostat feels the heater, so the plate runs below its dial. */
export const smallIron: IronTraits = {
  name: 'Small demo iron',
  body: {
    heaterW: 220,
    heaterMassJPerK: 55,
    plateMassJPerK: 120,
    couplingWPerK: 14,
    heaterLossWPerK: 0.15,
    plateLossWPerK: 0.2,
    clothWPerK: 0.37,
    thermostatOn: 'heater',
    hysteresisK: 14,
  },
  probe: { lagS: 0.8, noiseK: 0.05, resolutionK: 0.0625, offsetK: 0 },
  wire: board,
};

/** A heavy plate and a quick thermostat: about 6 K (10 degF). Its board gives whole degrees twice a second. */
export const steadyIron: IronTraits = {
  name: 'Steady demo iron',
  body: {
    heaterW: 700,
    heaterMassJPerK: 220,
    plateMassJPerK: 500,
    couplingWPerK: 60,
    heaterLossWPerK: 0.35,
    plateLossWPerK: 0.6,
    clothWPerK: 1.5,
    thermostatOn: 'heater',
    hysteresisK: 12,
  },
  probe: { lagS: 4, noiseK: 0.2, resolutionK: 1, offsetK: 0 },
  wire: { ...board, periodMs: 500, motion: false },
};

export const demoIrons: readonly IronTraits[] = [bigIron, swingingIron, smallIron, steadyIron];
