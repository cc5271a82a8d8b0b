import type { KeptVisit, Spot } from '../heat/work/visit.ts';
import type { Piece } from '../piece/piece.ts';
import type { PieceNote } from './note.ts';

/**
 * The fold that outlives sessions: what the pieces have had, from the visits of every session and what named persons said
 * beside them. Inputs may come in any order: what was read from the book comes after what has just happened.
 */
export interface Shop {
  /** A visit that is told again replaces what was known of it. */
  readonly visits: Readonly<Record<string, KeptVisit>>;
  /** In the order of their times. */
  readonly notes: readonly PieceNote[];
}

export type ShopInput =
  | { readonly kind: 'visit'; readonly visit: KeptVisit }
  | { readonly kind: 'note'; readonly note: PieceNote }
  /** All that the book has of before. */
  | { readonly kind: 'book'; readonly visits: readonly KeptVisit[]; readonly notes: readonly PieceNote[] };

export const emptyShop: Shop = { visits: {}, notes: [] };

/** Whatever session tells of it: one that broke off and was gone on with may both have the same visit. */
const visitKey = ({ ironId, fromUtcMs, n }: Pick<KeptVisit, 'ironId' | 'fromUtcMs' | 'n'>): string =>
  `${ironId}/${fromUtcMs}/${n}`;

/** How a correction names a visit. */
const visitName = (session: string, n: number): string => `${session}/${n}`;

/** Folds one input; the same one twice changes nothing. */
export function foldShop(shop: Shop, input: ShopInput): Shop {
  switch (input.kind) {
    case 'visit':
      return { ...shop, visits: withVisits(shop.visits, [input.visit], (known, told) => known <= told) };
    case 'note':
      return { ...shop, notes: withNotes(shop.notes, [input.note]) };
    case 'book':
      return {
        // What was heard live is never older than what the book has of the same moment.
        visits: withVisits(shop.visits, input.visits, (known, told) => known < told),
        notes: withNotes(shop.notes, input.notes),
      };
  }
}

/** Of two tellings of one visit the one that has come further counts, whichever was heard first. */
function withVisits(
  before: Shop['visits'],
  told: readonly KeptVisit[],
  counts: (knownToMs: number, toldToMs: number) => boolean,
): Shop['visits'] {
  const visits = { ...before };
  for (const visit of told) {
    const key = visitKey(visit);
    const known = visits[key];
    if (known === undefined || counts(known.toUtcMs, visit.toUtcMs)) visits[key] = visit;
  }
  return visits;
}

function withNotes(before: Shop['notes'], said: readonly PieceNote[]): Shop['notes'] {
  const known = new Set(before.map(({ commandId }) => commandId));
  const more = said.filter(({ commandId }) => !known.has(commandId));
  return [...before, ...more].sort((a, b) => a.atUtcMs - b.atUtcMs);
}

/** The visits that count, where they count: what was taken back is left out, what was corrected stands corrected. */
export function visitsNow({ visits, notes }: Shop): readonly KeptVisit[] {
  const corrections = new Map<string, PieceNote>();
  for (const entry of notes) {
    if (entry.note.kind === 'corrected')
      corrections.set(visitName(entry.note.session, entry.note.visit), entry);
  }
  return Object.values(visits).flatMap((visit) => {
    if (visit.takenBack) return [];
    const entry = corrections.get(visitName(visit.session, visit.n));
    return [entry === undefined ? visit : correctedBy(visit, entry)];
  });
}

function correctedBy(visit: KeptVisit, { piece, note, atUtcMs }: PieceNote): KeptVisit {
  if (note.kind !== 'corrected') return visit;
  const { to, by } = note;
  const spot: Spot | null =
    to === null ? null : { piece, version: visit.spot?.version ?? 1, side: to.side, area: to.area };
  return { ...visit, corrected: { spot, by, atUtcMs } };
}

/** The last that was said of a kind, of one piece. */
export function lastNote<K extends PieceNote['note']['kind']>(
  { notes }: Shop,
  { id }: Pick<Piece, 'id'>,
  kind: K,
  holds: (note: Extract<PieceNote['note'], { kind: K }>) => boolean = () => true,
): { readonly atUtcMs: number; readonly note: Extract<PieceNote['note'], { kind: K }> } | null {
  for (const { piece, atUtcMs, note } of notes.toReversed()) {
    if (piece === id && isKind(note, kind) && holds(note)) return { atUtcMs, note };
  }
  return null;
}

const isKind = <K extends PieceNote['note']['kind']>(
  note: PieceNote['note'],
  kind: K,
): note is Extract<PieceNote['note'], { kind: K }> => note.kind === kind;
