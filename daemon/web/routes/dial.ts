import {
  acceptDialSchema,
  ironDialSchema,
  typedPointSchema,
  wrongPointSchema,
} from '../../../shared/messages/dial.ts';
import type { Desk } from '../desk.ts';
import { settledId as id, json, type Route, route } from './route.ts';

const ironDial = { kind: 'json', name: 'IronDial', schema: ironDialSchema } as const;

/** What irons do at the marks of their dials. What a dial stands at is said as a mark of the session. */
export const dialRoutes = ({ dials }: Pick<Desk, 'dials'>): Route[] => [
  route({
    method: 'get',
    path: '/api/irons/{id}/dial',
    name: 'getIronDial',
    does: 'The dial chart of an iron, and for each stage of its heat schedule where to set the dial, or why that can’t be said.',
    params: { id },
    answer: ironDial,
    refusals: [404],
    handle: ({ params }) => json(dials.dial(params.id)),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/dial/points',
    name: 'addTypedPoint',
    does: 'Adds what was read from a hand thermometer at a mark to the dial chart.',
    params: { id },
    body: { name: 'TypedPoint', schema: typedPointSchema },
    answer: ironDial,
    refusals: [404, 409, 422],
    handle: async ({ params, body }) => json(await dials.addTypedPoint(params.id, body)),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/dial/removal',
    name: 'removeDialPoint',
    does: 'Takes a wrong point out of the dial chart. It is kept among the earlier ones.',
    params: { id },
    body: { name: 'WrongPoint', schema: wrongPointSchema },
    answer: ironDial,
    refusals: [404, 409, 422],
    handle: async ({ params, body }) => json(await dials.removePoint(params.id, body.mark)),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/dial/acceptance',
    name: 'acceptDial',
    does: 'Accepts what was measured since the iron drifted as its new dial chart; marks not measured since are taken out.',
    params: { id },
    body: { name: 'AcceptDial', schema: acceptDialSchema },
    answer: ironDial,
    refusals: [404, 409, 422],
    handle: async ({ params }) => json(await dials.accept(params.id)),
  }),
];
