import { probeLagSchema } from '../../../shared/messages/lag.ts';
import { ledProcedure } from '../led/led-procedure.ts';

type Step = 'begin' | 'step' | 'stop' | 'keep' | 'give-up';

/** The lags of probes as the daemon has them, and the steps of measuring one. */
export const {
  of: lagOf,
  whyOf: lagWhyOf,
  take: takeLag,
  use: useLag,
} = ledProcedure<typeof probeLagSchema, Step>('lag', probeLagSchema);
