import { COLD_JUNCTION_RANGE_C, hotJunctionC } from '../thermocouple/thermocouple.ts';
import { ABSOLUTE_ZERO_C, fToC } from '../units/temperature.ts';
import type { ProbeSettings } from './probe.ts';
import type { Fault } from './reading.ts';
import type { Sample } from './sample.ts';

/** No thermocouple type of ours goes further, degC (type K, NIST Monograph 175). */
const HIGHEST_C = 1372;

/**
 * The temperature that a sample stands for, degC, or its fault; null where it carries no temperature at all (an air
 * probe, a button press).
 */
export function temperatureOf(sample: Sample, settings: ProbeSettings): number | Fault | null {
  const [fault] = sample.faults;
  if (fault !== undefined) return fault;
  if (sample.tC !== null) return checked(settings.unit === 'degF' ? fToC(sample.tC) : sample.tC);
  const { emfUv, coldJunctionC } = sample;
  if (emfUv === null || coldJunctionC === null) return null;
  if (!Number.isFinite(emfUv) || !Number.isFinite(coldJunctionC)) return 'not-a-number';
  if (coldJunctionC < COLD_JUNCTION_RANGE_C.min || coldJunctionC > COLD_JUNCTION_RANGE_C.max)
    return 'cold-junction';
  return checked(hotJunctionC(settings.thermocouple, emfUv, coldJunctionC));
}

function checked(tC: number | null): number | Fault {
  if (tC === null) return 'out-of-range';
  if (!Number.isFinite(tC)) return 'not-a-number';
  if (tC > HIGHEST_C) return 'out-of-range';
  // Adding 0 takes the sign off a negative zero, which JSON would lose.
  return tC < ABSOLUTE_ZERO_C ? 'impossible' : tC + 0;
}
