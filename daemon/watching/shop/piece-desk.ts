import type { Outcome } from '../../../shared/messages/command.ts';
import type { PieceHeat, WorkCommand } from '../../../shared/messages/piece.ts';
import type { Piece, PieceDraft } from '../../../shared/piece/piece.ts';
import type { PieceNoteDraft } from '../../../shared/shop/note.ts';
import { workRefusals } from '../../../shared/words/work.ts';
import type { Book, BookReader } from '../../book/book.ts';
import { Refusal } from '../../refusal.ts';
import { pieceOf, withPiece } from '../../settings/pieces.ts';
import { currentPieces, currentSchedules } from '../../settings/settings.ts';
import type { PieceDesk as Pieces } from '../../web/desk.ts';
import type { Program } from '../program.ts';
import { settle } from '../settle.ts';
import { heatAnswer } from './heat-answer.ts';

export interface PieceDeskParts {
  readonly program: Program;
  readonly reader: Pick<BookReader, 'items'>;
  readonly book: Pick<Book, 'addNote'>;
  /** Runs a command, unless one of this id has run: then that one's outcome. */
  readonly once: (commandId: string, run: () => Promise<Outcome>) => Promise<Outcome>;
}

/** The part of the desk where pieces are settled and worked on, and where it is told what they have had. */
export class PieceDesk implements Pieces {
  readonly #parts: PieceDeskParts;

  constructor(parts: PieceDeskParts) {
    this.#parts = parts;
  }

  pieces(): readonly Piece[] {
    return currentPieces(this.#parts.program.options.settings.current);
  }

  async putPiece(id: string, draft: PieceDraft, basedOn: number): Promise<Piece> {
    const { program } = this.#parts;
    const madeAt = program.utcOf(program.options.clock.nowMs());
    const made = await settle(program, (s) => withPiece(s, draft, { id, basedOn, madeAt }));
    program.bench.shop.touch();
    return made.piece;
  }

  async heat(id: string): Promise<PieceHeat> {
    const { program, reader } = this.#parts;
    const piece = pieceOf(program.options.settings.current, id);
    const items = await reader.items();
    const { bench } = program;
    const watch = bench.working(id);
    return heatAnswer({
      shop: bench.shop,
      piece,
      simulated: program.options.simulated(),
      stages:
        watch?.state.settings?.schedule.stages ??
        currentSchedules(program.options.settings.current)[0]?.stages ??
        [],
      next: watch === null ? null : bench.next(watch, piece),
      suspects: items.flatMap((item) =>
        item.closing === null && item.crossing.at?.piece === id ? [item.id] : [],
      ),
      overruled: bench.isOverruled(piece),
    });
  }

  /** Kept beside the sessions. Asking again with the same id changes nothing. */
  async note(id: string, note: PieceNoteDraft, commandId: string): Promise<void> {
    const { program, book } = this.#parts;
    const piece = pieceOf(program.options.settings.current, id);
    this.#check(piece, note);
    const atUtcMs = Date.parse(program.utcOf(program.options.clock.nowMs()));
    const kept = await book.addNote({ commandId, piece: id, atUtcMs, note });
    program.bench.shop.take({ kind: 'note', note: kept });
  }

  act(said: Omit<WorkCommand, 'commandId'>, commandId: string): Promise<Outcome> {
    const { program, once } = this.#parts;
    return once(commandId, () => program.acts.act(said, commandId));
  }

  #check(piece: Piece, note: PieceNoteDraft): void {
    const { shop } = this.#parts.program.bench;
    if (note.kind === 'tight' && note.side > piece.sides.length)
      throw new Refusal('conflict', workRefusals.noSide(piece.name), 'note.side');
    if (note.kind !== 'corrected') return;
    const known = Object.values(shop.shop.visits).some(
      (v) => v.session === note.session && v.n === note.visit,
    );
    if (!known) throw new Refusal('unknown', workRefusals.noVisit, 'note.visit');
    const area = note.to?.area ?? null;
    if (area !== null && !piece.areas.some((one) => one.id === area && one.side === note.to?.side))
      throw new Refusal('conflict', workRefusals.noArea(area, piece.name), 'note.to.area');
  }
}
