import { z } from 'zod';
import { problemSchema } from '../../shared/messages/command.ts';
import { soundFrameSchema } from '../../shared/messages/hearing.ts';
import {
  alarmLiveSchema,
  ironLiveSchema,
  probeLiveSchema,
  situationSchema,
} from '../../shared/messages/live.ts';
import { findingSchema, momentSchema } from '../../shared/messages/sessions.ts';
import { streamMessageSchema } from '../../shared/messages/stream.ts';
import type { Route } from './routes/route.ts';
import { resumeQuerySchema } from './stream/door.ts';

type Json = Record<string, unknown>;

/** Schemas that answers share, beside those that are an answer themselves. */
const sharedParts: Readonly<Record<string, z.ZodType>> = {
  Problem: problemSchema,
  StreamMessage: streamMessageSchema,
  SoundFrame: soundFrameSchema,
  Situation: situationSchema,
  IronLive: ironLiveSchema,
  ProbeLive: probeLiveSchema,
  AlarmLive: alarmLiveSchema,
  Finding: findingSchema,
  Moment: momentSchema,
};

/** The API as an OpenAPI 3.1 document, from the table that the server itself is made from. */
export function describe(routes: readonly Route[], version: string): Json {
  const paths: Record<string, Json> = {};
  for (const route of routes) paths[route.path] = { ...paths[route.path], [route.method]: operation(route) };
  return {
    openapi: '3.1.0',
    info: {
      title: 'soleplate',
      version,
      description:
        'Measures the sole plate of hand irons and advises; it does not control them. Temperatures are in degC, durations in ms unless a name says otherwise.',
    },
    paths,
    components: { schemas: componentSchemas(routes) },
  };
}

function operation(route: Route): Json {
  const parameters = [...pathParameters(route), ...headerParameters(route), ...queryParameters(route)];
  return {
    operationId: route.name,
    summary: route.does,
    ...(parameters.length > 0 ? { parameters } : {}),
    ...(route.body ? { requestBody: { required: true, content: jsonOf(route.body.name) } } : {}),
    responses: { ...good(route), ...refusals(route) },
  };
}

const pathParameters = (route: Route): Json[] =>
  Object.entries(route.params).map(([name, schema]) => ({
    name,
    in: 'path',
    required: true,
    schema: plain(z.toJSONSchema(schema)),
  }));

const headerParameters = (route: Route): Json[] =>
  route.versioned && route.method === 'put'
    ? [
        {
          name: 'If-Match',
          in: 'header',
          description: 'The version that the change is based on, as the ETag has it.',
          schema: { type: 'string' },
        },
      ]
    : [];

const queryParameters = (route: Route): Json[] =>
  Object.entries(queryOf(route)?.shape ?? {}).map(([name, schema]) => ({
    name,
    in: 'query',
    schema: plain(z.toJSONSchema(schema as z.ZodType)),
  }));

const queryOf = (route: Route): z.ZodObject | null =>
  route.answer.kind === 'upgrade' ? resumeQuerySchema : route.query;

function good(route: Route): Json {
  const { answer } = route;
  if (answer.kind === 'done') return { '204': { description: 'Done.' } };
  if (answer.kind === 'upgrade')
    return {
      '101': { description: 'The socket is open: every message is a StreamMessage.' },
      '426': { description: meanings[426], content: jsonOf('Problem') },
    };
  return { '200': { description: 'As asked.', ...versionHeader(route), content: goodContent(answer) } };
}

function goodContent(answer: Exclude<Route['answer'], { kind: 'done' | 'upgrade' }>): Json {
  if (answer.kind === 'json') return jsonOf(answer.name);
  return answer.kind === 'csv'
    ? { 'text/csv': { schema: { type: 'string' } } }
    : { 'application/json': { schema: { type: 'object' } } };
}

const versionHeader = (route: Route): Json =>
  route.versioned ? { headers: { ETag: { description: 'The version.', schema: { type: 'string' } } } } : {};

/** Every status that a route may refuse with. All carry a Problem. */
const meanings: Readonly<Record<number, string>> = {
  400: 'What was sent is malformed.',
  403: 'Not from here: wrong Host or Origin, or this start may only be looked at.',
  404: 'There is no such thing.',
  409: 'Something stands against it, for example a change made by another page.',
  413: 'The body is too large.',
  415: 'The body is not sent as JSON.',
  422: 'What was sent is well formed, but can not be.',
  426: 'A WebSocket is wanted.',
  428: 'The version that the change is based on is missing.',
  500: 'The program failed; its log has the details.',
  503: 'Not at present.',
};

function refusals(route: Route): Json {
  const statuses = new Set([403, 500, ...route.refusals]);
  if (Object.keys(route.params).length > 0 || route.body !== null || route.query !== null) statuses.add(400);
  if (route.body !== null) statuses.add(413).add(415);
  if (route.answer.kind === 'upgrade') statuses.add(400).add(503);
  return Object.fromEntries(
    [...statuses].map((status) => [
      String(status),
      { description: meanings[status], content: jsonOf('Problem') },
    ]),
  );
}

const jsonOf = (name: string): Json => ({
  'application/json': { schema: { $ref: reference(name) } },
});

const reference = (name: string): string => `#/components/schemas/${name}`;

function componentSchemas(routes: readonly Route[]): Json {
  const answers = new Map(Object.entries(sharedParts));
  const bodies = new Map<string, z.ZodType>();
  for (const { answer, body } of routes) {
    if (answer.kind === 'json') answers.set(answer.name, answer.schema);
    if (body !== null) bodies.set(body.name, body.schema);
  }
  return { ...schemasOf(answers, 'output'), ...schemasOf(bodies, 'input') };
}

/** What is named here is referred to by name; a body may leave out what has a default, an answer may not. */
function schemasOf(named: ReadonlyMap<string, z.ZodType>, io: 'input' | 'output'): Json {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of named) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, { io, uri: reference });
  return Object.fromEntries(Object.entries(schemas).map(([name, schema]) => [name, plain(schema)]));
}

/** Without the dialect and own address of a schema that stands alone: inside the document they would mislead. */
function plain(schema: object): Json {
  const { $schema: _dialect, $id: _address, ...rest } = schema as Json;
  return rest;
}
