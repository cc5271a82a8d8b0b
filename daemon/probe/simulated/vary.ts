import { settledCycle } from './cycle.ts';
import { drawOf } from './draw.ts';
import type { IronTraits } from './irons.ts';
import type { IronBody } from './physics.ts';
import type { Seed } from './random.ts';

/** Many plausible irons for tests: INVENTED, none is a measured one. */

const resolutionsK = [0.01, 0.0625, 0.1, 0.25, 0.5, 1];
const periodsMs = [100, 200, 250, 500, 1000];

/** At which setting an iron's swing is judged. */
const JUDGED = { ambientC: 21, dialC: 150, onWork: false, runaway: false };

/**
 * The iron of one seed: heater 500 to 1500 W, a plate that swings 10 to 30 K on its rest at 150 degC, probe lag 0.5 to
 * 6 s, resolution 0.01 to 1 K, a line every 100 to 1000 ms.
 */
export function varyIron(seed: Seed): IronTraits {
  const draw = drawOf(seed);
  const heaterW = draw.between(500, 1500);
  // Heavier irons have stronger heaters: 50 to 150 s from cold to 121 degC without losses.
  const massJPerK = (heaterW * draw.between(50, 150)) / 100;
  const heaterShare = draw.between(0.2, 0.4);
  const body: IronBody = {
    heaterW,
    heaterMassJPerK: massJPerK * heaterShare,
    plateMassJPerK: massJPerK * (1 - heaterShare),
    couplingWPerK: draw.between(0.03, 0.08) * heaterW,
    heaterLossWPerK: draw.between(0.2, 0.6),
    plateLossWPerK: draw.between(0.3, 0.9),
    clothWPerK: draw.between(0.4, 1.4),
    thermostatOn: draw.between(0, 1) < 0.5 ? 'heater' : 'plate',
    hysteresisK: 1,
  };
  return {
    name: `Varied demo iron ${seed}`,
    body: withSwing(body, draw.between(11, 29)),
    probe: {
      lagS: draw.between(0.5, 6),
      noiseK: draw.between(0.02, 0.4),
      resolutionK: draw.oneOf(resolutionsK),
      offsetK: draw.between(-1, 1),
    },
    wire: { probe: '1', periodMs: draw.oneOf(periodsMs), motion: draw.between(0, 1) < 0.5, emf: null },
  };
}

/** The iron with the hysteresis that makes its plate swing so far: the swing grows almost evenly with it. */
function withSwing(body: IronBody, swingK: number): IronBody {
  let hysteresisK = swingK;
  for (let i = 0; i < 8; i++) {
    const cycle = settledCycle({ ...body, hysteresisK }, JUDGED);
    const shortK = swingK - (cycle.peakC - cycle.troughC);
    if (Math.abs(shortK) < 0.2) break;
    hysteresisK = Math.max(0.5, hysteresisK + shortK);
  }
  return { ...body, hysteresisK };
}
