import { z } from 'zod';
import { airFromSchema } from '../../../shared/cure/air.ts';
import { cementSchema } from '../../../shared/cure/cement.ts';
import { outcomeSchema } from '../../../shared/messages/command.ts';
import {
  airAnswerSchema,
  airSaidSchema,
  cementListSchema,
  cementWriteSchema,
  coatCommandSchema,
  coatsAnswerSchema,
  forecastSchema,
} from '../../../shared/messages/cure.ts';
import { newId } from '../../ids.ts';
import type { Desk } from '../desk.ts';
import { settledId as id, json, type Route, route } from './route.ts';
import { versioned, versionSeen } from './versions.ts';

const outcome = { kind: 'json', name: 'Outcome', schema: outcomeSchema } as const;

/** Cements, the coats that dry, and the air of the shop. */
export const cureRoutes = ({ cure }: Pick<Desk, 'cure'>): Route[] => [
  route({
    method: 'get',
    path: '/api/cements',
    name: 'listCements',
    does: 'All cements, each in its newest version, archived ones too, with what this shop has taught about them.',
    answer: { kind: 'json', name: 'CementList', schema: cementListSchema },
    handle: () => json(cure.cements()),
  }),
  route({
    method: 'put',
    path: '/api/cements/{id}',
    name: 'putCement',
    does: 'Makes a new version of a cement, or a new one. Says which version it is based on, in the body or as If-Match.',
    params: { id },
    body: { name: 'CementWrite', schema: cementWriteSchema },
    answer: { kind: 'json', name: 'Cement', schema: cementSchema },
    refusals: [404, 409, 422, 428],
    versioned: true,
    handle: async ({ params, body: { basedOn, ...draft }, ifMatch }) =>
      versioned(await cure.putCement(params.id, draft, versionSeen(basedOn, ifMatch))),
  }),
  route({
    method: 'post',
    path: '/api/cements/{id}/learn-anew',
    name: 'learnAnew',
    does: 'What was learned of a cement until now no longer counts: its instructions are taken to be right again.',
    params: { id },
    body: { name: 'LearnAnew', schema: z.strictObject({ commandId: z.string().min(1).max(64).optional() }) },
    answer: outcome,
    refusals: [404],
    handle: async ({ params, body: { commandId } }) =>
      json(await cure.learnAnew(params.id, commandId ?? newId())),
  }),
  route({
    method: 'get',
    path: '/api/coats',
    name: 'listCoats',
    does: 'The coats whose clocks run, with the range of times at which each drying stage may be reached, and what is asked about their vapour.',
    answer: { kind: 'json', name: 'Coats', schema: coatsAnswerSchema },
    handle: () => json(cure.coats()),
  }),
  route({
    method: 'post',
    path: '/api/coats',
    name: 'coat',
    does: 'Starts clocks where cement was put on, says that a coat is dry or still tacky, ends its clock, answers the question about its vapour, or takes the last of these back.',
    body: { name: 'CoatCommand', schema: coatCommandSchema },
    answer: outcome,
    refusals: [404, 409, 422],
    handle: async ({ body: { commandId, act } }) => json(await cure.act(act, commandId ?? newId())),
  }),
  route({
    method: 'get',
    path: '/api/air',
    name: 'getAir',
    does: 'The air of the shop: now, the last 24 hours, what is expected, what is amiss with it for the cements in use, and which probes tell it. What a probe told that can not be air is told as refused.',
    answer: { kind: 'json', name: 'Air', schema: airAnswerSchema },
    handle: () => json(cure.air()),
  }),
  route({
    method: 'post',
    path: '/api/air',
    name: 'sayAir',
    does: 'What a thermometer and a hygrometer read in the shop now. It stands until something else is told.',
    body: { name: 'AirSaid', schema: airSaidSchema },
    answer: outcome,
    refusals: [422],
    handle: async ({ body: { commandId, ...air } }) => json(await cure.sayAir(air, commandId ?? newId())),
  }),
  route({
    method: 'put',
    path: '/api/air/from',
    name: 'putAirFrom',
    does: 'Settles which probe tells the air of the shop; null: whichever is heard. One that was not heard yet may be named. While the chosen one is silent no other is heard.',
    body: { name: 'AirFromWrite', schema: airFromSchema },
    answer: { kind: 'json', name: 'AirFrom', schema: airFromSchema },
    refusals: [409, 422],
    handle: async ({ body }) => json(await cure.putAirFrom(body)),
  }),
  route({
    method: 'put',
    path: '/api/air/forecast',
    name: 'putForecast',
    does: 'What the air of the shop is expected to be, from hour to hour. Replaces the forecast of before.',
    body: { name: 'Forecast', schema: forecastSchema },
    answer: outcome,
    refusals: [422],
    handle: async ({ body: { commandId, ...forecast } }) =>
      json(await cure.sayForecast(forecast, commandId ?? newId())),
  }),
];
