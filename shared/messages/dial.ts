import { z } from 'zod';
import { chartPointSchema, dialChartSchema } from '../iron/dial/chart.ts';
import { lastLoadSchema, lastStretchSchema, lastWarmUpSchema } from '../iron/dial/kept.ts';
import { dialMarkSchema } from '../iron/dial/mark.ts';
import { plateTemperatureC } from '../units/plate-temperature.ts';

/** What an iron does at the marks of its dial, and where to set it, as the API tells it. */

const at = z.iso.datetime({ offset: true });

/** The plate's mean has gone from the iron's chart; `Drift` says what each value is. */
const driftSchema = z.strictObject({
  sinceAt: at,
  byK: z.number(),
  stretches: z.number().int().min(1),
  sigmaK: z.number().min(0),
  sigmaFrom: z.enum(['chart', 'floor']),
});

const markNumber = z.number();
const ceiling = z.enum(['stage-high', 'fabric-limit', 'cement-limit']);
const highestMarkSchema = z.strictObject({ mark: markNumber, atEnd: z.boolean() });

/** Where to set the dial for a stage, or why that can't be said; `Advice` says what each value is. */
const adviceSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('set'),
    mark: markNumber,
    meanC: z.number(),
    hottestC: z.number(),
    interpolated: z.boolean(),
    typed: z.boolean(),
    heldBy: z.enum([...ceiling.options, 'chart']).nullable(),
    highest: highestMarkSchema.nullable(),
  }),
  z.strictObject({ kind: z.literal('too-wide'), byK: z.number(), ceiling }),
  z.strictObject({ kind: z.literal('too-cold'), mark: markNumber, meanC: z.number() }),
  z.strictObject({ kind: z.literal('too-hot'), mark: markNumber, hottestC: z.number() }),
  z.strictObject({ kind: z.literal('few-marks'), charted: z.number().int().min(0) }),
  z.strictObject({ kind: z.literal('falls'), fromMark: markNumber, toMark: markNumber, byK: z.number() }),
]);

const curve = z.array(z.strictObject({ mark: markNumber, plateC: z.number() })).readonly();

/** What is to be drawn of the cycles at one mark, by their turning points. */
const drawnSchema = z.strictObject({
  mark: dialMarkSchema,
  at,
  /** How many cycles are drawn, the last ones; and where they end, s. */
  count: z.number().int().min(1),
  lastS: z.number(),
  /** Peaks and troughs, joined where the cycles follow on each other; times since the first trough, s. */
  lines: z.array(z.array(z.strictObject({ s: z.number(), plateC: z.number() })).readonly()).readonly(),
  meanC: z.number(),
  highestC: z.number(),
  lowestC: z.number(),
  /** The stage whose target is nearest to the mean; null: the schedule has none. */
  stage: z.strictObject({ name: z.string(), lowC: z.number(), highC: z.number() }).nullable(),
});

export const ironDialSchema = z.strictObject({
  iron: z.string(),
  simulated: z.boolean(),
  chart: dialChartSchema,
  /** Measured at marks that the chart has already, since it was settled: what a drift is looked for in. */
  since: z.array(chartPointSchema).readonly(),
  last: lastStretchSchema.nullable(),
  load: lastLoadSchema.nullable(),
  /** How it last came up from cold; null where that was not seen at a told mark. */
  warmUp: lastWarmUpSchema.nullable(),
  drift: driftSchema.nullable(),
  /** What the advice allows for the probe's uncertainty, K. */
  uncertaintyK: z.number().min(0),
  /** What it allows for the hottest spot of the plate over the probe's place, K; 0 also where nobody looked. */
  unevennessK: z.number().min(0),
  /** One for each stage of the iron's heat schedule. */
  advice: z
    .array(
      z.strictObject({ stageId: z.string(), stage: z.string(), targetC: z.number(), advice: adviceSchema }),
    )
    .readonly(),
  /** The highest mark at which no peak passes the fabric limit. */
  highest: highestMarkSchema.nullable(),
  drawing: z.strictObject({
    fabricLimitC: z.number(),
    /** The chart between its marks: the mean, and the hottest to be expected, as the advice has it. */
    mean: curve,
    hottest: curve,
    /** The last stretch at each mark. */
    stretches: z.array(drawnSchema).readonly(),
  }),
});

/** What was read from a hand thermometer at a mark; highest and lowest where they were looked for. */
export const typedPointSchema = z.strictObject({
  mark: z.number().min(0).max(1000),
  meanC: plateTemperatureC,
  peakC: plateTemperatureC.nullable().default(null),
  troughC: plateTemperatureC.nullable().default(null),
});
export const wrongPointSchema = z.strictObject({ mark: z.number().min(0).max(1000) });
/** Nothing has to be said with it. */
export const acceptDialSchema = z.strictObject({});

export type IronDial = z.infer<typeof ironDialSchema>;
export type TypedPoint = z.infer<typeof typedPointSchema>;
