import { z } from 'zod';
import { unknownProbe } from '../../shared/thermometer/probe.ts';

/** Settings as the first format had them: a probe had one allowance, and nothing was known of its uncertainty. */
const firstFormat = z.looseObject({
  format: z.literal(1),
  probes: z.array(z.looseObject({ guardBandK: z.number() })),
});

/** What stood in a new probe's allowance: nobody had stated it, K. */
const FIRST_ALLOWANCE_K = 2.2;

/** Settings of an earlier format, in this one's; anything else as it is, for the schema to judge. */
export function upgraded(value: unknown): unknown {
  const first = firstFormat.safeParse(value);
  if (!first.success) return value;
  const probes = first.data.probes.map(({ guardBandK, ...probe }) => ({
    ...unknownProbe,
    ...probe,
    mountingK: guardBandK === FIRST_ALLOWANCE_K ? null : guardBandK,
  }));
  return { ...first.data, format: 2, probes };
}
