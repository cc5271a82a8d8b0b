import { type Motion, noMotion, stepMotion } from '../iron/motion/motion.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import type { WatchInput, WatchSettings } from './input.ts';

/** The slice of whether the iron moves, by each probe's line. A line without a motion check has none. */
export type Motions = Readonly<Record<ProbeId, Motion>>;

export const noMotions: Motions = {};

/** Folds one input into the slice; a moment without a value lets what is known grow old. */
export function stepMotions(
  before: Motions,
  input: WatchInput,
  { iron, probes }: Pick<WatchSettings, 'iron' | 'probes'>,
  tMs: number,
): Motions {
  let motions = input.kind === 'settings' ? only(before, iron.probes) : before;
  const sample = input.kind === 'sample' ? input.sample : null;
  for (const { id, motion: check = null } of probes) {
    const was = motions[id];
    if ((was === undefined && check === null) || !iron.probes.includes(id)) continue;
    const motionG = sample?.probe === id ? sample.motionG : null;
    const now = stepMotion(was ?? noMotion, { tMs, motionG, check });
    if (now !== was) motions = { ...motions, [id]: now };
  }
  return motions;
}

const only = (motions: Motions, probes: readonly ProbeId[]): Motions =>
  Object.fromEntries(Object.entries(motions).filter(([id]) => probes.includes(id)));

/** What the iron does: one line that tells is enough, and the one that says that it moves is believed. */
export function motionOf(motions: Motions): Motion {
  const known = Object.values(motions).filter(({ is }) => is !== 'unknown');
  return known.find(({ is }) => is === 'moving') ?? known[0] ?? noMotion;
}
