import type { AirPoint } from '../cure/air.ts';
import type { DryingStageKind } from '../cure/cement.ts';
import type { SideId } from '../piece/piece.ts';
import type { CoatEnding, CoatFound, FireAnswer, ShopEntry, ShopHappened } from './entry.ts';

/** What dries in the shop and the air that it dries in: a fold over the journal's entries, in their order. */
export interface Drying {
  /** By their ids, in the order in which they were put on. */
  readonly coats: Readonly<Record<string, Coat>>;
  /** The air as it was told, the oldest first. */
  readonly air: readonly ToldAir[];
  readonly forecast: readonly AirPoint[];
  /** The last time that the machine's clock was set, and by how much everything of before it was moved; null: it was not. */
  readonly clock: ClockSet | null;
  /** The latest time of any entry, ms; null: there is none. */
  readonly lastUtcMs: number | null;
}

type ClockWhile = Extract<ShopHappened, { kind: 'clock' }>['while'];

export interface ClockSet {
  readonly atUtcMs: number;
  readonly byMs: number;
  readonly while: ClockWhile;
  /** From when on what happened has the time of the clock as it stood then. */
  readonly fromUtcMs: number;
}

export interface ToldAir extends AirPoint {
  /** Which probe told it; empty where it was typed. */
  readonly probe: string;
}

/** One application of a cement at one place. */
export interface Coat {
  readonly id: string;
  /** The command that it was put on by. */
  readonly by: string;
  readonly cement: string;
  readonly cementVersion: number;
  readonly piece: string;
  readonly pieceVersion: number;
  readonly side: SideId;
  /** Null: the whole side. */
  readonly area: string | null;
  readonly fromUtcMs: number;
  /** When that was said. */
  readonly saidUtcMs: number;
  readonly checks: readonly Check[];
  readonly ended: Ended | null;
  readonly fire: { readonly by: string; readonly answer: FireAnswer; readonly atUtcMs: number } | null;
  /** So often the clock stood behind when the program came back: how long it dried meanwhile is not known. */
  readonly clockLosses: number;
}

/** That the clock of a coat is done with. */
export interface Ended {
  readonly by: string;
  readonly why: CoatEnding;
  readonly atUtcMs: number;
}

/** What a tap said of a coat. */
export interface Check {
  readonly by: string;
  readonly stage: DryingStageKind;
  readonly found: CoatFound;
  readonly curedS: number;
  readonly atUtcMs: number;
  /** False once the cement is to be learned anew, and where nobody knows how long the coat had dried by then. */
  readonly teaches: boolean;
}

/** So many points of air are kept: at one in two minutes, the last two weeks. */
export const AIR_KEPT = 10_000;

export const nothingDries: Drying = { coats: {}, air: [], forecast: [], clock: null, lastUtcMs: null };

/** Folds one entry; entries are to come in the order in which they were made, each once. */
export function foldDrying(before: Drying, entry: ShopEntry): Drying {
  return upTo(happened(before, entry), entry);
}

/** Folds a whole journal. What was told of the air is put together where nothing comes between: there is very much of it. */
export function dryingAfter(entries: readonly ShopEntry[]): Drying {
  let drying = nothingDries;
  let told: ToldAir[] = [];
  for (const entry of entries) {
    const { happened: what, atUtcMs } = entry;
    if (what.kind === 'air') {
      told.push(toldAir(what, atUtcMs));
      drying = upTo(drying, entry);
    } else {
      drying = foldDrying(withAir(drying, told), entry);
      told = [];
    }
  }
  return withAir(drying, told);
}

const upTo = (drying: Drying, { atUtcMs }: ShopEntry): Drying => ({
  ...drying,
  lastUtcMs: Math.max(drying.lastUtcMs ?? atUtcMs, atUtcMs),
});

const toldAir = (
  { airC, rhPct, how, probe }: Extract<ShopHappened, { kind: 'air' }>,
  atUtcMs: number,
): ToldAir => ({ atUtcMs, airC, rhPct, how, probe });

const withAir = (drying: Drying, told: readonly ToldAir[]): Drying =>
  told.length === 0 ? drying : { ...drying, air: [...drying.air, ...told].slice(-AIR_KEPT) };

function happened(drying: Drying, { happened: what, atUtcMs, commandId: by }: ShopEntry): Drying {
  switch (what.kind) {
    case 'coats':
      return { ...drying, coats: { ...drying.coats, ...coatsOf(what, by, atUtcMs) } };
    case 'checked': {
      const { coat, stage, found, curedS } = what;
      const check: Omit<Check, 'teaches'> = { by, stage, found, curedS, atUtcMs };
      return withCoat(drying, coat, (one) => ({
        ...one,
        checks: [...one.checks, { ...check, teaches: one.clockLosses === 0 }],
      }));
    }
    case 'ended':
      return withCoat(drying, what.coat, (one) => ({ ...one, ended: { by, why: what.why, atUtcMs } }));
    case 'fire-answer':
      return withCoat(drying, what.coat, (one) => ({ ...one, fire: { by, answer: what.answer, atUtcMs } }));
    case 'taken-back':
      return { ...drying, coats: withoutCommand(drying.coats, what.of) };
    case 'air':
      return withAir(drying, [toldAir(what, atUtcMs)]);
    case 'forecast':
      return { ...drying, forecast: what.points.map((point) => ({ ...point, how: 'forecast' })) };
    case 'learn-anew':
      return { ...drying, coats: everyCoat(drying.coats, (one) => forgotten(one, what.cement)) };
    case 'runs':
      return drying;
    case 'clock':
      return moved(drying, what, atUtcMs);
  }
}

function coatsOf(
  put: Extract<ShopHappened, { kind: 'coats' }>,
  by: string,
  saidUtcMs: number,
): Drying['coats'] {
  const { cement, cementVersion, piece, pieceVersion, places, fromUtcMs } = put;
  const made = places.map(({ coat, side, area }): readonly [string, Coat] => [
    coat,
    {
      id: coat,
      by,
      cement,
      cementVersion,
      piece,
      pieceVersion,
      side,
      area,
      fromUtcMs,
      saidUtcMs,
      checks: [],
      ended: null,
      fire: null,
      clockLosses: 0,
    },
  ]);
  return Object.fromEntries(made);
}

/** What is told of a coat that there is none of changes nothing: the entry that began it was taken back. */
function withCoat(drying: Drying, id: string, change: (coat: Coat) => Coat): Drying {
  const coat = drying.coats[id];
  return coat === undefined ? drying : { ...drying, coats: { ...drying.coats, [id]: change(coat) } };
}

const everyCoat = (coats: Drying['coats'], change: (coat: Coat) => Coat): Drying['coats'] =>
  Object.fromEntries(Object.entries(coats).map(([id, coat]) => [id, change(coat)]));

/** As if the command had never come. */
const withoutCommand = (coats: Drying['coats'], of: string): Drying['coats'] =>
  Object.fromEntries(
    Object.entries(coats).flatMap(([id, coat]) =>
      coat.by === of
        ? []
        : [
            [
              id,
              {
                ...coat,
                checks: coat.checks.filter(({ by }) => by !== of),
                ended: coat.ended?.by === of ? null : coat.ended,
                fire: coat.fire?.by === of ? null : coat.fire,
              },
            ],
          ],
    ),
  );

const forgotten = (coat: Coat, cement: string): Coat =>
  coat.cement === cement
    ? { ...coat, checks: coat.checks.map((check) => ({ ...check, teaches: false })) }
    : coat;

/** Clocks that come apart by less are not taken for set ones, ms. */
const SLEWED_MS = 2000;

/** Everything of before goes along with the clock, so that what had passed by then has passed by it still. */
function moved(
  drying: Drying,
  { byMs, while: when, startUtcMs, earlierByMs }: Extract<ShopHappened, { kind: 'clock' }>,
  atUtcMs: number,
): Drying {
  // What an earlier run has may be later than all of this one, while the clock stands behind.
  const untilMs = atUtcMs - byMs + SLEWED_MS;
  const isOfRun = (ms: number): boolean => startUtcMs === null || (ms >= startUtcMs && ms <= untilMs);
  const movedMs = (ms: number): number => ms + (isOfRun(ms) ? byMs : earlierByMs);
  const along = <T extends { readonly atUtcMs: number }>(one: T): T => ({
    ...one,
    atUtcMs: movedMs(one.atUtcMs),
  });
  // What was found since the start left out how long the program was off, where the coat was put on before.
  const missed = ({ saidUtcMs }: Coat, check: Check): boolean =>
    !isOfRun(saidUtcMs) && isOfRun(check.atUtcMs);
  const coats = everyCoat(drying.coats, (coat) => ({
    ...coat,
    // Whoever says how long ago it was put on doesn't go by the clock.
    fromUtcMs: coat.fromUtcMs + movedMs(coat.saidUtcMs) - coat.saidUtcMs,
    saidUtcMs: movedMs(coat.saidUtcMs),
    ended: coat.ended === null ? null : along(coat.ended),
    checks: coat.checks.map((check) => ({ ...along(check), teaches: check.teaches && !missed(coat, check) })),
    fire: coat.fire === null ? null : along(coat.fire),
    clockLosses: lossesAfter(coat, when, earlierByMs),
  }));
  const lastUtcMs = drying.lastUtcMs === null ? null : movedMs(drying.lastUtcMs);
  const clock: ClockSet = {
    atUtcMs,
    byMs: when === 'running' ? byMs : earlierByMs,
    while: when,
    fromUtcMs: startUtcMs ?? atUtcMs,
  };
  return { ...drying, coats, air: drying.air.map(along), clock, lastUtcMs };
}

/** A clock that was set right brings back the time that it lost in this run, but none that was lost in an earlier one. */
function lossesAfter({ clockLosses, ended }: Coat, when: ClockWhile, earlierByMs: number): number {
  switch (when) {
    case 'running':
    case 'simulated':
      return clockLosses;
    case 'boot':
      return Math.max(0, clockLosses - (earlierByMs === 0 ? 0 : 1));
    case 'off':
      return clockLosses + (clockLosses > 0 || ended === null ? 1 : 0);
  }
}
