import { followReach, noReach } from '../alarm/heading.ts';
import { lowerLimitC } from '../cure/facts.ts';
import { USUAL_REST_LIMIT_S } from '../heat/schedule.ts';
import type { Contact } from '../heat/work/ironing.ts';
import { expectedPeakC } from '../iron/behaviour.ts';
import { saysCold } from '../iron/check/pad.ts';
import { restOnSpotMs } from '../iron/motion/rest.ts';
import { type Seat, seatOf, watchedHow } from '../thermometer/place.ts';
import { deviceOf, type ProbeId } from '../thermometer/sample.ts';
import { COLD_C, estimateOf, qualityOf, type Thermometer } from '../thermometer/thermometer.ts';
import { guardBandNowK, restingGuardBandK, type Trusting } from '../thermometer/trust.ts';
import { unattended, usualUnattended } from './attended.ts';
import type { Checks } from './checks.ts';
import { isHot, isHotNow, isInUse } from './hot.ts';
import type { WatchInput, WatchSettings } from './input.ts';
import type { IronFacts } from './iron.ts';
import { motionOf } from './motions.ts';
import { type ProbeFacts, type Seen, seenOfGone, seenOfIron, seenOfProbe } from './seen.ts';
import { seenOfWork, type WorkFacts } from './seen-work.ts';
import type { WatchState } from './state.ts';

/** What one slice is told of the others: the only place that looks across them. */

export function ironFacts(
  state: Pick<WatchState, 'tMs' | 'settings' | 'thermometers' | 'work' | 'checks'>,
): IronFacts {
  const { tMs, settings, thermometers, work } = state;
  const probes = (settings?.iron.probes ?? []).filter((p) => seatIn(state, p) === 'fitted');
  const plates = Object.fromEntries(probes.flatMap((p) => (thermometers[p] ? [[p, thermometers[p]]] : [])));
  return {
    tMs,
    probes,
    plates,
    atLeastC: (probe) => atLeastC(state, probe),
    byHandOnly: settings !== null && watchedHow(ownProbes(settings), settings.iron.id) === 'typed',
    stage: settings?.schedule.stages.find((s) => s.id === work.stageId) ?? null,
    work,
  };
}

/** The probes of this iron's settings that sit on it. */
const ownProbes = ({ iron, probes }: WatchSettings): WatchSettings['probes'] =>
  probes.filter((p) => iron.probes.includes(p.id));

function seatIn({ settings }: Pick<WatchState, 'settings'>, id: ProbeId): Seat {
  const probe = settings?.probes.find((p) => p.id === id);
  return settings === null || probe === undefined ? 'fitted' : seatOf(probe, settings.iron.id);
}

/**
 * What the plate is at least by a probe that isn't on it for good, degC; null where that tells nothing. Neither a pad that
 * may be bare nor a probe whose place was not told makes a plate cold.
 */
function atLeastC(
  state: Pick<WatchState, 'settings' | 'thermometers' | 'checks'>,
  id: ProbeId,
): number | null {
  const reading = state.thermometers[id]?.reading;
  if (reading?.quality !== 'ok') return null;
  const seat = seatIn(state, id);
  if (seat === 'not-told') return Math.max(COLD_C, reading.plateC);
  const contact = seat === 'check-pad' ? (state.checks.pads[id]?.contact ?? null) : null;
  if (contact === null) return null;
  return saysCold(contact) ? reading.plateC : Math.max(COLD_C, reading.plateC);
}

/**
 * What touches the work: the plate as its leading probe reads it.
 * @param onWork false: nothing does, so that nothing need be known of it
 */
export function contactFacts(
  state: Pick<WatchState, 'tMs' | 'settings' | 'thermometers' | 'work' | 'leader' | 'motions'>,
  onWork: boolean,
): Contact {
  const { tMs, settings, thermometers, work, leader, motions } = state;
  const moving = motionOf(motions).is === 'moving';
  const stages = settings?.schedule.stages ?? [];
  const stage = stages.find((s) => s.id === work.stageId) ?? null;
  const probe = settings?.probes.find((p) => p.id === leader);
  const t = leader === null ? undefined : thermometers[leader];
  if (!onWork || settings === null || probe === undefined || t?.reading.quality !== 'ok')
    return { tMs, plate: null, moving, stages, stage };
  const { iron, schedule } = settings;
  const guardBandK = guardBandNowK({ probe, iron }, t, schedule.fabricLimitC);
  return { tMs, plate: { plateC: t.reading.plateC, guardBandK }, moving, stages, stage };
}

/** How long it has rested on one spot, ms; null where that is not measured. */
function restMs(state: WatchState): number | null {
  const { tMs, work, motions, settings } = state;
  const plateC = leadingC(state);
  const lowestC = Math.min(...(settings?.schedule.stages ?? []).map((s) => s.lowC));
  const hot = plateC === null ? isHot(state) : plateC >= lowestC;
  const inHand = work.place === 'unknown' ? null : work.place !== 'on-rest';
  const facts = { tMs, hot, place: work.place, inHand, thereFromMs: work.saidMs };
  return restOnSpotMs(motionOf(motions), facts);
}

function leadingC({ leader, thermometers }: WatchState): number | null {
  const reading = leader === null ? undefined : thermometers[leader]?.reading;
  return reading?.quality === 'ok' ? reading.plateC : null;
}

function workFacts(state: WatchState): WorkFacts {
  const { tMs, work, ironing, attended, behaviour, settings } = state;
  const stage = settings?.schedule.stages.find((s) => s.id === work.stageId);
  // A plate that only loses its heat was switched off: somebody did that.
  const powered = isHotNow(state) && behaviour.phase !== 'cooling';
  return {
    onWork: work.place === 'on-work',
    at: work.at,
    facts: work.facts,
    coats: work.coats,
    inUse: isInUse(state),
    plateC: leadingC(state),
    contactMs: ironing.visit?.contactMs ?? 0,
    restMs: restMs(state),
    restLimitMs: (stage?.restLimitS ?? USUAL_REST_LIMIT_S) * 1000,
    unattended: unattended(attended, settings?.unattended ?? usualUnattended, tMs, powered),
  };
}

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
    typed: typedNow(state),
    fabricLimitC: state.settings?.schedule.fabricLimitC ?? Number.POSITIVE_INFINITY,
  });
  const ofWork = seenOfWork(workFacts(state));
  if (input.kind === 'sample') {
    const { probe } = input.sample;
    const facts = probeFacts(state, probe);
    if (facts === null) return { seen: [...ofIron, ...ofWork], reach: state.reach };
    // Judged by what the plate did before: this reading counts from the next one on.
    const reach = { ...state.reach, [probe]: followReach(facts.reach, facts.heading) };
    return { seen: [...seenOfProbe(facts), ...ofIron, ...ofWork], reach };
  }
  const probes = Object.keys(state.thermometers).filter((p) => seatIn(state, p) !== 'loose');
  const ofGone = seenOfGone(Object.values(state.alarms), probes);
  const ofProbes = probes.flatMap((p) => ofProbe(state, p));
  return { seen: [...ofProbes, ...ofIron, ...ofWork, ...ofGone], reach: state.reach };
}

/** A plate that is followed tells more than what was typed so long before, ms. */
const TYPED_COUNTS_MS = 60_000;

/** What was typed last, until a later check, or a probe on the plate that has read for a while since. */
function typedNow({ tMs, settings, checks, thermometers }: WatchState): Checks['typed'] {
  const { typed, last } = checks;
  if (typed === null || settings === null || (last?.settledMs ?? 0) > typed.atMs) return null;
  if (tMs - typed.atMs < TYPED_COUNTS_MS) return typed;
  const { id, probes } = settings.iron;
  const reads = settings.probes.some(
    (p) =>
      probes.includes(p.id) && seatOf(p, id) === 'fitted' && thermometers[p.id]?.reading.quality === 'ok',
  );
  return reads ? null : typed;
}

function ofProbe(state: WatchState, probe: ProbeId): readonly Seen[] {
  const facts = probeFacts(state, probe);
  return facts === null ? [] : seenOfProbe(facts);
}

/**
 * The cement limit with the guard band taken off: the schedule's on a bonded edge or tape, and that of the cement itself
 * where a coat of it is. The lower one holds.
 */
function cementLimitNowC({ settings, work }: WatchState, trusting: Trusting, t: Thermometer): number | null {
  if (work.place !== 'on-work') return null;
  const limitC = lowerLimitC(work.at?.bonded === true ? settings?.schedule.cementLimitC : null, work.coats);
  return limitC === null ? null : limitC - guardBandNowK(trusting, t, limitC);
}

function probeFacts(state: WatchState, probe: ProbeId): ProbeFacts | null {
  const { settings, thermometers, links, leader, behaviour, others, reach, checks, doubts } = state;
  const t = thermometers[probe];
  const own = settings?.probes.find((p) => p.id === probe);
  if (settings === null || t === undefined || own === undefined) return null;
  const { fabricLimitC } = settings.schedule;
  const trusting = { probe: own, iron: settings.iron };
  const seat = seatOf(own, settings.iron.id);
  if (seat === 'loose') return null;
  const onPad = seat === 'check-pad';
  const guardBandK = guardBandNowK(trusting, t, fabricLimitC);
  const readC = t.reading.quality === 'ok' ? t.reading.plateC : null;
  // How a check pad moves says nothing of where its plate goes.
  const estimate = onPad ? null : estimateOf(t, own);
  const followed = probe === leader ? behaviour : others[probe];
  const there = links[deviceOf(probe)]?.link === 'connected';
  return {
    probe,
    onPad,
    quality: qualityOf(t),
    limitC: fabricLimitC - guardBandK,
    cementLimitC: cementLimitNowC(state, trusting, t),
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
    // A pad that nothing lies on may be silent.
    mayBeHot: onPad
      ? (checks.pads[probe]?.contact ?? null) !== null
      : t.heat === 'hot' || (t.heat === 'unknown' && there),
  };
}
