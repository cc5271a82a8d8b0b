import type { PieceHeat } from '../../../shared/messages/piece.ts';
import { pieceWriteSchema } from '../../../shared/messages/piece.ts';
import type { Piece } from '../../../shared/piece/piece.ts';
import { heatOf } from '../../fixtures/pieces.ts';

/** The stand-in's pieces: what the daemon keeps of them, as far as a page needs it. */

export interface Answer {
  readonly status: number;
  readonly body: unknown;
}

const problem = (status: number, message: string): Answer => ({
  status,
  body: { error: { message, where: '' } },
});

const heatPath = /^\/api\/pieces\/([^/]+)\/heat$/;
const piecePath = /^\/api\/pieces\/([^/]+)$/;

export class FakePieces {
  /** By id, the newest version of each. */
  readonly pieces = new Map<string, Piece>();
  readonly heats = new Map<string, PieceHeat>();
  /** How often what a piece has had was read. */
  heatReads = 0;

  keep(pieces: readonly Piece[], heats: readonly PieceHeat[] = []): void {
    for (const piece of pieces) this.pieces.set(piece.id, piece);
    for (const heat of heats) this.heats.set(heat.piece.id, heat);
  }

  /** Null: not an address of pieces. */
  get(path: string): Answer | null {
    if (path === '/api/pieces') return { status: 200, body: { pieces: [...this.pieces.values()] } };
    const id = decodeURIComponent(heatPath.exec(path)?.[1] ?? '');
    if (id === '') return null;
    this.heatReads += 1;
    const piece = this.pieces.get(id);
    if (piece === undefined) return problem(404, `There is no piece "${id}".`);
    return { status: 200, body: { ...(this.heats.get(id) ?? heatOf(piece)), piece } };
  }

  put(path: string, body: unknown): Answer {
    const id = decodeURIComponent(piecePath.exec(path)?.[1] ?? '');
    const read = pieceWriteSchema.safeParse(body);
    if (!read.success) return problem(400, read.error.message);
    const { basedOn = 0, ...draft } = read.data;
    const version = this.pieces.get(id)?.version ?? 0;
    if (basedOn !== version) return problem(409, `There is a version ${version} of it by now.`);
    const piece: Piece = { ...draft, id, version: version + 1, madeAt: '2026-03-04T13:30:00Z' };
    this.pieces.set(id, piece);
    return { status: 200, body: piece };
  }
}
