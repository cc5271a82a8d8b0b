import { passes, type Scenario } from './scenario.ts';

/** INVENTED DEMO DATA. Dial settings of the demo's user: a little off what the plate does, as dials are. */
const TACK_DIAL_C = 120;
const FINAL_DIAL_C = 174;

/**
 * The demo's 42 minutes, made for the big demo iron: cold start and warm-up (two minutes), tacking, the initial shrink
 * on both sides, the final shrink on the first; on the second the thermostat sticks and the plate passes 375 degF
 * (190.6 degC); it goes to its rest, recovers, the side is finished, and the iron is left to cool until it is cold.
 */
export const demoScenario: Scenario = {
  name: 'Demo: tack, initial and final shrink, one overheat',
  ambientC: 21,
  rhPct: 52,
  lengthS: 2520,
  turns: [
    { atS: 0, dialC: null, place: 'on-rest' },
    { atS: 4, dialC: TACK_DIAL_C },
    ...passes(120, 3, 25, 5),
    { atS: 210, place: 'on-rest' },
    ...passes(250, 4, 30, 6),
    { atS: 394, place: 'on-rest' },
    ...passes(440, 4, 30, 6),
    { atS: 584, place: 'on-rest' },
    { atS: 590, dialC: FINAL_DIAL_C },
    ...passes(690, 4, 30, 6),
    { atS: 834, place: 'on-rest' },
    ...passes(880, 2, 30, 6),
    { atS: 952, place: 'on-work' },
    { atS: 985, place: 'on-rest' },
    ...passes(1070, 3, 30, 6),
    { atS: 1178, place: 'on-rest' },
    { atS: 1185, dialC: null },
  ],
  faults: [{ fromS: 940, toS: 980, kind: 'runaway' }],
};
