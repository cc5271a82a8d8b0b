import { expectedPeakC } from '../iron/behaviour.ts';
import { deviceOf, type ProbeId } from '../thermometer/sample.ts';
import { qualityOf, slopeOf } from '../thermometer/thermometer.ts';
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
  onRest: work.place === 'on-rest',
});

/** The conditions that an input can have changed: those of one probe after its sample, all of them otherwise. */
export function seenAfter(state: WatchState, input: WatchInput): readonly Seen[] {
  const ofIron = seenOfIron({ band: state.band.seen, keeping: state.keeping });
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
  const { settings, thermometers, links, leader, behaviour, others } = state;
  const t = thermometers[probe];
  const own = settings?.probes.find((p) => p.id === probe);
  if (settings === null || t === undefined || own === undefined) return null;
  const followed = probe === leader ? behaviour : others[probe];
  const there = links[deviceOf(probe)]?.link === 'connected';
  return {
    probe,
    quality: qualityOf(t),
    plateC: t.reading.quality === 'ok' ? t.reading.plateC : null,
    slopeKPerS: slopeOf(t),
    limitC: settings.schedule.fabricLimitC - own.guardBandK,
    expectedPeakC: followed === undefined ? null : expectedPeakC(followed),
    mayBeHot: t.heat === 'hot' || (t.heat === 'unknown' && there),
  };
}
