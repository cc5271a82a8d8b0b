import type { Cement } from '../../../shared/cure/cement.ts';
import { type CoatClock, coatClock } from '../../../shared/cure/clock.ts';
import { airCourse } from '../../../shared/cure/course.ts';
import { type Cured, type Curing, cured, curingOf } from '../../../shared/cure/curing.ts';
import { type LearnedHere, learn } from '../../../shared/cure/learn.ts';
import { mayBurn } from '../../../shared/cure/vapour.ts';
import type { Coat, Drying, ToldAir } from '../../../shared/shop/drying.ts';
import type { ShopHappened } from '../../../shared/shop/entry.ts';
import { taughtOf } from '../../../shared/shop/observations.ts';
import { currentCements, type Settings } from '../../settings/settings.ts';

export interface ClocksParts {
  readonly drying: () => Drying;
  readonly settings: () => Settings;
  readonly nowUtcMs: () => number;
}

/** A coat with the cement that it is of, and what its clock shows now. */
export interface KnownCoat {
  readonly coat: Coat;
  readonly cement: Cement;
  readonly clock: CoatClock;
}

/** The course of the air reaches weeks ahead: it is worked out anew when more is told, and this often, ms. */
const COURSE_MS = 3_600_000;

/** The clocks of the coats, worked out from what dries; what many coats share is worked out once. */
export class Clocks {
  readonly #parts: ClocksParts;
  #curings = new Map<string, Curing>();
  #curingsUntilMs = 0;
  /** From when on the air is needed. */
  #fromUtcMs = Number.POSITIVE_INFINITY;
  #learned = new Map<string, LearnedHere>();
  /** Ids of coats that are not asked after any more. */
  readonly #over = new Set<string>();

  constructor(parts: ClocksParts) {
    this.#parts = parts;
  }

  /** Forgets what can't be as it was any more. */
  follow({ kind }: ShopHappened): void {
    if (kind === 'runs') return;
    if (kind === 'air' || kind === 'forecast') {
      this.#curings.clear();
      return;
    }
    this.touch();
  }

  /** A cement has changed, or anything may have. */
  touch(): void {
    this.#curings.clear();
    this.#learned.clear();
    this.#over.clear();
  }

  /** The coats whose clocks run. */
  open(): readonly KnownCoat[] {
    const coats = this.#running();
    this.#needFrom(Math.min(...coats.map(({ fromUtcMs }) => fromUtcMs)));
    return coats.flatMap((coat) => {
      const cement = this.cementOf(coat);
      if (cement === null) return [];
      const clock = this.#clockOf(coat, cement);
      const nowUtcMs = this.#parts.nowUtcMs();
      const burns = mayBurn({ cement, clock, fromUtcMs: coat.fromUtcMs, nowUtcMs });
      if (burns || !isOver(coat, clock, nowUtcMs)) return [{ coat, cement, clock }];
      this.#over.add(coat.id);
      return [];
    });
  }

  /** Coats whose clocks would run, of cements that are gone. */
  lost(): readonly Coat[] {
    return this.#running().filter((coat) => this.cementOf(coat) === null);
  }

  /** The cement as it was when the coat was put on, else as it is now; null where the settings don't have it any more. */
  cementOf({ cement: id, cementVersion }: Pick<Coat, 'cement' | 'cementVersion'>): Cement | null {
    const settings = this.#parts.settings();
    return (
      settings.cements.find((one) => one.id === id && one.version === cementVersion) ??
      currentCements(settings).find((one) => one.id === id) ??
      null
    );
  }

  /** How far a coat has come, s at its instructions' conditions. */
  cured({ fromUtcMs }: Coat, cement: Cement): Cured {
    this.#needFrom(fromUtcMs);
    return cured(this.#curingOf(cement), fromUtcMs, this.#parts.nowUtcMs());
  }

  /** What the taps have taught about a cement. */
  learnedOf(cement: Cement): LearnedHere {
    const key = keyOf(cement);
    const known = this.#learned.get(key);
    if (known !== undefined) return known;
    const versions = this.#parts.settings().cements.filter(({ id }) => id === cement.id);
    const learned = learn(taughtOf(Object.values(this.#parts.drying().coats), cement, versions));
    this.#learned.set(key, learned);
    return learned;
  }

  #running(): readonly Coat[] {
    const { coats } = this.#parts.drying();
    return Object.values(coats).filter(({ id, ended }) => ended === null && !this.#over.has(id));
  }

  #clockOf(coat: Coat, cement: Cement): CoatClock {
    return coatClock({
      cement,
      fromUtcMs: coat.fromUtcMs,
      checks: coat.checks,
      curing: this.#curingOf(cement),
      learned: this.learnedOf(cement),
      nowUtcMs: this.#parts.nowUtcMs(),
      clockLost: coat.clockLosses > 0,
    });
  }

  #needFrom(fromUtcMs: number): void {
    if (fromUtcMs < this.#fromUtcMs) this.#curings.clear();
    this.#fromUtcMs = Math.min(fromUtcMs, this.#curings.size === 0 ? fromUtcMs : this.#fromUtcMs);
  }

  #curingOf(cement: Cement): Curing {
    const nowUtcMs = this.#parts.nowUtcMs();
    // A clock that was set back is as good a reason as one that went on.
    if (nowUtcMs >= this.#curingsUntilMs || nowUtcMs < this.#curingsUntilMs - COURSE_MS) {
      this.#curings.clear();
      this.#curingsUntilMs = nowUtcMs + COURSE_MS;
    }
    const key = keyOf(cement);
    const known = this.#curings.get(key);
    if (known !== undefined) return known;
    const { air, forecast } = this.#parts.drying();
    const points = airFrom(air, this.#fromUtcMs);
    const curing = curingOf(cement, airCourse({ points, forecast, nowUtcMs }));
    this.#curings.set(key, curing);
    return curing;
  }
}

const keyOf = ({ id, version }: Cement): string => `${id} ${version}`;

/** What was told from then on, and what was told last before it. */
function airFrom(air: readonly ToldAir[], fromUtcMs: number): readonly ToldAir[] {
  return air.slice(
    Math.max(
      0,
      air.findLastIndex(({ atUtcMs }) => atUtcMs <= fromUtcMs),
    ),
  );
}

/** Whose last stage is long past is not asked after any more, whether somebody said that it is dry or not, ms. */
const OVER_AFTER_MS = 24 * 3_600_000;

function isOver({ checks }: Coat, { stages, state, wet }: CoatClock, nowUtcMs: number): boolean {
  // Found tacky it is wet for as long as nobody says otherwise.
  if (wet) return false;
  const last = stages.at(-1);
  if (state === 'dry') {
    const saidMs = Math.max(...checks.map(({ atUtcMs }) => atUtcMs));
    return nowUtcMs - saidMs > OVER_AFTER_MS;
  }
  return last?.latestMs !== null && last !== undefined && nowUtcMs - last.latestMs > OVER_AFTER_MS;
}
