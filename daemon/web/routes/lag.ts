import type { z } from 'zod';
import { wordsInSchema } from '../../../shared/messages/calibration.ts';
import {
  type LagAct,
  lagBeginSchema,
  lagPlainSchema,
  lagStepSchema,
  probeLagSchema,
} from '../../../shared/messages/lag.ts';
import { probeIdSchema } from '../../../shared/thermometer/probe.ts';
import type { Desk, LagDesk } from '../desk.ts';
import { procedureStep } from './procedure-step.ts';
import { json, type Route, route } from './route.ts';

const answer = { kind: 'json', name: 'ProbeLag', schema: probeLagSchema } as const;

/** A probe's lag: how it stands, and each step of measuring it. */
export const lagRoutes = ({ lags }: Pick<Desk, 'lags'>): Route[] => [
  route({
    method: 'get',
    path: '/api/probes/{id}/lag',
    name: 'getLag',
    does: 'How far a probe trails its plate, as far as that was measured, and how far its measuring is.',
    params: { id: probeIdSchema },
    query: wordsInSchema,
    answer,
    refusals: [404],
    handle: ({ params, query }) => json(lags.lag(params.id, query.unit)),
  }),
  step(lags, {
    path: 'begin',
    does: 'Begins to measure the lag. A probe of an iron is offered no water: a mains iron and water never meet.',
    body: lagBeginSchema,
    actOf: (body) => ({ act: 'begin', ...body }),
  }),
  step(lags, {
    path: 'step',
    does: 'Begins to wait for the rest before a step, the step and its settling; anew where it did so already.',
    body: lagStepSchema,
    actOf: (body) => ({ act: 'step', ...body }),
  }),
  step(lags, {
    path: 'stop',
    does: 'Ends the step with what there is of it, or says why that gives no time constant.',
    body: lagPlainSchema,
    actOf: () => ({ act: 'stop' }),
  }),
  step(lags, {
    path: 'keep',
    does: 'Keeps the time constant that was found. It counts at once.',
    body: lagPlainSchema,
    actOf: () => ({ act: 'keep' }),
  }),
  step(lags, {
    path: 'give-up',
    does: 'Ends the measuring without a time constant. What was kept before stays.',
    body: lagPlainSchema,
    actOf: () => ({ act: 'give-up' }),
  }),
];

interface Step<S extends z.ZodType> {
  readonly path: keyof typeof operations;
  readonly does: string;
  readonly body: S;
  readonly actOf: (body: z.output<S>) => LagAct;
}

const operations = {
  begin: 'BeginLag',
  step: 'WaitForStep',
  stop: 'StopStep',
  keep: 'KeepLag',
  'give-up': 'GiveUpLag',
} as const;

const step = <S extends z.ZodType>(lags: LagDesk, { path, does, body, actOf }: Step<S>): Route =>
  procedureStep({
    path: `lag/${path}`,
    name: operations[path],
    does,
    body,
    answer,
    take: (probe, asked, unit) => lags.measureLag(probe, actOf(asked), unit),
  });
