import type { Behaviour } from '../../shared/iron/behaviour.ts';
import { madeWithOf } from '../../shared/iron/dial/chart.ts';
import { type Evenness, evennessOf, expandedK, type Spot } from '../../shared/iron/evenness.ts';
import type { Iron } from '../../shared/iron/iron.ts';
import {
  expectedOverK,
  objectionToSpot,
  overProbeK,
  type TypedSpot,
  typedEvenness,
  unevennessFor,
} from '../../shared/iron/spots.ts';
import type { EvennessShown, IronEvenness, SpotDraft } from '../../shared/messages/evenness.ts';
import { slopeOf } from '../../shared/thermometer/thermometer.ts';
import { restingBudget } from '../../shared/thermometer/trust.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { evennessWords } from '../../shared/words/evenness.ts';
import { Refusal } from '../refusal.ts';
import { plateOf, type Settings } from '../settings/settings.ts';

/** How evenly an iron's plate is hot: what its probes show while it is watched, and what was typed. */

/** So many of the last whole cycles are looked at: the dial may have been turned before them. */
const LAST_CYCLES = 3;

/** The plate where one probe sits, degC: mean over its last whole cycles; null where it isn't regulated. */
function meanC({ phase, cycles, smooth }: Behaviour): number | null {
  if (phase !== 'regulating') return null;
  const last = cycles.slice(-LAST_CYCLES);
  const spanMs = last.reduce((sum, c) => sum + c.toMs - c.fromMs, 0);
  if (spanMs > 0) return last.reduce((sum, c) => sum + c.meanC * (c.toMs - c.fromMs), 0) / spanMs;
  // One that is held without a swing has no cycles.
  return smooth?.levelC ?? null;
}

/** The evenness that two or more probes on a plate show; null where fewer than two read a regulated plate. */
export function probesEvenness({
  settings,
  leader,
  behaviour,
  others,
  thermometers,
}: WatchState): Evenness | null {
  if (settings === null || leader === null || settings.probes.length < 2) return null;
  const spots = settings.probes.flatMap((probe): readonly Spot[] => {
    const followed = probe.id === leader ? behaviour : others[probe.id];
    const plateC = followed === undefined ? null : meanC(followed);
    if (plateC === null || thermometers[probe.id]?.reading.quality !== 'ok') return [];
    const { uK } = restingBudget({ probe, iron: settings.iron }, plateC);
    return [{ at: probe.id, plateC, uK }];
  });
  return evennessOf(spots, leader);
}

const shown = (by: EvennessShown['by'], evenness: Evenness | null, lead: string): EvennessShown | null =>
  evenness === null
    ? null
    : {
        by,
        hottest: evenness.hottest.at,
        coldest: evenness.coldest.at,
        spreadK: evenness.spreadK,
        offByK: expandedK(evenness.spreadUK),
        lead,
        overLeadK: evenness.overLeadK,
        count: evenness.count,
      };

/** What is shown of an iron's plate: what its probes see now, else what was typed. */
export const evennessShown = (
  settings: Settings,
  iron: Iron,
  state: WatchState | null,
): EvennessShown | null =>
  probesShown(state) ?? shown('typed', typedEvenness(plateOf(settings, iron)), 'probe');

const probesShown = (state: WatchState | null): EvennessShown | null =>
  state === null ? null : shown('probes', probesEvenness(state), state.leader ?? '');

/** All that is known of how evenly an iron's plate is hot. */
export function evennessAnswer(settings: Settings, iron: Iron, state: WatchState | null): IronEvenness {
  const plate = plateOf(settings, iron);
  const lead = leadOf(iron, state);
  return {
    iron: iron.id,
    simulated: iron.simulated,
    spots: plate.spots.map((spot) => ({ ...spot, overProbeK: overProbeK(plate, spot) })),
    looks: plate.looks,
    typed: shown('typed', typedEvenness(plate), 'probe'),
    probes: probesShown(state),
    limitsOverK: unevennessFor(plate, lead)?.overK ?? 0,
    adviceOverK: expectedOverK(plate, lead),
  };
}

/** The probe that an iron is read by: the one that leads, else its first. */
const leadOf = (iron: Iron, state: Pick<WatchState, 'leader'> | null): string =>
  state?.leader ?? iron.probes[0] ?? '';

/**
 * The spot that a typed reading makes together with what the leading probe reads at this moment.
 * @throws Refusal where it can't be held against the probe, or is absurd
 */
export function spotOf(draft: SpotDraft, state: WatchState | null, at: string): TypedSpot {
  const own = state?.settings?.probes.find((p) => p.id === state.leader);
  const thermometer = own === undefined ? undefined : state?.thermometers[own.id];
  const reading = thermometer?.reading;
  const slopeKPerS = thermometer === undefined ? null : slopeOf(thermometer);
  const reads = reading?.quality === 'ok' ? { plateC: reading.plateC, slopeKPerS } : null;
  const objection = objectionToSpot(draft.readC, reads);
  if (objection !== null || own === undefined || reads === null || slopeKPerS === null) {
    const why = evennessWords.objections[objection ?? 'no-reading'];
    throw new Refusal(objection === 'far-off' ? 'invalid' : 'conflict', why, 'readC');
  }
  return { ...draft, probeC: reads.plateC, slopeKPerS, madeWith: madeWithOf(own), at };
}
