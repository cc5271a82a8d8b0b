import { type BandWatch, judgeBand, pauseBand, sameStage, startBand } from '../heat/band.ts';
import { type Behaviour, noBehaviour, observe, retuned } from '../iron/behaviour.ts';
import type { ToldDial } from '../iron/dial/mark.ts';
import { noSitting, type Sitting, sit } from '../iron/dial/sitting.ts';
import { coldIron, type IronHeat, judgeHeat } from '../iron/heat.ts';
import type { Place } from '../iron/place.ts';
import type { ProbeId } from '../thermometer/sample.ts';
import { COLD_C, type Thermometer } from '../thermometer/thermometer.ts';
import type { Finding } from './finding.ts';
import type { WatchInput } from './input.ts';

/** The slice of the iron: what it does, and whether it keeps to the stage that is being worked. */
export interface IronSlice {
  /** The probe that the iron's behaviour is read from; null before one has read. */
  readonly leader: ProbeId | null;
  /** The iron's behaviour, as the leading probe reads it. */
  readonly behaviour: Behaviour;
  /** The same as each other probe reads it: one may take the lead, and each has peaks of its own. */
  readonly others: Readonly<Record<ProbeId, Behaviour>>;
  readonly heat: IronHeat;
  readonly band: BandWatch;
  /** What is being learned of its dial, as the leading probe reads it. */
  readonly sitting: Sitting;
}

export const newIron: IronSlice = {
  leader: null,
  behaviour: noBehaviour,
  others: {},
  heat: coldIron,
  band: startBand(null, 0),
  sitting: noSitting,
};

export interface IronFacts {
  readonly tMs: number;
  /** The probes on this iron's plate, the one to lead first. */
  readonly probes: readonly ProbeId[];
  readonly plates: Readonly<Record<ProbeId, Pick<Thermometer, 'reading' | 'lastOk'>>>;
  /** What the plate is at least by a probe that isn't on it for good, degC; null where that tells nothing. */
  readonly atLeastC: (probe: ProbeId) => number | null;
  /** Whether nothing but a hand thermometer tells of the plate. */
  readonly byHandOnly: boolean;
  /** The stage that is being worked, if the user chose one. */
  readonly stage: BandWatch['stage'];
  /** What the user has said of the work. */
  readonly work: {
    readonly place: Place;
    readonly stageId: string | null;
    readonly dial: ToldDial | null;
  };
}

export interface IronStep {
  readonly slice: IronSlice;
  readonly found: readonly Finding[];
}

/** A leading probe that has not read for so long gives the lead away, ms; it doesn't take it back by itself. */
const LEAD_LOST_MS = 10_000;

/** Folds one input into the slice. */
export function stepIron(before: IronSlice, input: WatchInput, facts: IronFacts): IronStep {
  const fitted = input.kind === 'settings' ? withoutGone(before, facts.probes) : before;
  const slice = sameStage(fitted.band.stage, facts.stage) ? fitted : atNewStage(fitted, facts);
  if (input.kind === 'mark' && input.mark.kind === 'typed') return hearHand(slice, input.mark.plateC, facts);
  if (input.kind !== 'sample') return { slice, found: [] };
  const { probe } = input.sample;
  if (!facts.probes.includes(probe)) return hearAtLeast(slice, facts.atLeastC(probe), facts);
  const reading = facts.plates[probe]?.reading;
  if (reading?.quality !== 'ok') return { slice, found: [] };
  return hearPlate(slice, probe, reading.plateC, facts);
}

/** A plate that is known from a check, or a probe whose place has yet to be told, is in use all the same. */
function hearAtLeast(slice: IronSlice, plateC: number | null, facts: IronFacts): IronStep {
  if (plateC === null) return { slice, found: [] };
  const { heat, change } = judgeHeat(slice.heat, facts.tMs, Math.max(plateC, hottestC(facts)));
  return { slice: { ...slice, heat }, found: change === null ? [] : [{ kind: 'heat', change }] };
}

/** One reading by hand makes an iron one in use; it ends that only where nothing else is ever read of it. */
function hearHand(slice: IronSlice, plateC: number, facts: IronFacts): IronStep {
  if (plateC >= COLD_C) return hearAtLeast(slice, plateC, facts);
  return facts.byHandOnly
    ? {
        slice: { ...slice, heat: { ...coldIron, seenMs: facts.tMs } },
        found: [{ kind: 'heat', change: 'cold' }],
      }
    : { slice, found: [] };
}

function hearPlate(slice: IronSlice, probe: ProbeId, plateC: number, facts: IronFacts): IronStep {
  const { tMs } = facts;
  const led = withLeader(slice, leadingProbe(slice.leader, facts));
  const { heat, change } = judgeHeat(slice.heat, tMs, hottestC(facts));
  const heated: Finding[] = change === null ? [] : [{ kind: 'heat', change }];
  if (probe !== led.leader) {
    const { behaviour } = observe(led.others[probe] ?? noBehaviour, tMs, plateC);
    return { slice: { ...led, heat, others: { ...led.others, [probe]: behaviour } }, found: heated };
  }
  const { behaviour, cycle } = observe(led.behaviour, tMs, plateC);
  const found: Finding[] = [];
  if (behaviour.phase !== slice.behaviour.phase) found.push({ kind: 'phase', phase: behaviour.phase });
  if (cycle !== null) found.push({ kind: 'cycle', cycle });
  const regulated = behaviour.phase === 'regulating';
  const band =
    regulated && facts.work.place !== 'on-rest'
      ? judgeBand(led.band, { tMs, plateC }, behaviour.cycles)
      : pauseBand(led.band, tMs, regulated);
  const sat = sit(led.sitting, { tMs, probe, behaviour, cycle, ...facts.work });
  for (const one of sat.found) found.push(one.kind === 'stretch' ? { ...one, probe } : one);
  return { slice: { ...led, behaviour, heat, band, sitting: sat.sitting }, found: [...found, ...heated] };
}

/** The one that leads, as long as it reads; else the first that does. */
function leadingProbe(leader: ProbeId | null, { probes, plates, tMs }: IronFacts): ProbeId | null {
  const lastOk = leader === null ? null : plates[leader]?.lastOk;
  if (lastOk !== null && lastOk !== undefined && tMs - lastOk.tMs <= LEAD_LOST_MS) return leader;
  return probes.find((p) => plates[p]?.reading.quality === 'ok') ?? leader;
}

function withLeader(slice: IronSlice, leader: ProbeId | null): IronSlice {
  if (leader === slice.leader || leader === null) return slice;
  const { [leader]: behaviour = noBehaviour, ...rest } = slice.others;
  const others = slice.leader === null ? rest : { ...rest, [slice.leader]: slice.behaviour };
  return { ...slice, leader, behaviour, others };
}

const hottestC = ({ plates }: IronFacts): number =>
  Math.max(...Object.values(plates).flatMap(({ reading: r }) => (r.quality === 'ok' ? [r.plateC] : [])));

/** A probe that was taken off the iron is not followed any more. */
function withoutGone(slice: IronSlice, probes: readonly ProbeId[]): IronSlice {
  const others = Object.fromEntries(Object.entries(slice.others).filter(([p]) => probes.includes(p)));
  const leads = slice.leader !== null && probes.includes(slice.leader);
  return leads ? { ...slice, others } : { ...slice, others, leader: null, behaviour: noBehaviour };
}

/**
 * Readings of these probes mean something else from now on (a new calibration, another type): what they showed before
 * can't be gone on with. The dial that was told stands, and so does a doubt of it.
 */
export function followedAnew(slice: IronSlice, probes: readonly ProbeId[]): IronSlice {
  const others = Object.fromEntries(Object.entries(slice.others).filter(([p]) => !probes.includes(p)));
  if (slice.leader === null || !probes.includes(slice.leader)) return { ...slice, others };
  const sitting = { ...noSitting, doubtedMs: slice.sitting.doubtedMs };
  return { ...slice, others, behaviour: noBehaviour, sitting };
}

/** Another stage was chosen, or its band was changed: what was seen against the old one is over. */
function atNewStage(slice: IronSlice, { stage, tMs }: IronFacts): IronSlice {
  const band = startBand(stage, tMs);
  if (stage === null) return { ...slice, band };
  const down = slice.band.stage !== null && stage.highC < slice.band.stage.highC;
  const turn = (b: Behaviour): Behaviour => retuned(b, stage, down);
  const others = Object.fromEntries(Object.entries(slice.others).map(([p, b]) => [p, turn(b)]));
  return { ...slice, band, behaviour: turn(slice.behaviour), others };
}
