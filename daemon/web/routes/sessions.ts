import { z } from 'zod';
import {
  findingListSchema,
  sessionListSchema,
  sessionSchema,
  verificationSchema,
} from '../../../shared/messages/sessions.ts';
import { webWords } from '../../../shared/words/web.ts';
import type { BookReader, SessionSummary } from '../../book/book.ts';
import { Trouble } from '../problem.ts';
import { json, type Route, route } from './route.ts';
import { findingListOf, sessionOf, verificationOf } from './session-answers.ts';

export const sessionId = z
  .string()
  .regex(/^[A-Za-z0-9-]{1,64}$/, 'letters, digits and "-", at most 64 of them');

/** Recorded sessions, for reading. */
export const sessionRoutes = (reader: BookReader): Route[] => [
  ...summaryRoutes(reader),
  ...contentRoutes(reader),
];

const summaryRoutes = (reader: BookReader): Route[] => [
  route({
    method: 'get',
    path: '/api/sessions',
    name: 'listSessions',
    does: 'All recorded sessions, newest first.',
    answer: { kind: 'json', name: 'SessionList', schema: sessionListSchema },
    refusals: [503],
    handle: async () => json({ sessions: (await reader.sessions()).map(sessionOf) }),
  }),
  route({
    method: 'get',
    path: '/api/sessions/{id}',
    name: 'getSession',
    does: 'One session.',
    params: { id: sessionId },
    answer: { kind: 'json', name: 'Session', schema: sessionSchema },
    refusals: [404, 503],
    handle: async ({ params }) => json(sessionOf(await sessionFound(reader, params.id))),
  }),
];

const contentRoutes = (reader: BookReader): Route[] => [
  route({
    method: 'get',
    path: '/api/sessions/{id}/readings.csv',
    name: 'getReadings',
    does: 'Every reading of a session, as CSV. An answer that ends without its last chunk is incomplete.',
    params: { id: sessionId },
    answer: { kind: 'csv' },
    refusals: [404, 503],
    handle: async ({ params }) => ({
      kind: 'csv',
      fileName: `session-${(await sessionFound(reader, params.id)).id}.csv`,
      chunks: reader.readingsCsv(params.id),
    }),
  }),
  route({
    method: 'get',
    path: '/api/sessions/{id}/findings',
    name: 'getFindings',
    does: 'What the program concluded in a session, in order.',
    params: { id: sessionId },
    answer: { kind: 'json', name: 'FindingList', schema: findingListSchema },
    refusals: [404, 503],
    handle: async ({ params }) =>
      json(findingListOf(await sessionFound(reader, params.id), await reader.findings(params.id))),
  }),
  route({
    method: 'get',
    path: '/api/sessions/{id}/verification',
    name: 'verifySession',
    does: 'Checks the chain of a session and folds it again; a long one takes a while.',
    params: { id: sessionId },
    answer: { kind: 'json', name: 'Verification', schema: verificationSchema },
    refusals: [404, 503],
    handle: async ({ params }) =>
      json(verificationOf(await sessionFound(reader, params.id), await reader.verify(params.id))),
  }),
];

export async function sessionFound(reader: BookReader, id: string): Promise<SessionSummary> {
  const session = await reader.session(id);
  if (session === null) throw new Trouble(404, webWords.noSuch('session', id, '/api/sessions'), 'id');
  return session;
}
