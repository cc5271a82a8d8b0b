import type { Air } from '../../../shared/cure/air.ts';
import type { CoatFacts } from '../../../shared/cure/facts.ts';
import type { At } from '../../../shared/heat/work/at.ts';
import type { AirAnswer, CementList, CoatsAnswer } from '../../../shared/messages/cure.ts';
import type { Coat } from '../../../shared/shop/drying.ts';
import type { Sample } from '../../../shared/thermometer/sample.ts';
import { isHotNow } from '../../../shared/watch/hot.ts';
import { coatName } from '../../../shared/words/drying.ts';
import { newId } from '../../ids.ts';
import { currentCements, type Settings } from '../../settings/settings.ts';
import type { IronWatch } from '../iron-watch.ts';
import type { ProgramOptions } from '../program-options.ts';
import { airAnswer } from './air-answer.ts';
import { AirHearing } from './air-hearing.ts';
import { type KnownCoat, mayBurn } from './clocks.ts';
import { coatsAnswer } from './coats-answer.ts';
import { DryingKeeper } from './drying-keeper.ts';
import { type StandingAnswer, standingAnswer } from './fire.ts';
import { coatPlace } from './places.ts';

export interface DryingShopParts {
  readonly keeper: DryingKeeper;
  readonly settings: () => Settings;
  readonly watches: () => readonly IronWatch[];
  readonly inHand: () => IronWatch | null;
  readonly nowUtcMs: () => number;
  /** The watches' clock. */
  readonly nowMs: () => number;
  /** Told after every change of what is shown of coats, of the air and of what was learned. */
  readonly changed: () => void;
}

/**
 * What dries, held against the irons: what is wet where one works, and whose vapour burns beside a hot one. That comes to
 * the watches as an input of their own.
 */
export class DryingShop {
  readonly keeper: DryingKeeper;
  readonly #parts: DryingShopParts;
  readonly #hearing = new AirHearing();
  #heatedUtcMs: number | null = null;
  #revision = 0;
  #shown = '';
  #coats: readonly KnownCoat[] = [];

  constructor(parts: DryingShopParts) {
    this.#parts = parts;
    this.keeper = parts.keeper;
  }

  /** Rises with every change of what is shown. */
  get revision(): number {
    return this.#revision;
  }

  /** A line told of the shop's air, maybe. */
  hear(sample: Sample, atMs: number): void {
    const air = this.#hearing.hear(sample, atMs);
    if (air === null) return;
    const { airC, rhPct, probe } = air;
    void this.keeper.happened({ kind: 'air', airC, rhPct, how: 'probe', probe });
  }

  /** The machine's clock was set: all that happened before goes along with it. */
  clockSet(byMs: number): void {
    void this.keeper.happened({ kind: 'clock', byMs, while: 'running' });
  }

  /** Somebody has read it from a thermometer; gives whether that is in the book. */
  typed({ airC, rhPct }: Air, commandId: string): Promise<boolean> {
    this.#hearing.forget();
    return this.keeper.happened({ kind: 'air', airC, rhPct, how: 'typed', probe: '' }, commandId);
  }

  /** An iron has begun to grow hot: that irons are off is answered no more. */
  heated(): void {
    this.#heatedUtcMs = this.#parts.nowUtcMs();
  }

  /** Brings every clock up to date, and tells what has come of it. */
  refresh(): void {
    this.#coats = this.keeper.clocks.open();
    this.tellFacts();
    const shown = JSON.stringify(this.#answer(), coarsely);
    if (shown === this.#shown) return;
    this.#shown = shown;
    this.#revision += 1;
    this.#parts.changed();
  }

  coats(): CoatsAnswer {
    return { revision: this.#revision, ...this.#answer() };
  }

  air(): AirAnswer {
    const settings = this.#parts.settings();
    const drying = new Set(this.#coats.map(({ cement }) => cement.id));
    const open = currentCements(settings).filter(({ archived }) => !archived);
    const used = open.filter(({ id }) => drying.has(id));
    return airAnswer(this.keeper.drying, used.length > 0 ? used : open, this.#parts.nowUtcMs());
  }

  cements(): CementList {
    const cements = currentCements(this.#parts.settings());
    const learned = cements.map(
      (cement) => [cement.id, this.keeper.clocks.learnedOf(cement).learned] as const,
    );
    return {
      cements,
      learned: Object.fromEntries(learned.filter(([, { observations }]) => observations > 0)),
    };
  }

  #answer(): Omit<CoatsAnswer, 'revision'> {
    const { settings } = this.#parts;
    return coatsAnswer({
      keeper: this.keeper,
      coats: this.#coats,
      settings: settings(),
      answerOf: ({ coat }) => this.#answerOf(coat),
      asked: this.#teller() === null ? [] : this.#unanswered().map(({ coat }) => coat.id),
    });
  }

  #answerOf(coat: Coat): StandingAnswer | null {
    return standingAnswer(coat, this.#heatedUtcMs, this.#parts.nowUtcMs());
  }

  #unanswered(): readonly KnownCoat[] {
    return this.#coats.filter((one) => mayBurn(one) && this.#answerOf(one.coat) === null);
  }

  /** The hot iron that tells of vapour: two hot irons beside one coat are one cause. Null: none is hot. */
  #teller(): IronWatch | null {
    const irons = [this.#parts.inHand(), ...this.#parts.watches()];
    return irons.find((one) => one !== null && isHotNow(one.state)) ?? null;
  }

  /** What the watches have to know of coats, as their marks are now. */
  tellFacts(): void {
    const teller = this.#teller();
    const fire = teller === null ? '' : this.#names(this.#unanswered());
    for (const watch of this.#parts.watches()) {
      const { at, coats: known } = watch.state.work;
      const facts: CoatFacts = { wet: this.#wetAt(at), fire: watch === teller ? fire : '' };
      if (facts.wet === known.wet && facts.fire === known.fire) continue;
      watch.take({ kind: 'coat-facts', facts }, this.#parts.nowMs());
    }
  }

  /** On the same side; where either of them is of the whole side, everywhere on it. */
  #wetAt(at: At | null): string {
    if (at === null) return '';
    return this.#names(
      this.#coats.filter(
        ({ coat, clock }) =>
          clock.wet &&
          coat.piece === at.piece &&
          coat.side === at.side &&
          (coat.area === null || at.area === null || coat.area === at.area),
      ),
    );
  }

  #names(coats: readonly KnownCoat[]): string {
    const settings = this.#parts.settings();
    return coats
      .map(({ coat, cement }) => coatName(cement.name, coatPlace(settings, coat).placeName))
      .join('; ');
  }
}

const isoTime = /^\d{4}-\d\d-\d\dT/;

/** A time that has moved by less than a minute shows nothing new. */
const coarsely = (_: string, value: unknown): unknown =>
  typeof value === 'string' && isoTime.test(value) ? Math.round(Date.parse(value) / 60_000) : value;

export interface DryingSetup extends Pick<DryingShopParts, 'watches' | 'inHand' | 'changed'> {
  readonly options: ProgramOptions;
}

/** What dries, as the program's own parts have it. */
export function dryingShop({ options, ...irons }: DryingSetup): DryingShop {
  const { settings, simulated, utcNowMs, keepInShop, clock } = options;
  const keeper = new DryingKeeper({
    settings: () => settings.current,
    simulated,
    nowUtcMs: utcNowMs,
    newId,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    keep: keepInShop,
  });
  return new DryingShop({
    ...irons,
    keeper,
    settings: () => settings.current,
    nowUtcMs: utcNowMs,
    nowMs: () => clock.nowMs(),
  });
}
