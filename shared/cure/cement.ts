import { z } from 'zod';
import { plateTemperatureC } from '../units/plate-temperature.ts';
import { airTemperatureC, relativeHumidityPct } from './air.ts';

/** A cement: any adhesive, with what its instructions give of its drying. */

const id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, digits, "_" and "-", at most 64 of them');

/** By what it dries: water leaving, a solvent leaving, two parts reacting, or reacting with the air's moisture. */
export const cementKinds = ['water-borne', 'solvent-borne', 'two-part', 'moisture-curing'] as const;
export type CementKind = (typeof cementKinds)[number];

/** Drying stages in the order in which they come. `set-to-touch` as in ASTM D5895. */
export const dryingStageKinds = ['set-to-touch', 'ready-for-iron', 'ready-for-overlay', 'cured'] as const;
export type DryingStageKind = (typeof dryingStageKinds)[number];

/** The longest drying time that can be told, s: sixty days. */
export const LONGEST_DRYING_S = 60 * 86_400;

/** How long the texts of a cement may be. */
export const cementTextLengths = { name: 80, batch: 60, manual: 200, page: 60, standing: 200 } as const;

/** What the heat of vaporisation or the activation energy of a cement can be, kJ/mol. */
export const cementEnergyKJPerMol = { least: 5, most: 200 } as const;

/** The dampest air at which the times of a water-borne cement can hold, percent. */
export const MOST_RH_PCT_WATER = 99;
/** The driest at which those of one can hold that cures by moisture, percent. */
export const LEAST_RH_PCT_MOISTURE = 1;

const dryingTimeS = z.number().min(1).max(LONGEST_DRYING_S);

/** After how long, at the instructions' own conditions, a coat comes to a stage: one time, or from one to another. */
export const dryingStageSchema = z
  .strictObject({ kind: z.enum(dryingStageKinds), fromS: dryingTimeS, toS: dryingTimeS })
  .refine(({ fromS, toS }) => fromS <= toS, {
    message: 'the longer time must not be shorter than the other',
    path: ['toS'],
  })
  .readonly();
export type DryingStage = z.infer<typeof dryingStageSchema>;

/** The time that the instructions give for a stage, s: the middle where they give a range. */
export const instructedS = ({ fromS, toS }: DryingStage): number => (fromS + toS) / 2;

/** What the instructions allow the air to be; null: they don't say, and general coating practice stands in. */
const airLimitsSchema = z
  .strictObject({
    lowC: airTemperatureC.nullable(),
    highC: airTemperatureC.nullable(),
    lowRhPct: relativeHumidityPct.nullable(),
    highRhPct: relativeHumidityPct.nullable(),
  })
  .superRefine(({ lowC, highC, lowRhPct, highRhPct }, ctx) => {
    if (lowC !== null && highC !== null && lowC >= highC)
      ctx.addIssue({ code: 'custom', path: ['highC'], message: 'the highest must be over the lowest' });
    if (lowRhPct !== null && highRhPct !== null && lowRhPct >= highRhPct)
      ctx.addIssue({ code: 'custom', path: ['highRhPct'], message: 'the highest must be over the lowest' });
  })
  .readonly();
export type AirLimits = z.infer<typeof airLimitsSchema>;

export const cementDraftSchema = z
  .strictObject({
    name: z.string().trim().min(1).max(cementTextLengths.name),
    kind: z.enum(cementKinds),
    /** In the order in which they come; not every cement's instructions give all. */
    stages: z.array(dryingStageSchema).min(1).max(4).readonly(),
    /** The conditions at which the instructions give these times. */
    atC: airTemperatureC,
    atRhPct: relativeHumidityPct,
    airLimits: airLimitsSchema,
    /** The highest plate temperature over it, from its instructions; null: not told. */
    cementLimitC: plateTemperatureC.nullable(),
    /**
     * Solvent-borne: heat of vaporisation of its slowest solvent; two-part and moisture-curing: activation energy. kJ/mol;
     * null: as usual for its kind. Nothing to water-borne.
     */
    energyKJPerMol: z.number().min(cementEnergyKJPerMol.least).max(cementEnergyKJPerMol.most).nullable(),
    /** Its vapour burns. Solvent-borne ones always do, water-borne ones never. */
    flammable: z.boolean(),
    /** What stands on the can; may be empty. */
    batch: z.string().trim().max(cementTextLengths.batch),
    /** Not to be used after this day; null: not told. */
    expiresOn: z.iso.date().nullable(),
    /** Document and page that all this comes from; null: unconfirmed. */
    source: z
      .strictObject({
        manual: z.string().trim().min(1).max(cementTextLengths.manual),
        page: z.string().trim().min(1).max(cementTextLengths.page),
      })
      .nullable(),
    /** Where the values come from, in a few words. */
    standing: z.string().max(cementTextLengths.standing),
    /** Out of sight, never deleted. */
    archived: z.boolean(),
  })
  .superRefine((cement, ctx) => {
    checkStages(cement.stages, ctx);
    if (cement.kind === 'solvent-borne' && !cement.flammable)
      ctx.addIssue({
        code: 'custom',
        path: ['flammable'],
        message: 'the vapour of a solvent-borne cement burns',
      });
    if (cement.kind === 'water-borne' && cement.flammable)
      ctx.addIssue({
        code: 'custom',
        path: ['flammable'],
        message: 'the vapour of a water-borne cement does not burn',
      });
    if (cement.kind === 'water-borne' && cement.atRhPct > MOST_RH_PCT_WATER)
      ctx.addIssue({
        code: 'custom',
        path: ['atRhPct'],
        message: `in saturated air nothing dries: it must be ${MOST_RH_PCT_WATER} % at most`,
      });
    if (cement.kind === 'moisture-curing' && cement.atRhPct < LEAST_RH_PCT_MOISTURE)
      ctx.addIssue({
        code: 'custom',
        path: ['atRhPct'],
        message: `without moisture it does not cure: it must be ${LEAST_RH_PCT_MOISTURE} % at least`,
      });
  });
export type CementDraft = z.infer<typeof cementDraftSchema>;

function checkStages(stages: readonly DryingStage[], ctx: z.RefinementCtx): void {
  for (const [i, stage] of stages.entries()) {
    const before = stages[i - 1];
    if (before === undefined) continue;
    if (dryingStageKinds.indexOf(stage.kind) <= dryingStageKinds.indexOf(before.kind))
      ctx.addIssue({
        code: 'custom',
        path: ['stages', i, 'kind'],
        message: 'each stage stands once, in the order in which they come',
      });
    if (stage.fromS < before.fromS || stage.toS < before.toS)
      ctx.addIssue({
        code: 'custom',
        path: ['stages', i, 'fromS'],
        message: 'a later stage must not come before an earlier one',
      });
  }
}

/** One immutable version of a cement. */
export const cementSchema = cementDraftSchema.safeExtend({
  id,
  version: z.number().int().min(1),
  madeAt: z.iso.datetime({ offset: true }),
});
export type Cement = z.infer<typeof cementSchema>;

/**
 * The stage from which an iron may go over it: that one, else the first that comes later. Null: its instructions give none,
 * and only a person can say.
 */
export function ironStage<S extends Pick<DryingStage, 'kind'>>({
  stages,
}: {
  readonly stages: readonly S[];
}): S | null {
  const from = dryingStageKinds.indexOf('ready-for-iron');
  return stages.find(({ kind }) => dryingStageKinds.indexOf(kind) >= from) ?? null;
}
