import type { HeatSchedule, HeatStage } from '../../../shared/heat/schedule.ts';

/** Where everything stands on the ladder, in percent of its height from the top. Pure geometry. */

export interface Band {
  readonly stages: readonly HeatStage[];
  readonly lowC: number;
  readonly highC: number;
  readonly topPct: number;
  readonly heightPct: number;
  /** Bands that overlap stand side by side. */
  readonly lane: number;
}

export type LabelSubject =
  | { readonly kind: 'band'; readonly band: Band }
  | { readonly kind: 'fabric-limit'; readonly c: number }
  | { readonly kind: 'cement-limit'; readonly c: number | null };

export interface Label {
  readonly subject: LabelSubject;
  /** Where its subject stands, and where there is room for its words. */
  readonly atPct: number;
  readonly labelPct: number;
}

export interface Ladder {
  readonly bands: readonly Band[];
  readonly lanes: number;
  readonly labels: readonly Label[];
  readonly limitPct: number;
  readonly cementPct: number | null;
  /** Where the warning begins: the limit less the allowance. */
  readonly warnPct: number;
  pct(c: number): number;
}

/** The foot of the scale, degC: about where a plate may be called measured cold. */
const FOOT_C = 40;
/** Room above the fabric limit, as a part of the whole scale. */
const HEAD = 0.1;
/** A limit that is not set has no place: its words stand at the foot. */
const UNSET_PCT = 100;
/** The most room that a label asks for, percent; with many labels they share what there is. */
const LABEL_PCT = 12;

export function layOut(schedule: HeatSchedule, guardBandK: number): Ladder {
  const highest = Math.max(schedule.fabricLimitC, ...schedule.stages.map((stage) => stage.highC));
  const lowest = Math.min(FOOT_C, ...schedule.stages.map((stage) => stage.lowC));
  const topC = highest + (highest - lowest) * HEAD;
  const pct = (c: number): number => clamp(((topC - c) / (topC - lowest)) * 100);
  const bands = inLanes(mergeAlike(schedule.stages), pct);
  return {
    bands,
    lanes: Math.max(1, ...bands.map((band) => band.lane + 1)),
    labels: labelled(schedule, bands, pct),
    limitPct: pct(schedule.fabricLimitC),
    cementPct: schedule.cementLimitC === null ? null : pct(schedule.cementLimitC),
    warnPct: pct(schedule.fabricLimitC - guardBandK),
    pct,
  };
}

const clamp = (pct: number): number => Math.min(100, Math.max(0, pct));

/** Stages with the same band share it. */
function mergeAlike(stages: readonly HeatStage[]): readonly (readonly HeatStage[])[] {
  const groups = new Map<string, HeatStage[]>();
  for (const stage of stages) {
    const key = `${stage.lowC} ${stage.highC}`;
    groups.set(key, [...(groups.get(key) ?? []), stage]);
  }
  return [...groups.values()];
}

function inLanes(groups: readonly (readonly HeatStage[])[], pct: (c: number) => number): readonly Band[] {
  const bands: Band[] = [];
  for (const stages of groups) {
    const [first] = stages;
    if (first === undefined) continue;
    const { lowC, highC } = first;
    const overlapping = bands.filter((other) => other.lowC < highC && lowC < other.highC);
    const taken = new Set(overlapping.map((other) => other.lane));
    let lane = 0;
    while (taken.has(lane)) lane += 1;
    bands.push({ stages, lowC, highC, lane, topPct: pct(highC), heightPct: pct(lowC) - pct(highC) });
  }
  return bands;
}

function labelled(
  schedule: HeatSchedule,
  bands: readonly Band[],
  pct: (c: number) => number,
): readonly Label[] {
  const limitPct = pct(schedule.fabricLimitC);
  const { cementLimitC } = schedule;
  const wanted: { readonly subject: LabelSubject; readonly atPct: number }[] = [
    { subject: { kind: 'fabric-limit', c: schedule.fabricLimitC }, atPct: limitPct },
    {
      subject: { kind: 'cement-limit', c: cementLimitC },
      atPct: cementLimitC === null ? UNSET_PCT : pct(cementLimitC),
    },
    ...bands.map((band) => ({
      subject: { kind: 'band' as const, band },
      atPct: band.topPct + band.heightPct / 2,
    })),
  ];
  const sorted = wanted.toSorted((a, b) => a.atPct - b.atPct);
  const places = spread(
    sorted.map((one) => one.atPct),
    Math.min(LABEL_PCT, 100 / sorted.length),
  );
  return sorted.map((one, i) => ({ ...one, labelPct: places[i] ?? one.atPct }));
}

/**
 * Moves places apart until they are `gap` from each other and half of it from either end, each no further than it has
 * to. `wanted` must rise; the answer is in the same order.
 */
export function spread(wanted: readonly number[], gap: number): readonly number[] {
  const places: number[] = [];
  for (const want of wanted) places.push(Math.max(want, (places.at(-1) ?? -gap / 2) + gap));
  let below = 100 + gap / 2;
  for (let i = places.length - 1; i >= 0; i--) {
    below = Math.min(places[i] ?? below, below - gap);
    places[i] = below;
  }
  return places;
}

/** Room that the ladder needs, in labels. */
export const roomFor = (ladder: Ladder): number => ladder.labels.length;
