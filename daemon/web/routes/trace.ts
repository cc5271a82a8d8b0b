import { traceQuerySchema, traceSchema } from '../../../shared/messages/trace.ts';
import { recordWords } from '../../../shared/words/records.ts';
import type { BookReader } from '../../book/book.ts';
import { Trouble } from '../problem.ts';
import { json, type Route, route } from './route.ts';
import { traceOf } from './session-answers.ts';
import { sessionFound, sessionId } from './sessions.ts';

/** A session's readings thinned out, for drawing. */
export const traceRoutes = (reader: BookReader): Route[] => [
  route({
    method: 'get',
    path: '/api/sessions/{id}/trace',
    name: 'getTrace',
    does: 'Readings of a span of a session, thinned out so that no peak and no gap is lost. Working them out takes time: ask again until "complete".',
    params: { id: sessionId },
    query: traceQuerySchema,
    answer: { kind: 'json', name: 'Trace', schema: traceSchema },
    refusals: [404, 503],
    handle: async ({ params, query: { from = null, to = null, points } }) => {
      if (from !== null && to !== null && to < from) throw new Trouble(400, recordWords.spanBackwards, 'to');
      const session = await sessionFound(reader, params.id);
      return json(traceOf(session, await reader.trace(session.id, { fromMs: from, toMs: to, points })));
    },
  }),
];
