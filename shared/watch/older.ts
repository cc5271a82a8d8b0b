import { unknownProbe } from '../thermometer/probe.ts';
import { USUAL_CONFIDENCE } from '../thermometer/uncertainty.ts';
import type { WatchSettings } from './input.ts';

/**
 * Settings in a session that an older version of the program stored lack what came later: they are completed as of a
 * probe that nothing is known of. Settings of this version are given back as they are.
 */
export function completed(settings: WatchSettings): WatchSettings {
  if (settings.probes.every((probe) => 'calibration' in probe)) return settings;
  return {
    ...settings,
    iron: { ...settings.iron, confidence: USUAL_CONFIDENCE },
    probes: settings.probes.map((probe) => ({ ...unknownProbe, ...probe, calibration: null })),
  };
}
