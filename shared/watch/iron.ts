import { idleBand, judgeBand, startBand } from '../heat/band.ts';
import { forget, observe } from '../iron/behaviour.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import type { Finding } from './finding.ts';
import type { WatchState } from './state.ts';

/** The slices of the iron's behaviour and of the band that it should keep to. */

export interface IronStep {
  readonly slice: Pick<WatchState, 'leader' | 'behaviour' | 'band'>;
  readonly found: readonly Finding[];
}

/** Takes in the reading that `probe` has just given, where it is the leading probe's. */
export function stepIron(state: WatchState, probe: ProbeId): IronStep {
  const leader = leadingProbe(state);
  const reading = state.readings[probe];
  if (probe !== leader || reading?.quality !== 'ok') {
    return { slice: { leader: state.leader, behaviour: state.behaviour, band: state.band }, found: [] };
  }
  const known = leader === state.leader ? state.behaviour : forget(state.behaviour);
  const { behaviour, cycle, heat } = observe(known, state.tMs, reading.plateC);
  const found: Finding[] = [];
  if (behaviour.phase !== state.behaviour.phase) found.push({ kind: 'phase', phase: behaviour.phase });
  if (cycle !== null) found.push({ kind: 'cycle', cycle });
  if (heat !== null) found.push({ kind: 'heat', change: heat });
  const band = stepBand({ ...state, behaviour }, reading.plateC);
  return { slice: { leader, behaviour, band }, found };
}

/** The first of the iron's probes that reads; where none does, the one that led before. */
function leadingProbe({ settings, readings, leader }: WatchState): ProbeId | null {
  return settings?.iron.probes.find((p) => readings[p]?.quality === 'ok') ?? leader;
}

/** A band is judged while a stage is being worked and the plate is regulated, never on its rest. */
function stepBand(state: WatchState, plateC: number): WatchState['band'] {
  const { behaviour, work, settings, band, tMs } = state;
  const stage = settings?.schedule.stages.find((s) => s.id === work.stageId);
  if (stage === undefined || behaviour.phase !== 'regulating' || work.place === 'on-rest') return idleBand;
  const going = band.verdict === 'not-judged' ? startBand(tMs) : band;
  return judgeBand(going, { tMs, plateC }, behaviour.cycles, stage);
}
