import { z } from 'zod';
import { outcomeSchema } from '../../../shared/messages/command.ts';
import {
  pieceHeatSchema,
  pieceListSchema,
  pieceNoteCommandSchema,
  pieceWriteSchema,
  workCommandSchema,
} from '../../../shared/messages/piece.ts';
import { pieceSchema } from '../../../shared/piece/piece.ts';
import { newId } from '../../ids.ts';
import type { Desk } from '../desk.ts';
import { settledId as id, json, type Route, route } from './route.ts';
import { versioned, versionSeen } from './versions.ts';

/** Pieces, the work on them, and what they have had. */
export const pieceRoutes = (desk: Pick<Desk, 'pieces' | 'presence'>): Route[] => [
  route({
    method: 'get',
    path: '/api/pieces',
    name: 'listPieces',
    does: 'All pieces, each in its newest version; archived ones too.',
    answer: { kind: 'json', name: 'PieceList', schema: pieceListSchema },
    handle: () => json({ pieces: desk.pieces.pieces() }),
  }),
  route({
    method: 'put',
    path: '/api/pieces/{id}',
    name: 'putPiece',
    does: 'Makes a new version of a piece, or a new one. Says which version it is based on, in the body or as If-Match.',
    params: { id },
    body: { name: 'PieceWrite', schema: pieceWriteSchema },
    answer: { kind: 'json', name: 'Piece', schema: pieceSchema },
    refusals: [404, 409, 422, 428],
    versioned: true,
    handle: async ({ params, body: { basedOn, ...draft }, ifMatch }) =>
      versioned(await desk.pieces.putPiece(params.id, draft, versionSeen(basedOn, ifMatch))),
  }),
  route({
    method: 'get',
    path: '/api/pieces/{id}/heat',
    name: 'getPieceHeat',
    does: 'What a piece has had on each of its areas, how even that is, what is proposed next, and the stays of irons behind it.',
    params: { id },
    answer: { kind: 'json', name: 'PieceHeat', schema: pieceHeatSchema },
    refusals: [404, 503],
    handle: async ({ params }) => json(await desk.pieces.heat(params.id)),
  }),
  route({
    method: 'post',
    path: '/api/pieces/{id}/notes',
    name: 'notePiece',
    does: 'Keeps what a named person says of a piece, beside the sessions: tight by eye and hand, an overruled order, a stay of the iron that was somewhere else.',
    params: { id },
    body: { name: 'PieceNoteCommand', schema: pieceNoteCommandSchema },
    answer: { kind: 'done' },
    refusals: [404, 409, 422, 503],
    handle: async ({ params, body: { commandId, note } }) => {
      await desk.pieces.note(params.id, note, commandId ?? newId());
      return { kind: 'done' };
    },
  }),
  route({
    method: 'post',
    path: '/api/work',
    name: 'work',
    does: 'Marks where the heat goes: this piece now, this area, the next one, turned over, a lap done, on the rest, or that the last of these was a mistake. A session begins with it where none runs.',
    body: { name: 'WorkCommand', schema: workCommandSchema },
    answer: { kind: 'json', name: 'Outcome', schema: outcomeSchema },
    refusals: [404, 409, 422],
    handle: async ({ body: { commandId, ...said } }) =>
      json(await desk.pieces.act(said, commandId ?? newId())),
  }),
  route({
    method: 'post',
    path: '/api/presence',
    name: 'presence',
    does: 'Somebody is there: a touch or a key on a page. A hot iron is not told of as left alone for a while.',
    body: { name: 'Presence', schema: z.strictObject({}) },
    answer: { kind: 'done' },
    handle: () => {
      desk.presence();
      return { kind: 'done' };
    },
  }),
];
