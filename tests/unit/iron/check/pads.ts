import { bigIron } from '../../../../daemon/probe/simulated/irons.ts';
import { followPlate, type ProbeTraits, probeText } from '../../../../daemon/probe/simulated/probe.ts';
import { leftOnRest } from '../../../../daemon/probe/simulated/scenario.ts';
import { simulateIron } from '../../../../daemon/probe/simulated/simulated-iron.ts';
import { type CheckFound, emptyPad, onPad, type Pad } from '../../../../shared/iron/check/pad.ts';

/** A check pad for tests: what lies on it, and what it reads. */

const ROOM_C = 21;

export interface PadTraits extends ProbeTraits {
  /** How slowly the bare pad comes to the room's temperature, s. */
  readonly airS: number;
  readonly everyS: number;
}

export const demoPad: PadTraits = {
  lagS: 6,
  airS: 60,
  noiseK: 0,
  resolutionK: 0.001,
  offsetK: 0,
  everyS: 0.5,
};

/** `plate`: temperature of what lies on it after so many seconds, degC; null: nothing does. */
export type Lies = (s: number) => number | null;

export interface Run {
  readonly pad: Pad;
  readonly found: readonly CheckFound[];
  readonly readC: readonly number[];
  /** The recogniser after each reading. */
  readonly pads: readonly { readonly s: number; readonly pad: Pad }[];
}

/** Lets a pad live for so long, and gives what is recognised. */
export function live(
  forS: number,
  plate: Lies,
  traits: PadTraits = demoPad,
  knows: { readonly tauS: number | null; readonly uK: number } = { tauS: traits.lagS, uK: 2 },
): Run {
  let pad = emptyPad;
  let junctionC = ROOM_C;
  let seed = 7;
  const found: CheckFound[] = [];
  const readC: number[] = [];
  const pads: { s: number; pad: Pad }[] = [];
  for (let s = 0; s <= forS; s += traits.everyS) {
    const text = probeText(traits, junctionC, seed);
    seed = text.seed;
    const padC = Number(text.text);
    readC.push(padC);
    const step = onPad(pad, { tMs: Math.round(1000 * s), padC, ...knows });
    pad = step.pad;
    found.push(...step.found);
    pads.push({ s, pad });
    const fromC = plate(s);
    const toC = plate(s + traits.everyS);
    const bare = fromC === null || toC === null;
    const way = { fromC: fromC ?? ROOM_C, toC: toC ?? ROOM_C, dtS: traits.everyS };
    junctionC = bare
      ? followPlate(traits.airS, junctionC, { fromC: ROOM_C, toC: ROOM_C, dtS: traits.everyS })
      : followPlate(traits.lagS, junctionC, way);
  }
  return { pad, found, readC, pads };
}

/** An iron of one temperature that lies on the pad from `fromS` until `toS`. */
export const parked =
  (plateC: number, fromS: number, toS: number): Lies =>
  (s) =>
    s >= fromS && s < toS ? plateC : null;

/** The true plate of the big demo iron under its thermostat, parked likewise, second by second. */
export function cycling(dialC: number, fromS: number, toS: number): Lies {
  const iron = simulateIron(bigIron, leftOnRest(dialC), 1);
  const plates: number[] = [];
  let state = iron.start;
  while (state.tMs <= (toS + 2) * 1000) {
    if (state.tMs % 500 === 0) plates.push(state.body.plateC);
    state = iron.next(state).state;
  }
  return (s) => (s >= fromS && s < toS ? (plates[Math.round(2 * s)] ?? null) : null);
}
