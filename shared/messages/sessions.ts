import { z } from 'zod';
import { alarmChanges, alarmKinds, alarmStates } from '../alarm/record.ts';
import { dialFiguresSchema, dialLoadSchema } from '../iron/dial/kept.ts';
import { dialMarkSchema } from '../iron/dial/mark.ts';
import { ironPhases } from '../iron/phase.ts';
import { watchedHows } from '../thermometer/place.ts';
import { faults } from '../thermometer/reading.ts';
import { startReasons, stopReasons } from '../watch/input.ts';
import { visitHeat, visitPlaceSchema } from './visit.ts';

/** What the API tells of recorded sessions. */

const utc = z.iso.datetime({ offset: true });

/** A point in time: by the wall clock, and in milliseconds since the session's first input. */
export const momentSchema = z.strictObject({
  utc,
  /** Negative for what was carried over from before the session. */
  sessionMs: z.number().int(),
});

export const sessionSchema = z.strictObject({
  id: z.string(),
  iron: z.strictObject({ id: z.string(), name: z.string() }),
  simulated: z.boolean(),
  /** What stood behind its temperatures as it began: a probe on the plate, a check pad, or what was typed. */
  watched: z.enum(watchedHows),
  startedAt: utc,
  startedBecause: z.enum(startReasons),
  /** Null while it runs. */
  endedAt: utc.nullable(),
  endedBecause: z.enum([...stopReasons, 'interrupted']).nullable(),
  /** From its first input to the last that is kept, ms. */
  lengthMs: z.number().int().min(0),
  /** IANA name of the zone that the machine was set to. */
  zone: z.string(),
  /** The session that broke off and is gone on with here, if one did. */
  continues: z.string().nullable(),
  samples: z.number().int(),
  findings: z.number().int(),
  /** The highest valid plate temperature in it, degC; null where there was none. */
  peakC: z.number().nullable(),
  programVersion: z.string(),
  foldVersion: z.number().int(),
  /** The last link of its SHA-256 chain, hex. */
  seal: z.string(),
});
export const sessionListSchema = z.strictObject({ sessions: z.array(sessionSchema).readonly() });

const caused = { seq: z.number().int(), at: momentSchema };

/** What the program concluded in a session; with session and subject, `seq` names it. */
export const findingSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...caused,
    kind: z.literal('alarm'),
    change: z.enum(alarmChanges),
    /** The alarm as it stood after the change. */
    alarm: z.strictObject({
      kind: z.enum(alarmKinds),
      probe: z.string().nullable(),
      state: z.enum(alarmStates),
      raised: momentSchema.nullable(),
      acknowledged: momentSchema.nullable(),
      silencedUntil: momentSchema.nullable(),
      reAlarms: z.number().int(),
      peakC: z.number().nullable(),
      detail: z.string(),
    }),
  }),
  z.strictObject({
    ...caused,
    kind: z.literal('quality'),
    probe: z.string(),
    quality: z.enum(['ok', ...faults]),
  }),
  z.strictObject({ ...caused, kind: z.literal('phase'), phase: z.enum(ironPhases) }),
  z.strictObject({
    ...caused,
    kind: z.literal('cycle'),
    from: momentSchema,
    to: momentSchema,
    peakC: z.number(),
    troughC: z.number(),
    meanC: z.number(),
  }),
  /** What the iron did on its rest at a mark of its dial. One that goes on is told again, with the same `from`. */
  z.strictObject({
    ...caused,
    kind: z.literal('stretch'),
    probe: z.string(),
    mark: dialMarkSchema,
    from: momentSchema,
    to: momentSchema,
    figures: dialFiguresSchema,
  }),
  dialLoadSchema.safeExtend({
    ...caused,
    kind: z.literal('load'),
    from: momentSchema,
    to: momentSchema,
  }),
  /** A check on a pad: told as it settles and as it ends, with the same `from`. */
  z.strictObject({
    ...caused,
    kind: z.literal('check'),
    probe: z.string(),
    from: momentSchema,
    to: momentSchema,
    /** Null where it was taken off before it settled: then the plate was at least as hot as that. */
    settled: momentSchema.nullable(),
    /** The hottest that the pad read, degC, and the coldest since it settled. */
    hottestC: z.number(),
    lowestC: z.number().nullable(),
    /** What the pad may have had left of its way, K; null where that is not known. */
    remainingK: z.number().nullable(),
    guardBandK: z.number(),
    /** Null while the iron still lay there. */
    ended: z.enum(['lifted', 'lost']).nullable(),
  }),
  /** A reading that was typed from a hand thermometer. */
  z.strictObject({
    ...caused,
    kind: z.literal('typed'),
    plateC: z.number(),
    guardBandK: z.number(),
    over: z.boolean(),
  }),
  /** A stay of the iron on the work: told again as it goes on, with the same `n`; the last telling counts. */
  z.strictObject({
    ...caused,
    kind: z.literal('visit'),
    n: z.number().int(),
    from: momentSchema,
    to: momentSchema,
    /** Null: unassigned. */
    place: visitPlaceSchema.nullable(),
    placeName: z.string(),
    ...visitHeat,
    takenBack: z.boolean(),
  }),
  z.strictObject({ ...caused, kind: z.literal('heat'), change: z.enum(['hot', 'cold']) }),
  z.strictObject({ ...caused, kind: z.literal('refused'), commandId: z.string(), reason: z.string() }),
]);
export const findingListSchema = z.strictObject({
  session: z.string(),
  findings: z.array(findingSchema).readonly(),
});

/** What came of checking a session's chain and folding it again. */
export const verificationSchema = z.strictObject({
  session: z.string(),
  /** True where the chain holds and replay gave exactly the findings that are stored. */
  exact: z.boolean(),
  /** Null where the chain holds; else the first commit that doesn't, and its span of time. */
  firstBadCommit: z
    .strictObject({ index: z.number().int(), from: momentSchema, to: momentSchema, what: z.string() })
    .nullable(),
  foldVersion: z.number().int(),
  /** False where the session was recorded by another version of the fold: differences are then to be expected. */
  sameFoldVersion: z.boolean(),
  samples: z.number().int(),
  findings: z.number().int(),
  differences: z
    .array(
      z.strictObject({
        seq: z.number().int(),
        subject: z.string(),
        stored: findingSchema.nullable(),
        replayed: findingSchema.nullable(),
      }),
    )
    .readonly(),
});

export type Moment = z.infer<typeof momentSchema>;
export type Session = z.infer<typeof sessionSchema>;
export type FindingAnswer = z.infer<typeof findingSchema>;
export type FindingList = z.infer<typeof findingListSchema>;
export type VerificationAnswer = z.infer<typeof verificationSchema>;
