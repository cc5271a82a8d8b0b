import { computed, effect, signal } from '@preact/signals';
import { type PieceHeat, pieceHeatSchema, pieceListSchema } from '../../shared/messages/piece.ts';
import type { Piece } from '../../shared/piece/piece.ts';
import { isLive, live } from '../link/daemon.ts';
import { getJson } from '../link/get.ts';
import { oneAtATime } from '../link/read-again.ts';

/** The pieces and what they have had, as the daemon tells it: read where they are shown, again when it has changed. */

/** The newest version of each; null before they were read. */
export const pieces = signal<readonly Piece[] | null>(null);
/** Why they could not be read; empty while all is well. */
export const piecesTrouble = signal('');
/** What each piece has had, as read last. */
export const heats = signal<Readonly<Record<string, PieceHeat>>>({});

/** What the stream says of them: when it changes, what was read is old. */
const told = computed(() => {
  const now = live.value;
  if (now === null) return '';
  const { settingsRevision, work } = now.situation;
  return `${now.program.epoch} ${settingsRevision} ${work.heatRevision} ${work.ready}`;
});

export const pieceOf = (id: string): Piece | null => pieces.value?.find((one) => one.id === id) ?? null;

export const readPieces = oneAtATime(async () => {
  const got = await getJson('/api/pieces', pieceListSchema);
  if (got.ok) pieces.value = got.value.pieces;
  piecesTrouble.value = got.ok ? '' : got.why;
});

/** A piece that was just written, as the daemon has it now. */
export function putPiece(piece: Piece): void {
  const others = (pieces.peek() ?? []).filter((one) => one.id !== piece.id);
  pieces.value = [...others, piece];
}

/** What could not be read stays as it was: it is read again at the next change. */
const readHeat = async (piece: string): Promise<void> => {
  const got = await getJson(`/api/pieces/${encodeURIComponent(piece)}/heat`, pieceHeatSchema);
  if (got.ok) heats.value = { ...heats.peek(), [piece]: got.value };
};

/** Keeps the list fresh for as long as it is needed; returns a function that ends it. */
export const followPieces = (): (() => void) =>
  effect(() => {
    if (told.value !== '' && isLive.value) readPieces();
  });

/** Keeps what a piece has had fresh for as long as it is shown. */
export function followHeat(piece: string): () => void {
  const read = oneAtATime(() => readHeat(piece));
  return effect(() => {
    if (told.value !== '' && isLive.value) read();
  });
}
