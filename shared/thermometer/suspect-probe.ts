import { emfUv, hotJunctionC } from '../thermocouple/thermocouple.ts';
import { type ThermocoupleType, thermocoupleTypes } from '../thermocouple/types.ts';
import { COLD_C } from './thermometer.ts';

/**
 * A thermocouple that is read as another type, or whose wires are swapped, gives believable numbers. What an iron does
 * gives it away. Suspicions, never faults: the user is asked to look.
 */
export type Suspicion =
  | { readonly kind: 'reversed'; readonly likely: null }
  /** `likely` is the type that would explain it; null where none of ours does. */
  | { readonly kind: 'type'; readonly likely: ThermocoupleType | null };

/** Where a plate last stood cold, by its readings, and since when. */
export interface Standing {
  readonly sinceMs: number;
  readonly stoodMs: number;
  readonly stoodC: number;
}

const STANDS_K = 1;
/** For so long it must have stood, ms: a probe that was taken off a hot plate cools as quickly as this falls. */
const STANDS_MS = 20_000;
/** A reading that falls so far in so short a time is no room that gets colder, K and ms (our own choice). */
const FALLS_K = 15;
const FALLS_WITHIN_MS = 180_000;
/** And it must be so far under the cold junction, K: a board may stand in a warmer place than the iron. */
const UNDER_JUNCTION_K = 10;
/** No plate in any shop is so cold, degC: a hot one with swapped wires is (our own choice). */
const NO_SHOP_C = -30;

/**
 * Looks for swapped wires: as heat comes on, the reading falls under where the plate stood cold.
 * @param before null to begin with; what it returns, after that
 * @param coldJunctionC null where the device doesn't tell it
 */
export function watchForReversed(
  before: Standing | null,
  reading: { readonly tMs: number; readonly plateC: number; readonly coldJunctionC: number | null },
): { readonly standing: Standing | null; readonly suspicion: Suspicion | null } {
  const { tMs, plateC, coldJunctionC } = reading;
  const reversed: Suspicion = { kind: 'reversed', likely: null };
  if (plateC < NO_SHOP_C) return { standing: before, suspicion: reversed };
  if (plateC >= COLD_C) return { standing: null, suspicion: null };
  const here = { sinceMs: tMs, stoodMs: tMs, stoodC: plateC };
  if (before === null) return { standing: here, suspicion: null };
  if (plateC > before.stoodC + STANDS_K || tMs - before.stoodMs > FALLS_WITHIN_MS)
    return { standing: here, suspicion: null };
  if (plateC >= before.stoodC - STANDS_K) return { standing: { ...before, stoodMs: tMs }, suspicion: null };
  const under = coldJunctionC === null || plateC < coldJunctionC - UNDER_JUNCTION_K;
  const stood = before.stoodMs - before.sinceMs >= STANDS_MS;
  const fallen = stood && plateC <= before.stoodC - FALLS_K;
  return { standing: before, suspicion: fallen && under ? reversed : null };
}

/**
 * No household iron's thermostat keeps its plate out of this, degC. Upper: 200 allowed at three dots (ISO 3758), and
 * over that half of the widest swing measured (31 K, Schneider), a quarter of the 200 for a dial that is off, rounded;
 * it is a mean that is held against it. Lower: 43 is measured cold, and no iron's lowest mark is that cool.
 */
export const HOUSEHOLD_MEAN_C = { min: 55, max: 265 } as const;

/** A mean this far from the chart asks for a reason, and one this near to it after another type's table is one, K. */
const OFF_CHART_K = 8;
const ON_CHART_K = 3;
/** Stands in for a cold junction that the device doesn't tell, degC: a shop. */
const SHOP_C = 22;

export interface MeanSeen {
  /** The type that readings are made with, by us or by the device. */
  readonly type: ThermocoupleType;
  /** Mean over whole cycles, degC. */
  readonly meanC: number;
  readonly coldJunctionC: number | null;
  /** What the iron's own chart has at the same mark, degC; null where it has none. */
  readonly chartC: number | null;
}

/**
 * Looks for a wrong thermocouple type: the mean over whole cycles is not an iron's, or is off the iron's own chart by
 * just what reading another type's emf as this one's would do. Ask it once of a probe that is new to its iron: a drift
 * can look alike.
 */
export function suspectType(seen: MeanSeen): Suspicion | null {
  const { meanC, chartC } = seen;
  const { min, max } = HOUSEHOLD_MEAN_C;
  const odd = meanC < min || meanC > max;
  if (chartC !== null && Math.abs(meanC - chartC) >= OFF_CHART_K) {
    const likely = typeThatReads(seen, chartC);
    if (likely !== null) return { kind: 'type', likely };
  }
  return odd ? { kind: 'type', likely: null } : null;
}

/** The type by whose table the same emf comes nearest to `expectedC`, if it comes near at all. */
function typeThatReads({ type, meanC, coldJunctionC }: MeanSeen, expectedC: number): ThermocoupleType | null {
  const junctionC = coldJunctionC ?? SHOP_C;
  const terminalUv = terminalUvOf(type, meanC, junctionC);
  if (terminalUv === null) return null;
  let best: { readonly type: ThermocoupleType; readonly offK: number } | null = null;
  for (const other of thermocoupleTypes) {
    const readC = other === type ? null : hotJunctionC(other, terminalUv, junctionC);
    const offK = readC === null ? Number.POSITIVE_INFINITY : Math.abs(readC - expectedC);
    if (offK <= ON_CHART_K && (best === null || offK < best.offK)) best = { type: other, offK };
  }
  return best === null ? null : best.type;
}

function terminalUvOf(type: ThermocoupleType, hotC: number, junctionC: number): number | null {
  const hotUv = emfUv(type, hotC);
  const coldUv = emfUv(type, junctionC);
  return hotUv === null || coldUv === null ? null : hotUv - coldUv;
}

/** A suspicion as an alarm's detail, and back; null for any other text. */
export const suspicionDetail = ({ kind, likely }: Suspicion): string =>
  likely === null ? kind : `${kind} ${likely}`;

export function readSuspicionDetail(detail: string): Suspicion | null {
  if (detail === 'reversed') return { kind: 'reversed', likely: null };
  if (detail === 'type') return { kind: 'type', likely: null };
  const likely = thermocoupleTypes.find((type) => detail === `type ${type}`);
  return likely === undefined ? null : { kind: 'type', likely };
}
