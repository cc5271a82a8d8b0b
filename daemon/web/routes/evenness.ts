import {
  forgetSpotsSchema,
  ironEvennessSchema,
  spotDraftSchema,
  wrongSpotSchema,
} from '../../../shared/messages/evenness.ts';
import type { Desk } from '../desk.ts';
import { settledId as id, json, type Route, route } from './route.ts';

const ironEvenness = { kind: 'json', name: 'IronEvenness', schema: ironEvennessSchema } as const;

/** How evenly irons' plates are hot: limits hold for the hottest spot. */
export const evennessRoutes = ({ plates }: Pick<Desk, 'plates'>): Route[] => [
  route({
    method: 'get',
    path: '/api/irons/{id}/evenness',
    name: 'getIronEvenness',
    does: 'How evenly the plate of an iron is hot, by its probes and by typed spot readings, and what limits and advice count for it.',
    params: { id },
    answer: ironEvenness,
    refusals: [404],
    handle: ({ params }) => json(plates.evenness(params.id)),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/evenness/spots',
    name: 'addSpot',
    does: 'Adds what a hand thermometer shows now at a place of the plate; it takes the place of an earlier one there.',
    params: { id },
    body: { name: 'SpotDraft', schema: spotDraftSchema },
    answer: ironEvenness,
    refusals: [404, 409, 422],
    handle: async ({ params, body }) => json(await plates.addSpot(params.id, body)),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/evenness/removal',
    name: 'removeSpot',
    does: 'Takes the spot reading of one place out.',
    params: { id },
    body: { name: 'WrongSpot', schema: wrongSpotSchema },
    answer: ironEvenness,
    refusals: [404, 409, 422],
    handle: async ({ params, body }) => json(await plates.removeSpot(params.id, body.place)),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/evenness/forgetting',
    name: 'forgetSpots',
    does: 'Forgets all that is known of how evenly the plate is hot: limits hold for the place of the probe alone.',
    params: { id },
    body: { name: 'ForgetSpots', schema: forgetSpotsSchema },
    answer: ironEvenness,
    refusals: [404, 409, 422],
    handle: async ({ params }) => json(await plates.forget(params.id)),
  }),
];
