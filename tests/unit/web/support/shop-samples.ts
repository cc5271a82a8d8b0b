import type { Cement } from '../../../../shared/cure/cement.ts';
import type { PieceHeat } from '../../../../shared/messages/piece.ts';
import type { Piece } from '../../../../shared/piece/piece.ts';
import { startingPiece } from '../../../../shared/piece/starting.ts';

/** Invented pieces and cements. */

/** Demo data. */
export const piece: Piece = {
  ...startingPiece('Left flap', 'spruce', ['Upper', 'Lower']),
  id: 'left-flap',
  version: 2,
  madeAt: '2026-03-01T08:00:00Z',
};

export const pieceHeat: PieceHeat = {
  piece,
  revision: 7,
  areas: {},
  sides: piece.sides.map(() => ({ reached: null, laps: 0, tight: null, capC: null })),
  balance: { kind: 'not-compared', why: 'no-heat' },
  overruled: null,
  next: null,
  visits: [],
  unassigned: [],
  suspects: [],
};

export const cement: Cement = {
  id: 'trial-cement',
  version: 1,
  madeAt: '2026-03-01T08:00:00Z',
  name: 'Trial cement',
  kind: 'solvent-borne',
  stages: [{ kind: 'set-to-touch', fromS: 600, toS: 900 }],
  atC: 23,
  atRhPct: 50,
  airLimits: { lowC: 10, highC: null, lowRhPct: null, highRhPct: 75 },
  cementLimitC: null,
  energyKJPerMol: null,
  flammable: true,
  batch: '',
  expiresOn: null,
  source: null,
  standing: 'test value',
  archived: false,
};
