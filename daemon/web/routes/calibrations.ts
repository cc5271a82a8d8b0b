import type { z } from 'zod';
import {
  type CalibrationAct,
  calibrationBeginSchema,
  calibrationDropSchema,
  calibrationGiveUpSchema,
  calibrationKeepSchema,
  calibrationSaveSchema,
  calibrationWaitSchema,
  probeCalibrationsSchema,
  wordsInSchema,
} from '../../../shared/messages/calibration.ts';
import { probeIdSchema } from '../../../shared/thermometer/probe.ts';
import type { CalibrationDesk, Desk } from '../desk.ts';
import { procedureStep } from './procedure-step.ts';
import { json, type Route, route } from './route.ts';

const answer = { kind: 'json', name: 'ProbeCalibrations', schema: probeCalibrationsSchema } as const;

/** A probe's calibrations: how they stand, and each step of making one. */
export const calibrationRoutes = ({ calibrations }: Pick<Desk, 'calibrations'>): Route[] => [
  route({
    method: 'get',
    path: '/api/probes/{id}/calibrations',
    name: 'getCalibrations',
    does: 'Every calibration of a probe, how far its readings can be trusted now, and the calibration that is being made.',
    params: { id: probeIdSchema },
    query: wordsInSchema,
    answer,
    refusals: [404],
    handle: ({ params, query }) => json(calibrations.calibrations(params.id, query.unit)),
  }),
  ...stepRoutes(calibrations),
];

const stepRoutes = (calibrations: CalibrationDesk): Route[] => [
  step(calibrations, {
    path: 'begin',
    does: 'Begins to make a calibration. A fitted probe is offered no water: a mains iron and water never meet.',
    body: calibrationBeginSchema,
    actOf: (body) => ({ act: 'begin', ...body }),
  }),
  step(calibrations, {
    path: 'wait',
    does: 'Begins to wait at a point until the reading holds, or ends the waiting.',
    body: calibrationWaitSchema,
    actOf: (body) => ({ act: 'wait', ...body }),
  }),
  step(calibrations, {
    path: 'keep',
    does: 'Keeps the point that was waited for, with what its own temperature follows from.',
    body: calibrationKeepSchema,
    actOf: (taken) => ({ act: 'keep', taken }),
  }),
  step(calibrations, {
    path: 'drop',
    does: 'Takes a point out of the calibration that is being made.',
    body: calibrationDropSchema,
    actOf: (body) => ({ act: 'drop', ...body }),
  }),
  step(calibrations, {
    path: 'save',
    does: 'Makes the next version of the probe’s calibration from the points. In force at once; earlier versions stay.',
    body: calibrationSaveSchema,
    actOf: (body) => ({ act: 'save', ...body }),
  }),
  step(calibrations, {
    path: 'give-up',
    does: 'Ends the making of a calibration without one. What was saved before stays.',
    body: calibrationGiveUpSchema,
    actOf: () => ({ act: 'give-up' }),
  }),
];

interface Step<S extends z.ZodType> {
  readonly path: keyof typeof operations;
  readonly does: string;
  readonly body: S;
  readonly actOf: (body: z.output<S>) => CalibrationAct;
}

const operations = {
  begin: 'BeginCalibration',
  wait: 'WaitAtPoint',
  keep: 'KeepPoint',
  drop: 'DropPoint',
  save: 'SaveCalibration',
  'give-up': 'GiveUpCalibration',
} as const;

const step = <S extends z.ZodType>(
  calibrations: CalibrationDesk,
  { path, does, body, actOf }: Step<S>,
): Route =>
  procedureStep({
    path: `calibrations/${path}`,
    name: operations[path],
    does,
    body,
    answer,
    take: (probe, asked, unit) => calibrations.calibrate(probe, actOf(asked), unit),
  });
