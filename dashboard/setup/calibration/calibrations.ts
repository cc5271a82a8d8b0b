import { probeCalibrationsSchema } from '../../../shared/messages/calibration.ts';
import { ledProcedure } from '../led/led-procedure.ts';

type Step = 'begin' | 'wait' | 'keep' | 'drop' | 'save' | 'give-up';

/** The calibrations of probes as the daemon has them, and the steps of making one. */
export const {
  of: calibrationsOf,
  whyOf,
  take,
  use: useCalibrations,
} = ledProcedure<typeof probeCalibrationsSchema, Step>('calibrations', probeCalibrationsSchema);
