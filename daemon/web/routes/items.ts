import { z } from 'zod';
import { closeItemSchema, itemListSchema, itemSchema } from '../../../shared/messages/items.ts';
import { newId } from '../../ids.ts';
import type { Desk } from '../desk.ts';
import { json, type Route, route } from './route.ts';
import { itemOf } from './session-answers.ts';

const itemId = z
  .string()
  .regex(/^[A-Za-z0-9-]{1,64}-c?\d{1,15}$/, 'the session’s id, "-" and a number, as /api/items lists it');

/** Open items, and what was found of them. */
export const itemRoutes = (desk: Pick<Desk, 'reader' | 'closeItem'>): Route[] => [
  route({
    method: 'get',
    path: '/api/items',
    name: 'listItems',
    does: 'Areas suspect, newest first: each crossing of the fabric limit that was not on the rest, open until a named person has said what was found.',
    answer: { kind: 'json', name: 'ItemList', schema: itemListSchema },
    refusals: [503],
    handle: async () => json({ items: (await desk.reader.items()).map(itemOf) }),
  }),
  route({
    method: 'post',
    path: '/api/items/{id}/closing',
    name: 'closeItem',
    does: 'Closes an item with what a named person found. It is kept beside the session, which stays as it was sealed.',
    params: { id: itemId },
    body: { name: 'CloseItem', schema: closeItemSchema },
    answer: { kind: 'json', name: 'Item', schema: itemSchema },
    refusals: [404, 409, 503],
    handle: async ({ params, body: { by, found, commandId } }) =>
      json(itemOf(await desk.closeItem(params.id, { by, found, commandId: commandId ?? newId() }))),
  }),
];
