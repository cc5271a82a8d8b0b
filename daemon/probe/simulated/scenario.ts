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
  /** It begins again after so long; the iron is then as warm as it is. */
  readonly lengthS: number;
  /** In order of time. */
  readonly turns: readonly Turn[];
  readonly faults: readonly FaultSpan[];
}

export interface Conditions {
  readonly dialC: number | null;
  readonly place: IronPlace;
  readonly faults: readonly FaultKind[];
}

/** What holds `tS` seconds after the start: before the first turn the iron is on its rest, switched off. */
export function conditionsAt(scenario: Scenario, tS: number): Conditions {
  const atS = tS % scenario.lengthS;
  let dialC: number | null = null;
  let place: IronPlace = 'on-rest';
  for (const turn of scenario.turns) {
    if (turn.atS > atS) break;
    if (turn.dialC !== undefined) dialC = turn.dialC;
    if (turn.place !== undefined) place = turn.place;
  }
  const faults = scenario.faults.filter((f) => f.fromS <= atS && atS < f.toS).map((f) => f.kind);
  return { dialC, place, faults };
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
