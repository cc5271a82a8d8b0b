import { z } from 'zod';
import { alarmKinds, alarmStates } from '../alarm/record.ts';
import { heatScheduleSchema } from '../heat/schedule.ts';
import { dialMarkSchema } from '../iron/dial/mark.ts';
import { ironPhases } from '../iron/phase.ts';
import { places } from '../iron/place.ts';
import { placeDraftSchema, seats, watchedHows } from '../thermometer/place.ts';
import { faults } from '../thermometer/reading.ts';
import { evennessSchema } from './evenness.ts';
import { hearingSchema } from './hearing.ts';
import { atLiveSchema, workLiveSchema } from './piece.ts';

/** How things stand now: what `/api/live` answers and what the stream begins with. */

const utc = z.iso.datetime({ offset: true });

/** Where a plate temperature stands among the stages of its iron's schedule. */
export const standingSchema = z.strictObject({
  kind: z.enum(['cold', 'below', 'in-stage', 'between', 'above', 'over-limit', 'no-reading']),
  /** Names of the stages whose band holds it; empty unless `in-stage`. */
  stages: z.array(z.string()).readonly(),
});

export const probeLiveSchema = z.strictObject({
  id: z.string(),
  label: z.string(),
  /** Id of the iron that it sits on. */
  iron: z.string(),
  simulated: z.boolean(),
  quality: z.enum(['ok', ...faults]),
  /** How it serves its iron, and where it was told to be; null: nobody told it. */
  seat: z.enum(seats),
  place: placeDraftSchema.nullable(),
  /** What it reads, whatever that is worth; null unless the quality is `ok`. */
  readC: z.number().nullable(),
  /**
   * The plate's temperature; null unless the quality is `ok` (an old number is never given) and the probe is on a plate: of
   * a bare check pad, a loose probe and one whose place has yet to be told there is none.
   */
  plateC: z.number().nullable(),
  standing: standingSchema,
  /** Age of the last valid reading, ms; null where there never was one. */
  ageMs: z.number().int().min(0).nullable(),
  trend: z.enum(['steady', 'rising', 'falling']).nullable(),
  slopeKPerS: z.number().nullable(),
  /** How much under a limit a reading must be for the plate to be under it, at the iron's confidence, K. */
  guardBandK: z.number(),
  /** What of that is the known excess of the plate's hottest spot over the probe's place, K: not an uncertainty. */
  overK: z.number().min(0),
  /** True where a calibration stands behind it; else tolerances and allowances do. */
  measured: z.boolean(),
  /** True until a valid reading is under 43 degC. */
  hot: z.boolean(),
});

export const alarmLiveSchema = z.strictObject({
  iron: z.string(),
  kind: z.enum(alarmKinds),
  probe: z.string().nullable(),
  priority: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  state: z.enum(alarmStates),
  /** When it was raised. */
  since: utc,
  peakC: z.number().nullable(),
  detail: z.string(),
  silencedUntil: utc.nullable(),
});

const agedMs = z.number().int().min(0);

/** Checks of an iron that is parked on a check pad. */
const checkLiveSchema = z.strictObject({
  /** What the pad tells now; `silent`: it gives no valid reading. */
  pad: z.enum(['bare', 'settling', 'settled', 'silent']),
  /** What it reads while an iron lies on it, degC: the plate is at least as hot. */
  padC: z.number().nullable(),
  /** The last that settled: the hottest of it counts. `ageMs`: since it was last read. */
  last: z
    .strictObject({
      at: utc,
      ageMs: agedMs,
      plateC: z.number(),
      lowestC: z.number(),
      guardBandK: z.number(),
      standing: standingSchema,
    })
    .nullable(),
  /** A later one that did not settle: the plate was at least so hot. */
  missed: z
    .strictObject({ at: utc, ageMs: agedMs, atLeastC: z.number(), ended: z.enum(['lifted', 'lost']) })
    .nullable(),
});

const typedLiveSchema = z.strictObject({
  at: utc,
  ageMs: agedMs,
  plateC: z.number(),
  guardBandK: z.number(),
  standing: standingSchema,
});

const chartLiveSchema = z.strictObject({
  mark: dialMarkSchema,
  meanC: z.number(),
  /** Mean of its peaks; null where none are charted. */
  peakC: z.number().nullable(),
});

export const ironLiveSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  simulated: z.boolean(),
  probes: z.array(z.string()).readonly(),
  phase: z.enum(ironPhases),
  hot: z.boolean(),
  /** What stands behind what is said of it: monitored, checked and typed are never mixed. */
  watched: z.enum(watchedHows),
  /** Of an iron with a check pad. */
  check: checkLiveSchema.nullable(),
  /** What was typed last from a hand thermometer. */
  typed: typedLiveSchema.nullable(),
  /** What its dial chart has at the mark that was told: of an iron that is not monitored, while the mark isn't doubted. */
  chart: chartLiveSchema.nullable(),
  place: z.enum(places),
  /** Where on a piece it works; null: not said. */
  at: atLiveSchema.nullable(),
  stageId: z.string().nullable(),
  /** What the user said that the dial stands at; `doubted` once the plate does something else. */
  dial: z.strictObject({ mark: dialMarkSchema, doubted: z.boolean() }).nullable(),
  /** How evenly its plate is hot: by its probes now, else by spots that were typed; null where neither tells. */
  evenness: evennessSchema.nullable(),
  /** The running session, if one is being recorded. */
  session: z.string().nullable(),
  schedule: heatScheduleSchema,
});

const deviceLiveSchema = z.strictObject({
  id: z.string(),
  path: z.string(),
  simulated: z.boolean(),
  link: z.enum(['connected', 'starting', 'lost']),
  /** What is wrong and what to do; empty while all is well. */
  detail: z.string(),
  hello: z.record(z.string(), z.string()).nullable(),
  linesAccepted: z.number().int(),
  samplesMissed: z.number().int(),
  checksummed: z.boolean(),
  rejected: z
    .array(z.strictObject({ cause: z.string(), count: z.number().int(), lastRaw: z.string() }))
    .readonly(),
  lastLine: z.string(),
});

const foundPortSchema = z.strictObject({ path: z.string(), title: z.string(), problem: z.string() });

/** All that changes seldom. */
export const situationSchema = z.strictObject({
  irons: z.array(ironLiveSchema).readonly(),
  devices: z.array(deviceLiveSchema).readonly(),
  /** Whether what happens is being kept, and if not, why. */
  keeping: z.strictObject({ kept: z.boolean(), detail: z.string() }),
  hearing: hearingSchema,
  work: workLiveSchema,
  /** Ports to choose from while the program waits for a choice; null once one is made. */
  choice: z.array(foundPortSchema).readonly().nullable(),
  /** True where the page may look but not command; the reason stands beside. */
  viewOnly: z.boolean(),
  /** Rises whenever a setting has changed: what was read of them is then old. */
  settingsRevision: z.number().int().min(0),
  simulated: z.boolean(),
});

export const liveSchema = z.strictObject({
  program: z.strictObject({ name: z.literal('soleplate'), version: z.string(), epoch: z.string() }),
  at: utc,
  probes: z.array(probeLiveSchema).readonly(),
  /** All that are not normal, the most urgent first. */
  alarms: z.array(alarmLiveSchema).readonly(),
  situation: situationSchema,
});

export type Standing = z.infer<typeof standingSchema>;
export type ProbeLive = z.infer<typeof probeLiveSchema>;
export type AlarmLive = z.infer<typeof alarmLiveSchema>;
export type IronLive = z.infer<typeof ironLiveSchema>;
export type CheckLive = z.infer<typeof checkLiveSchema>;
export type TypedLive = z.infer<typeof typedLiveSchema>;
export type ChartLive = z.infer<typeof chartLiveSchema>;
export type DeviceLive = z.infer<typeof deviceLiveSchema>;
export type FoundPort = z.infer<typeof foundPortSchema>;
export type Situation = z.infer<typeof situationSchema>;
export type Live = z.infer<typeof liveSchema>;
