import { expectedPeakC } from '../iron/behaviour.ts';
import { followReach, noReach } from '../thermometer/lag/heading.ts';
import { deviceOf, type ProbeId } from '../thermometer/sample.ts';
import { estimateOf, qualityOf } from '../thermometer/thermometer.ts';
import { budgetOfNow, restingGuardBandK } from '../thermometer/trust.ts';
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

/** The conditions that an input can have changed: those of one probe after its sample, all of them otherwise. */
export function seenAfter(state: WatchState, input: WatchInput): readonly Seen[] {
  const ofIron = seenOfIron({
    band: state.band.seen,
    keeping: state.keeping,
    drift: state.settings?.drift ?? null,
  });
  if (input.kind === 'sample') return [...ofProbe(state, input.sample.probe), ...ofIron];
  const probes = Object.keys(state.thermometers);
  const ofGone = seenOfGone(Object.values(state.alarms), probes);
  return [...probes.flatMap((p) => ofProbe(state, p)), ...ofIron, ...ofGone];
}

function ofProbe(state: WatchState, probe: ProbeId): readonly Seen[] {
  const facts = probeFacts(state, probe);
  return facts === null ? [] : seenOfProbe(facts);
}

function probeFacts(state: WatchState, probe: ProbeId): ProbeFacts | null {
  const { settings, thermometers, links, leader, behaviour, others, reach } = state;
  const t = thermometers[probe];
  const own = settings?.probes.find((p) => p.id === probe);
  if (settings === null || t === undefined || own === undefined) return null;
  const { fabricLimitC } = settings.schedule;
  const trusting = { probe: own, iron: settings.iron };
  const guardBandK = budgetOfNow(trusting, t)?.guardBandK ?? restingGuardBandK(trusting, fabricLimitC);
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
    mayBeHot: t.heat === 'hot' || (t.heat === 'unknown' && there),
  };
}

/** How far each probe's plate usually gets, after one more sample; of no use to anybody but the warning. */
export function reachAfter(state: WatchState, input: WatchInput): WatchState['reach'] {
  if (input.kind !== 'sample') return state.reach;
  const { probe } = input.sample;
  const facts = probeFacts(state, probe);
  return facts === null ? state.reach : { ...state.reach, [probe]: followReach(facts.reach, facts.heading) };
}
