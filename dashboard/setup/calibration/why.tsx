import { whyOf } from './calibrations.ts';

/** Why the last step came to nothing, beside what was pressed. */
export const Why = ({ id }: { readonly id: string }) => (
  <p class="field-error" role="status" data-testid="calibration-why">
    {whyOf(id)}
  </p>
);
