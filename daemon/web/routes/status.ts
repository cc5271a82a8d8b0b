import { type Health, healthSchema } from '../../../shared/messages/health.ts';
import { liveSchema } from '../../../shared/messages/live.ts';
import { webWords } from '../../../shared/words/web.ts';
import type { Desk } from '../desk.ts';
import { Trouble } from '../problem.ts';
import { json, type Route, route } from './route.ts';

/** What the status routes know besides the desk. */
export interface Program {
  readonly version: string;
  readonly epoch: string;
  uptimeMs(): number;
  streamClients(): number;
  /** The description of this API, as OpenAPI 3.1. */
  description(): unknown;
}

/** How the program and its irons stand, and what it can be asked. */
export const statusRoutes = (desk: Pick<Desk, 'live'>, program: Program): Route[] => [
  route({
    method: 'get',
    path: '/api/health',
    name: 'getHealth',
    does: 'Says that the program runs, which one it is, and whether what happens is being kept.',
    answer: { kind: 'json', name: 'Health', schema: healthSchema },
    handle: () => json(health(desk, program)),
  }),
  route({
    method: 'get',
    path: '/api/live',
    name: 'getLive',
    does: 'How things stand now: every probe, every alarm that stands, the irons and devices.',
    answer: { kind: 'json', name: 'Live', schema: liveSchema },
    handle: () => json(desk.live()),
  }),
  route({
    method: 'get',
    path: '/api/openapi.json',
    name: 'getDescription',
    does: 'This description.',
    answer: { kind: 'any-json' },
    handle: () => json(program.description()),
  }),
  route({
    method: 'get',
    path: '/stream',
    name: 'openStream',
    does: 'WebSocket: sends a StreamMessage of kind "snapshot", then one for every change. With epoch and after of the last message seen, it goes on from there instead. Takes SoundFrame and nothing else.',
    answer: { kind: 'upgrade' },
    handle: () => {
      throw new Trouble(426, webWords.streamOnly);
    },
  }),
];

const health = (desk: Pick<Desk, 'live'>, program: Program): Health => ({
  name: 'soleplate',
  version: program.version,
  epoch: program.epoch,
  uptimeMs: program.uptimeMs(),
  keeping: desk.live().situation.keeping,
  streamClients: program.streamClients(),
});
