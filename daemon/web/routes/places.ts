import { z } from 'zod';
import { outcomeSchema, typedReadingSchema } from '../../../shared/messages/command.ts';
import { placeDraftSchema, probePlaceSchema } from '../../../shared/thermometer/place.ts';
import { probeIdSchema } from '../../../shared/thermometer/probe.ts';
import { newId } from '../../ids.ts';
import type { Desk } from '../desk.ts';
import { settledId as id, json, type Route, route } from './route.ts';

/** Where probes are, and irons that are read by hand. */
export const placeRoutes = (desk: Desk): Route[] => [
  route({
    method: 'put',
    path: '/api/probes/{id}/place',
    name: 'putProbePlace',
    does: 'Says where a probe is, on the iron that it sits on: on its plate, in its check pad, or loose. Of one that was moved nothing counts before.',
    params: { id: probeIdSchema },
    body: { name: 'PlaceDraft', schema: placeDraftSchema },
    answer: { kind: 'json', name: 'ProbePlace', schema: probePlaceSchema },
    refusals: [404, 409, 422],
    handle: async ({ params, body }) => json(await desk.settings.putPlace(params.id, body)),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/readings',
    name: 'addTypedReading',
    does: 'Takes what a hand thermometer reads on the plate now. It is kept as typed, in the session that runs or in one that begins with it; over the fabric limit it raises the alarm.',
    params: { id },
    body: { name: 'TypedReading', schema: typedReadingSchema },
    answer: { kind: 'json', name: 'Outcome', schema: outcomeSchema },
    refusals: [404, 409, 422],
    handle: async ({ params, body: { commandId, plateC } }) =>
      json(await desk.addTypedReading(params.id, plateC, commandId ?? newId())),
  }),
  route({
    method: 'post',
    path: '/api/irons/{id}/removal',
    name: 'removeIron',
    does: 'Takes away an iron that has no probe. Its sessions stay.',
    params: { id },
    body: { name: 'RemoveIron', schema: z.strictObject({}) },
    answer: { kind: 'done' },
    refusals: [404, 409],
    handle: async ({ params }) => {
      await desk.settings.removeIron(params.id);
      return { kind: 'done' };
    },
  }),
];
