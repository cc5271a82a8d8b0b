import type { Air } from '../../../shared/cure/air.ts';
import { type CoatFacts, isSameFacts } from '../../../shared/cure/facts.ts';
import { mayBurn } from '../../../shared/cure/vapour.ts';
import type { At } from '../../../shared/heat/work/at.ts';
import type { AirAnswer, CementList, CoatsAnswer } from '../../../shared/messages/cure.ts';
import type { Piece } from '../../../shared/piece/piece.ts';
import type { Coat } from '../../../shared/shop/drying.ts';
import { type StandingAnswer, standingAnswer } from '../../../shared/shop/fire.ts';
import { isOnSide, isThere } from '../../../shared/shop/there.ts';
import type { ProbeId, Sample } from '../../../shared/thermometer/sample.ts';
import { isInUse } from '../../../shared/watch/hot.ts';
import { coatName } from '../../../shared/words/drying.ts';
import { newId } from '../../ids.ts';
import { airFromOf } from '../../settings/air.ts';
import { currentCements, type Settings } from '../../settings/settings.ts';
import type { ClockChange } from '../clock-watch.ts';
import type { IronWatch } from '../iron-watch.ts';
import type { ProgramOptions } from '../program-options.ts';
import { airAnswer, airProbeAnswer } from './air-answer.ts';
import { AirHearing } from './air-hearing.ts';
import type { KnownCoat } from './clocks.ts';
import { coatsAnswer } from './coats-answer.ts';
import { DryingKeeper } from './drying-keeper.ts';
import { coatPlace } from './places.ts';

export interface DryingShopParts {
  readonly keeper: DryingKeeper;
  readonly settings: () => Settings;
  readonly watches: () => readonly IronWatch[];
  readonly inHand: () => IronWatch | null;
  readonly simulated: () => boolean;
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
  readonly #hearing: AirHearing;
  /** When an iron was last seen to take heat, UTC. */
  #heatedUtcMs: number | null = null;
  /** Id of the iron that tells of vapour: it goes on telling while it is in use, whatever is taken in hand. */
  #tells: string | null = null;
  #revision = 0;
  #shown = '';
  #coats: readonly KnownCoat[] = [];

  constructor(parts: DryingShopParts) {
    this.#parts = parts;
    this.keeper = parts.keeper;
    this.#hearing = new AirHearing(() => this.#airProbe());
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

  /** The machine's clock was set: what happened before goes along with it. */
  clockSet(step: Pick<ClockChange, 'byMs' | 'sinceBootMs'>): void {
    if (this.#heatedUtcMs !== null) this.#heatedUtcMs += step.byMs;
    this.keeper.clockSet(step);
    this.refresh();
  }

  /** Somebody has read it from a thermometer; gives whether that is in the book. */
  typed({ airC, rhPct }: Air, commandId: string): Promise<boolean> {
    this.#hearing.forget();
    return this.keeper.happened({ kind: 'air', airC, rhPct, how: 'typed', probe: '' }, commandId);
  }

  /** An iron takes heat: that irons are off is answered no more. */
  heated(): void {
    this.#heatedUtcMs = this.#parts.nowUtcMs();
  }

  /** Brings every clock up to date, and tells what has come of it. */
  refresh(): void {
    this.keeper.noteRunning();
    this.#coats = this.keeper.clocks.open();
    this.tellFacts();
    const shown = JSON.stringify([this.#answer(), this.#airShown(), this.cements().learned], coarsely);
    if (shown === this.#shown) return;
    this.#shown = shown;
    this.#revision += 1;
    this.#parts.changed();
  }

  /** Without its past: that only grows with what is shown of now. */
  #airShown(): Omit<AirAnswer, 'history'> {
    const { history: _, ...shown } = this.air();
    return shown;
  }

  coats(): CoatsAnswer {
    return { revision: this.#revision, ...this.#answer() };
  }

  air(): AirAnswer {
    const settings = this.#parts.settings();
    const drying = this.#coats.map(({ cement }) => cement);
    const next = currentCements(settings).filter(({ archived }) => !archived);
    const [nowUtcMs, nowMs] = [this.#parts.nowUtcMs(), this.#parts.nowMs()];
    return {
      ...airAnswer(this.keeper.drying, [...new Set([...drying, ...next])], nowUtcMs),
      chosen: this.#airProbe(),
      probes: this.#hearing
        .probes(nowMs)
        .map((probe) => airProbeAnswer(probe, (atMs) => nowUtcMs - (nowMs - atMs))),
    };
  }

  /** The one that was chosen to tell the air; null: whichever is heard. */
  #airProbe(): ProbeId | null {
    return airFromOf(this.#parts.settings(), this.#parts.simulated()).probe;
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
      nowUtcMs: this.#parts.nowUtcMs(),
    });
  }

  #answerOf(coat: Coat): StandingAnswer | null {
    return standingAnswer(coat, this.#heatedUtcMs, this.#parts.nowUtcMs());
  }

  #unanswered(): readonly KnownCoat[] {
    const nowUtcMs = this.#parts.nowUtcMs();
    return this.#coats.filter(
      ({ coat, cement, clock }) =>
        mayBurn({ cement, clock, fromUtcMs: coat.fromUtcMs, nowUtcMs }) && this.#answerOf(coat) === null,
    );
  }

  /** The iron in use that tells of vapour: two of them beside one coat are one cause. Null: none is in use. */
  #teller(): IronWatch | null {
    const inUse = this.#parts.watches().filter(({ state }) => isInUse(state));
    const inHand = this.#parts.inHand();
    const teller =
      inUse.find(({ iron }) => iron.id === this.#tells) ??
      inUse.find((one) => one === inHand) ??
      inUse[0] ??
      null;
    this.#tells = teller?.iron.id ?? null;
    return teller;
  }

  /** What the watches have to know of coats, as their marks are now. */
  tellFacts(): void {
    const teller = this.#teller();
    const fire = teller === null ? '' : this.#told(this.#unanswered().map(named));
    for (const watch of this.#parts.watches()) {
      const { at, coats: known } = watch.state.work;
      const facts: CoatFacts = { ...this.#factsAt(at), fire: watch === teller ? fire : '' };
      if (!isSameFacts(facts, known)) watch.take({ kind: 'coat-facts', facts }, this.#parts.nowMs());
    }
  }

  #factsAt(at: At | null): Omit<CoatFacts, 'fire'> {
    if (at === null) return { wet: '', near: '', limitC: null };
    const { pieces } = this.#parts.settings();
    const wet = [
      ...this.#coats.filter(({ clock }) => clock.wet).map(named),
      ...this.keeper.clocks.lost().map((coat) => ({ coat, name: coat.cement })),
    ];
    const here = wet.filter(({ coat }) => isThere(coat, at, pieces));
    const near = wet.filter(({ coat }) => isOnSide(coat, at) && at.area === null);
    return {
      wet: this.#told(here),
      near: this.#told(near),
      limitC: this.#limitC(at, pieces),
    };
  }

  /** Of all coats that are there, dry or not: the bond stays. */
  #limitC(at: At, pieces: readonly Piece[]): number | null {
    const limits = Object.values(this.keeper.drying.coats).flatMap((coat) =>
      coat.ended?.why !== 'mistake' && isThere(coat, at, pieces)
        ? (this.keeper.clocks.cementOf(coat)?.cementLimitC ?? [])
        : [],
    );
    return limits.length === 0 ? null : Math.min(...limits);
  }

  /** Coats in one line, each by its cement's name and its place. */
  #told(coats: readonly NamedCoat[]): string {
    const settings = this.#parts.settings();
    return coats.map(({ coat, name }) => coatName(name, coatPlace(settings, coat).placeName)).join('; ');
  }
}

/** A coat with its cement's name, or its id where that is gone. */
interface NamedCoat {
  readonly coat: Coat;
  readonly name: string;
}

const named = ({ coat, cement: { name } }: KnownCoat): NamedCoat => ({ coat, name });

const isoTime = /^\d{4}-\d\d-\d\dT/;

/** A time that has moved by less than a minute shows nothing new. */
const coarsely = (_: string, value: unknown): unknown =>
  typeof value === 'string' && isoTime.test(value) ? Math.round(Date.parse(value) / 60_000) : value;

export interface DryingSetup extends Pick<DryingShopParts, 'watches' | 'inHand' | 'changed'> {
  readonly options: ProgramOptions;
}

/** What dries, as the program's own parts have it. */
export function dryingShop({ options, ...irons }: DryingSetup): DryingShop {
  const { settings, simulated, utcNowMs, byWallClock, keepInShop, clock } = options;
  const keeper = new DryingKeeper({
    settings: () => settings.current,
    simulated,
    nowUtcMs: utcNowMs,
    byWallClock,
    newId,
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    keep: keepInShop,
  });
  return new DryingShop({
    ...irons,
    keeper,
    settings: () => settings.current,
    simulated,
    nowUtcMs: utcNowMs,
    nowMs: () => clock.nowMs(),
  });
}
