import type { AirFrom } from '../../shared/cure/air.ts';
import { checked } from './change.ts';
import type { Settings } from './settings.ts';

/** Settles which probe tells the air. One that was not heard yet may be named: that it is silent is said. */
export const withAirFrom = (settings: Settings, air: AirFrom): { readonly settings: Settings } => ({
  settings: checked({ ...settings, air }),
});
