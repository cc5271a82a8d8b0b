import { unattendedSchema } from '../../../shared/watch/attended.ts';
import type { Desk } from '../desk.ts';
import { json, type Route, route } from './route.ts';

const answer = { kind: 'json', name: 'Unattended', schema: unattendedSchema } as const;

/** After how long a hot iron that is left alone is told of. */
export const unattendedRoutes = ({ attended }: Pick<Desk, 'attended'>): Route[] => [
  route({
    method: 'get',
    path: '/api/unattended',
    name: 'getUnattended',
    does: 'After how many minutes without a sign of anybody a hot iron is told of: a reminder first, then an alarm.',
    answer,
    handle: () => json(attended.after()),
  }),
  route({
    method: 'put',
    path: '/api/unattended',
    name: 'putUnattended',
    does: 'Settles after how many minutes a hot iron that is left alone is told of. The reminder comes before the alarm.',
    body: { name: 'UnattendedWrite', schema: unattendedSchema },
    answer,
    refusals: [409, 422],
    handle: async ({ body }) => json(await attended.put(body)),
  }),
];
