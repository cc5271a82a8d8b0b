import { expectedPeakC } from '../iron/behaviour.ts';
import { followReach, noReach } from '../thermometer/lag/heading.ts';
import { deviceOf, type ProbeId } from '../thermometer/sample.ts';
import { estimateOf, qualityOf } from '../thermometer/thermometer.ts';
import { guardBandNowK, restingGuardBandK } from '../thermometer/trust.ts';
import type { WatchInput } from './input.ts';
import type { IronFacts } from './iron.ts';
import { type ProbeFacts, type Seen, seenOfGone, seenOfIron, seenOfProbe } from './seen.ts';
import type { WatchState } from './state.ts';

/** What one slice is told of the others: the only place that looks across them. */

export const ironFacts = ({
  tMs,
  settings,
  thermometers,
  work,
}: Pick<WatchState, 'tMs' | 'settings' | 'thermometers' | 'work'>): IronFacts => ({
  tMs,
  probes: settings?.iron.probes ?? [],
  plates: thermometers,
  stage: settings?.schedule.stages.find((s) => s.id === work.stageId) ?? null,
  work,
});

export interface After {
  readonly seen: readonly Seen[];
  readonly reach: WatchState['reach'];
}

/**
 * What an input can have changed: after a sample the conditions of its probe, and how far its plate usually gets;
 * otherwise all conditions.
 */
export function after(state: WatchState, input: WatchInput): After {
  const ofIron = seenOfIron({
    band: state.band.seen,
    keeping: state.keeping,
    drift: state.settings?.drift ?? null,
  });
  if (input.kind === 'sample') {
    const { probe } = input.sample;
    const facts = probeFacts(state, probe);
    if (facts === null) return { seen: ofIron, reach: state.reach };
    // Judged by what the plate did before: this reading counts from the next one on.
    const reach = { ...state.reach, [probe]: followReach(facts.reach, facts.heading) };
    return { seen: [...seenOfProbe(facts), ...ofIron], reach };
  }
  const probes = Object.keys(state.thermometers);
  const ofGone = seenOfGone(Object.values(state.alarms), probes);
  return { seen: [...probes.flatMap((p) => ofProbe(state, p)), ...ofIron, ...ofGone], reach: state.reach };
}

function ofProbe(state: WatchState, probe: ProbeId): readonly Seen[] {
  const facts = probeFacts(state, probe);
  return facts === null ? [] : seenOfProbe(facts);
}

function probeFacts(state: WatchState, probe: ProbeId): ProbeFacts | null {
  const { settings, thermometers, links, leader, behaviour, others, reach, doubts } = state;
  const t = thermometers[probe];
  const own = settings?.probes.find((p) => p.id === probe);
  if (settings === null || t === undefined || own === undefined) return null;
  const { fabricLimitC } = settings.schedule;
  const trusting = { probe: own, iron: settings.iron };
  const guardBandK = guardBandNowK(trusting, t, fabricLimitC);
  const readC = t.reading.quality === 'ok' ? t.reading.plateC : null;
  const estimate = estimateOf(t, own);
  const followed = probe === leader ? behaviour : others[probe];
  const there = links[deviceOf(probe)]?.link === 'connected';
  return {
    probe,
    quality: qualityOf(t),
    limitC: fabricLimitC - guardBandK,
    // A probe whose lag is known tells where the plate is ahead of it.
    highestC: readC === null ? null : Math.max(readC, estimate?.plateC ?? readC),
    heading: {
      readC,
      estimate,
      // At rest: how far the plate may be ahead of the probe is counted in the estimate itself.
      limitC: fabricLimitC - restingGuardBandK(trusting, fabricLimitC),
      expectedPeakC: followed === undefined ? null : expectedPeakC(followed),
    },
    reach: reach[probe] ?? noReach,
    suspicion: doubts[probe]?.suspicion ?? null,
    mayBeHot: t.heat === 'hot' || (t.heat === 'unknown' && there),
  };
}
