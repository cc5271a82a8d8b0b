import { Refusal } from '../../../../daemon/refusal.ts';
import type { Desk } from '../../../../daemon/web/desk.ts';
import { summary } from './record-samples.ts';
import { cement, piece, pieceHeat } from './shop-samples.ts';

/** Pieces and coats. */
export const fakeShop = (calls: unknown[][]): Pick<Desk, 'pieces' | 'cure'> => ({
  pieces: {
    pieces: () => [piece],
    putPiece: async (id, draft, basedOn) => ({
      ...draft,
      id,
      version: basedOn + 1,
      madeAt: '2026-03-02T08:00:00Z',
    }),
    heat: async (id) => {
      if (id !== piece.id) throw new Refusal('unknown', `There is no piece "${id}".`, 'id');
      return pieceHeat;
    },
    note: async (id, note, commandId) => {
      calls.push(['note', id, note, commandId]);
    },
    act: async (said, commandId) => {
      calls.push(['act', said, commandId]);
      return { commandId, session: summary.id, kept: true };
    },
  },
  cure: {
    cements: () => ({ cements: [cement], learned: {} }),
    putCement: async (id, draft, basedOn) => ({
      ...draft,
      id,
      version: basedOn + 1,
      madeAt: '2026-03-02T08:00:00Z',
    }),
    learnAnew: async (id, commandId) => {
      if (id !== cement.id) throw new Refusal('unknown', `There is no cement "${id}".`, 'cement');
      calls.push(['learnAnew', id, commandId]);
      return { commandId, session: null, kept: true };
    },
    coats: () => ({ revision: 0, coats: [], fire: [], clock: null, started: [], ended: [], amiss: [] }),
    act: async (act, commandId) => {
      calls.push(['coat', act, commandId]);
      return { commandId, session: null, kept: true };
    },
    air: () => ({ now: null, concerns: [], history: [], forecast: [], chosen: null, probes: [] }),
    sayAir: async (air, commandId) => {
      calls.push(['sayAir', air, commandId]);
      return { commandId, session: null, kept: true };
    },
    sayForecast: async (forecast, commandId) => {
      calls.push(['sayForecast', forecast, commandId]);
      return { commandId, session: null, kept: true };
    },
    putAirFrom: async (from) => {
      calls.push(['putAirFrom', from]);
      return from;
    },
  },
});
