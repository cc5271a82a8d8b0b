/** What is done with a simulated iron, and what goes wrong with it, as data. */

export type IronPlace = 'on-rest' | 'lifted' | 'on-work';

/**
 * - `open`: the junction is broken, the device says so
 * - `silence`: the device says nothing, though the cable is in
 * - `garbage`: most lines arrive damaged
 * - `runaway`: the thermostat's contacts are stuck closed
 * - `lost`: the cable is pulled; when it is back, the device starts afresh
 */
export type FaultKind = 'open' | 'silence' | 'garbage' | 'runaway' | 'lost';

/** From `atS` on; what it doesn't name stays as it was. */
export interface Turn {
  readonly atS: number;
  /** Mean temperature that the dial asks for, degC; null: switched off. */
  readonly dialC?: number | null;
  readonly place?: IronPlace;
  /** Not moved, wherever it is: on the work a rest on one spot. */
  readonly still?: boolean;
  /** Heat that the cloth draws, as a multiple of the iron's `clothWPerK`. */
  readonly draws?: number;
}

/** How a hand moves an iron over the work: strokes that rest for a moment where they turn. */
export interface Hand {
  readonly strokeCm: number;
  /** From one turn to the next, s. */
  readonly strokeS: number;
  /** How long it rests at each turn, s. */
  readonly turnS: number;
  /** What the cloth's weave and the hand's own tremor give while it glides, g. */
  readonly glideG: number;
}

/** From `fromS` up to but not including `toS`. */
export interface FaultSpan {
  readonly fromS: number;
  readonly toS: number;
  readonly kind: FaultKind;
}

export interface Scenario {
  readonly name: string;
  readonly ambientC: number;
  /** The humidity of the room, which the board's air sensor tells; left out: it has none. */
  readonly rhPct?: number;
  /** It begins again after so long; the iron is then as warm as it is. */
  readonly lengthS: number;
  /** In order of time. */
  readonly turns: readonly Turn[];
  readonly faults: readonly FaultSpan[];
  /** Left out: its motion on the work is one spread, without strokes. */
  readonly hand?: Hand;
}

export interface Conditions {
  readonly dialC: number | null;
  readonly place: IronPlace;
  readonly still: boolean;
  readonly draws: number;
  readonly faults: readonly FaultKind[];
}

type Held = Omit<Conditions, 'faults'>;

const atStart: Held = { dialC: null, place: 'on-rest', still: false, draws: 1 };

/**
 * What holds so many seconds after the start: before the first turn the iron is on its rest, switched off. What each
 * turn sets is worked out once, so that an hour of strokes costs no more at its end than at its beginning; anew where the
 * scenario has got other turns.
 */
export function conditionsOf(scenario: Scenario): (tS: number) => Conditions {
  let known: Scenario['turns'] = [];
  let sets: readonly Held[] = [];
  return (tS) => {
    const { turns, lengthS, faults } = scenario;
    if (turns !== known) {
      known = turns;
      sets = setBy(turns);
    }
    const atS = tS % lengthS;
    const set = sets[lastFrom(turns, atS)] ?? atStart;
    return { ...set, faults: faults.filter((f) => f.fromS <= atS && atS < f.toS).map((f) => f.kind) };
  };
}

function setBy(turns: Scenario['turns']): readonly Held[] {
  const sets: Held[] = [];
  for (const { atS: _atS, ...named } of turns) sets.push({ ...(sets.at(-1) ?? atStart), ...named });
  return sets;
}

/** The place of the last one in order of time that has begun by `atS`; -1: none has. */
export function lastFrom(turns: readonly { readonly atS: number }[], atS: number): number {
  let low = 0;
  let high = turns.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((turns[middle]?.atS ?? Infinity) <= atS) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** An iron left on its rest with its dial at one setting: for tests and for watching a thermostat cycle. */
export const leftOnRest = (dialC: number): Scenario => ({
  name: 'Left on its rest',
  ambientC: 21,
  lengthS: 24 * 3600,
  turns: [{ atS: 0, dialC }],
  faults: [],
});

/** Passes over the work with short lifts between them: `count` passes of `passS`, each followed by `liftS` in the air. */
export function passes(atS: number, count: number, passS: number, liftS: number): readonly Turn[] {
  return Array.from({ length: count }, (_, i) => atS + i * (passS + liftS)).flatMap((fromS) => [
    { atS: fromS, place: 'on-work' as const },
    { atS: fromS + passS, place: 'lifted' as const },
  ]);
}
