import { z } from 'zod';
import { heatScheduleSchema } from '../heat/schedule.ts';
import { places } from '../iron/place.ts';
import { seats } from '../thermometer/place.ts';
import { faults } from '../thermometer/reading.ts';
import { uncounted } from '../watch/counted.ts';
import { findingSchema } from './sessions.ts';

/** A session's readings thinned out for drawing. All times are milliseconds since the session's first input. */

/** Why a row has no plate temperature: a fault, or a reading that is of no plate. */
export const traceGaps = [...faults, ...uncounted] as const;
export type TraceGap = (typeof traceGaps)[number];

/** At most so many buckets a probe are given, and so many unless asked for. */
export const POINTS_AT_MOST = 8000;
const POINTS_USUALLY = 1000;

/** A whole number as an address has it. */
const whole = z
  .string()
  .regex(/^-?\d{1,13}$/, 'it must be a whole number')
  .transform(Number);
const wholeMs = whole.pipe(z.number().int());

export const traceQuerySchema = z.strictObject({
  /** Begin of the span, session ms; the session's own where left out. */
  from: wholeMs.optional(),
  /** End of the span, session ms; the session's own where left out. */
  to: wholeMs.optional(),
  /** Buckets a probe, at most. */
  points: whole.pipe(z.number().int().min(2).max(POINTS_AT_MOST)).default(POINTS_USUALLY),
});

/**
 * Columns of one probe, one row a bucket, in the order of time. A row with readings has the lowest and the highest of
 * them; one without has neither, and the fault that began then and holds until the next row.
 */
const traceColumnsSchema = z.strictObject({
  id: z.string(),
  tMs: z.array(z.number()).readonly(),
  minC: z.array(z.number().nullable()).readonly(),
  maxC: z.array(z.number().nullable()).readonly(),
  fault: z.array(z.enum(traceGaps).nullable()).readonly(),
});

/** The settings in force from a time on. */
const settingsFromSchema = z.strictObject({
  fromMs: z.number().int(),
  schedule: heatScheduleSchema,
  probes: z
    .array(
      z.strictObject({
        id: z.string(),
        label: z.string(),
        seat: z.enum(seats),
        guardBandK: z.number(),
        /** The calibration that its readings were corrected with; null: it was not calibrated. */
        calibration: z
          .strictObject({ version: z.number().int(), madeAt: z.iso.datetime({ offset: true }) })
          .nullable(),
      }),
    )
    .readonly(),
});

/** What was being worked from a time on, as far as the user said. */
const workFromSchema = z.strictObject({
  fromMs: z.number().int(),
  stageId: z.string().nullable(),
  place: z.enum(places),
});

export const traceSchema = z.strictObject({
  session: z.string(),
  /** The span that was asked for. */
  fromMs: z.number().int(),
  toMs: z.number().int(),
  /** The session's last input that is kept. */
  untilMs: z.number().int(),
  /** Readings have to be worked out of what is kept, which takes time: it has come so far. Ask again for more. */
  readUntilMs: z.number().int(),
  complete: z.boolean(),
  /** Where the session's chain doesn't hold: nothing after it can be shown. */
  broken: z.strictObject({ atMs: z.number().int(), what: z.string() }).nullable(),
  probes: z.array(traceColumnsSchema).readonly(),
  settings: z.array(settingsFromSchema).readonly(),
  work: z.array(workFromSchema).readonly(),
  /** What the user noted in the span. */
  notes: z.array(z.strictObject({ atMs: z.number().int(), text: z.string() })).readonly(),
  /** The findings in the span, without thermostat cycles, which are only counted. */
  findings: z.array(findingSchema).readonly(),
  /** Findings in the span beyond those that are given. */
  findingsLeftOut: z.number().int().min(0),
  cycles: z.number().int().min(0),
});

export type TraceColumns = z.infer<typeof traceColumnsSchema>;
export type SettingsFrom = z.infer<typeof settingsFromSchema>;
export type WorkFrom = z.infer<typeof workFromSchema>;
export type Trace = z.infer<typeof traceSchema>;
