import { probeMotionSchema } from '../../../shared/messages/motion.ts';
import { ledProcedure } from '../led/led-procedure.ts';

/** What is still and moving on the lines of probes as the daemon has it, and the steps of checking it. */
export const {
  of: motionOf,
  whyOf: motionWhyOf,
  take: takeMotion,
  use: useMotion,
} = ledProcedure<typeof probeMotionSchema, 'begin' | 'give-up'>('motion', probeMotionSchema);
