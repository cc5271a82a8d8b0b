import {
  acknowledgeSchema,
  chooseSourceSchema,
  markCommandSchema,
  outcomeSchema,
  silenceSchema,
  startSessionSchema,
  stopSessionSchema,
} from '../../../shared/messages/command.ts';
import { newId } from '../../ids.ts';
import type { Desk } from '../desk.ts';
import { json, type Route, route } from './route.ts';
import { sessionId } from './sessions.ts';

const outcome = { kind: 'json', name: 'Outcome', schema: outcomeSchema } as const;

/** What the program can be told to do. A command without an id of its client gets one here. */
export const commandRoutes = (desk: Desk): Route[] => [...sessionCommands(desk), ...alarmCommands(desk)];

const sessionCommands = (desk: Desk): Route[] => [
  route({
    method: 'post',
    path: '/api/sessions',
    name: 'startSession',
    does: 'Starts recording an iron by hand.',
    body: { name: 'StartSession', schema: startSessionSchema },
    answer: outcome,
    refusals: [404, 409],
    handle: async ({ body }) => json(await desk.startSession(body.iron, body.commandId ?? newId())),
  }),
  route({
    method: 'post',
    path: '/api/sessions/{id}/stop',
    name: 'stopSession',
    does: 'Ends a running session.',
    params: { id: sessionId },
    body: { name: 'StopSession', schema: stopSessionSchema },
    answer: outcome,
    refusals: [404, 409],
    handle: async ({ params, body }) => json(await desk.stopSession(params.id, body.commandId ?? newId())),
  }),
  route({
    method: 'post',
    path: '/api/sessions/{id}/marks',
    name: 'mark',
    does: 'Marks what the user says: the stage, where the iron is, a note.',
    params: { id: sessionId },
    body: { name: 'MarkCommand', schema: markCommandSchema },
    answer: outcome,
    refusals: [404, 409, 422],
    handle: async ({ params, body }) =>
      json(await desk.mark(params.id, body.mark, body.commandId ?? newId())),
  }),
  route({
    method: 'post',
    path: '/api/source',
    name: 'chooseSource',
    does: 'Chooses what to watch, while the program waits for that choice.',
    body: { name: 'ChooseSource', schema: chooseSourceSchema },
    answer: { kind: 'done' },
    refusals: [404, 409, 422],
    handle: async ({ body }) => {
      await desk.choose(body);
      return { kind: 'done' };
    },
  }),
];

const alarmCommands = (desk: Desk): Route[] => [
  route({
    method: 'post',
    path: '/api/alarms/acknowledge',
    name: 'acknowledgeAlarm',
    does: 'Acknowledges an alarm: somebody has seen it.',
    body: { name: 'Acknowledge', schema: acknowledgeSchema },
    answer: outcome,
    refusals: [404, 409],
    handle: async ({ body: { iron, kind, probe, commandId } }) =>
      json(await desk.acknowledge(iron, { kind, probe }, commandId ?? newId())),
  }),
  route({
    method: 'post',
    path: '/api/alarms/silence',
    name: 'silenceAlarm',
    does: 'Silences an alarm for a while; one of priority 3 for 60 s at most.',
    body: { name: 'Silence', schema: silenceSchema },
    answer: outcome,
    refusals: [404, 409, 422],
    handle: async ({ body: { iron, kind, probe, commandId, forS } }) =>
      json(await desk.silence(iron, { kind, probe }, Math.round(forS * 1000), commandId ?? newId())),
  }),
];
