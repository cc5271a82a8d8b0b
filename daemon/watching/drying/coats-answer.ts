import { isConfirmed } from '../../../shared/heat/schedule.ts';
import type { CoatAnswer, CoatsAnswer, EndedAnswer, StartedAnswer } from '../../../shared/messages/cure.ts';
import type { Coat, Drying } from '../../../shared/shop/drying.ts';
import type { StandingAnswer } from '../../../shared/shop/fire.ts';
import { type EndedCoat, endedLately, type Started, startedLately } from '../../../shared/shop/lately.ts';
import { coatAmiss } from '../../../shared/words/drying.ts';
import type { Settings } from '../../settings/settings.ts';
import type { KnownCoat } from './clocks.ts';
import type { DryingKeeper } from './drying-keeper.ts';
import { coatPlace } from './places.ts';

/** What is told of coats: those that come first, first. */

export interface CoatsAsked {
  readonly keeper: DryingKeeper;
  readonly coats: readonly KnownCoat[];
  readonly settings: Settings;
  /** What was answered about a coat's vapour, while it stands. */
  readonly answerOf: (coat: KnownCoat) => StandingAnswer | null;
  /** Ids of those that something is asked about. */
  readonly asked: readonly string[];
  readonly nowUtcMs: number;
}

export function coatsAnswer({
  keeper,
  coats,
  settings,
  answerOf,
  asked,
  nowUtcMs,
}: CoatsAsked): Omit<CoatsAnswer, 'revision'> {
  return {
    coats: coats
      .map((coat) => coatAnswer(coat, settings, answerOf(coat)))
      .toSorted((a, b) => comesAt(a) - comesAt(b)),
    fire: [...asked],
    started: startedLately(keeper.drying, nowUtcMs).map((start) => startedAnswer(start, keeper, settings)),
    ended: endedLately(keeper.drying, nowUtcMs).map((coat) => endedAnswer(coat, keeper, settings)),
    clock: clockSet(keeper.drying, coats),
    amiss: keeper.clocks.lost().map((coat) => ({
      coat: coat.id,
      text: coatAmiss.noCement(coatPlace(settings, coat).placeName, coat.cement),
    })),
  };
}

/** By its id where the settings don't have it any more. */
const cementName = (coat: Coat, keeper: DryingKeeper): string =>
  keeper.clocks.cementOf(coat)?.name ?? coat.cement;

function startedAnswer({ by, coats }: Started, keeper: DryingKeeper, settings: Settings): StartedAnswer {
  const [first] = coats;
  return {
    of: by,
    piece: first.piece,
    cement: cementName(first, keeper),
    placeNames: coats.map((coat) => coatPlace(settings, coat).placeName),
    startedAt: utc(first.fromUtcMs),
  };
}

const endedAnswer = (coat: EndedCoat, keeper: DryingKeeper, settings: Settings): EndedAnswer => ({
  coat: coat.id,
  of: coat.ended.by,
  why: coat.ended.why,
  at: utc(coat.ended.atUtcMs),
  piece: coat.piece,
  cement: cementName(coat, keeper),
  placeName: coatPlace(settings, coat).placeName,
});

/**
 * Told for as long as a coat is open that dried then; of a clock that was set right nothing is left to say, and of simulated
 * time nothing at all.
 */
function clockSet({ clock }: Drying, coats: readonly KnownCoat[]): CoatsAnswer['clock'] {
  if (clock === null || clock.while === 'boot' || clock.while === 'simulated') return null;
  const { atUtcMs, byMs, while: when } = clock;
  const dried = coats.some(({ coat }) => coat.fromUtcMs < atUtcMs);
  return dried ? { at: utc(atUtcMs), byMs, while: when } : null;
}

const utc = (ms: number): string => new Date(ms).toISOString();
const utcOrNull = (ms: number | null): string | null => (ms === null ? null : utc(ms));

/** What is dry comes last; what stands still before it. */
function comesAt({ stage, stages }: CoatAnswer): number {
  if (stage === null) return Number.POSITIVE_INFINITY;
  const likely = stages.find(({ kind }) => kind === stage)?.likely ?? null;
  return likely === null ? Number.MAX_SAFE_INTEGER : Date.parse(likely);
}

function coatAnswer(
  { coat, cement, clock }: KnownCoat,
  settings: Settings,
  fire: StandingAnswer | null,
): CoatAnswer {
  const { id, piece, side, area, fromUtcMs, checks } = coat;
  const { state, stage, stages, wet, stands, why } = clock;
  return {
    id,
    piece,
    side,
    area,
    ...coatPlace(settings, coat),
    cement: {
      id: cement.id,
      version: cement.version,
      name: cement.name,
      kind: cement.kind,
      unconfirmed: !isConfirmed(cement),
    },
    startedAt: utc(fromUtcMs),
    state,
    stage,
    stages: stages.map(({ kind, saidDryMs, saidTackyMs, earliestMs, likelyMs, latestMs }) => ({
      kind,
      saidDry: utcOrNull(saidDryMs),
      saidTacky: utcOrNull(saidTackyMs),
      earliest: utcOrNull(earliestMs),
      likely: utcOrNull(likelyMs),
      latest: utcOrNull(latestMs),
    })),
    lastTap: checks.at(-1)?.by ?? null,
    wet,
    stands,
    why: [...why],
    fire: fire === null ? null : { answer: fire.answer, until: utc(fire.untilUtcMs) },
  };
}
