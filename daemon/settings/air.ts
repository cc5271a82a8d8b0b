import type { AirFrom } from '../../shared/cure/air.ts';
import { airFromRefusals } from '../../shared/words/air-probes.ts';
import { Refusal } from '../refusal.ts';
import { checked, isSimulated } from './change.ts';
import type { Settings } from './settings.ts';

/** Which probe tells the air of the simulated shop, or of the real one: each has a choice of its own. */
export const airFromOf = (settings: Settings, simulated: boolean): AirFrom =>
  simulated ? settings.simulatedAir : settings.air;

/**
 * Settles which probe tells the air. One that was not heard yet may be named: that it is silent is said.
 * @throws Refusal for a simulated probe in a real shop, and the other way round
 */
export function withAirFrom(
  settings: Settings,
  from: AirFrom,
  simulated: boolean,
): { readonly settings: Settings } {
  const { probe } = from;
  if (probe !== null && isSimulated(probe) !== simulated) {
    const { simulatedProbe, realProbe } = airFromRefusals;
    throw new Refusal('invalid', simulated ? realProbe(probe) : simulatedProbe(probe), 'probe');
  }
  return { settings: checked({ ...settings, [simulated ? 'simulatedAir' : 'air']: from }) };
}
