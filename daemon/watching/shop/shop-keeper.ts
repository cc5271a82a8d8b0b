import type { AreaHeats } from '../../../shared/heat/work/area-heat.ts';
import { areaHeatsOf } from '../../../shared/heat/work/area-heats.ts';
import type { KeptVisit } from '../../../shared/heat/work/visit.ts';
import type { Piece } from '../../../shared/piece/piece.ts';
import { emptyShop, foldShop, type Shop, type ShopInput, visitsNow } from '../../../shared/shop/shop.ts';

/** So many pieces are one press away. */
const RECENT = 4;

/**
 * What the pieces have had, of all sessions: what the book has of before, and what is heard while the program runs. It
 * only holds the shop fold's state and what was worked out of it.
 */
export class ShopKeeper {
  #shop: Shop = emptyShop;
  #revision = 0;
  #ready = false;
  /** Ids of pieces that were taken in hand in this run, the newest first. */
  #taken: readonly string[] = [];
  /** Worked out of the state as it is; forgotten with the next change. */
  #visits: readonly KeptVisit[] | null = null;
  #heats = new Map<string, AreaHeats>();
  readonly #changed: () => void;

  /** @param changed told after every change */
  constructor(changed: () => void) {
    this.#changed = changed;
  }

  get shop(): Shop {
    return this.#shop;
  }

  /** Rises with every change. */
  get revision(): number {
    return this.#revision;
  }

  /** Whether what the book has of before was read. */
  get ready(): boolean {
    return this.#ready;
  }

  take(input: ShopInput): void {
    this.#shop = foldShop(this.#shop, input);
    if (input.kind === 'book') this.#ready = true;
    this.touch();
  }

  /** Something that this is shown with has changed: a piece's map, the stage that is being worked. */
  touch(): void {
    this.#revision += 1;
    this.#visits = null;
    this.#heats = new Map();
    this.#changed();
  }

  tookUp(piece: string): void {
    if (this.#taken[0] === piece) return;
    this.#taken = [piece, ...this.#taken.filter((one) => one !== piece)];
    this.touch();
  }

  /** The visits that count. Simulated ones and real ones are never shown together. */
  visits(simulated: boolean): readonly KeptVisit[] {
    this.#visits ??= visitsNow(this.#shop);
    return this.#visits.filter((visit) => visit.simulated === simulated);
  }

  heats(piece: Piece, simulated: boolean): AreaHeats {
    const key = `${piece.id} ${piece.version} ${simulated}`;
    const known = this.#heats.get(key);
    if (known !== undefined) return known;
    const heats = areaHeatsOf(piece, this.visits(simulated));
    this.#heats.set(key, heats);
    return heats;
  }

  /** The pieces that were in hand last, the newest first, of those that may be taken up. */
  recent(pieces: readonly Piece[], simulated: boolean): readonly string[] {
    const visited = this.visits(simulated)
      .toSorted((a, b) => b.toUtcMs - a.toUtcMs)
      .flatMap(({ spot }) => (spot === null ? [] : [spot.piece]));
    const open = new Set(pieces.filter(({ archived }) => !archived).map(({ id }) => id));
    return [...new Set([...this.#taken, ...visited])].filter((id) => open.has(id)).slice(0, RECENT);
  }
}
