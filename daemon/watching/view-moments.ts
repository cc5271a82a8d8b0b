import { placeAmongStages } from '../../shared/heat/standing.ts';
import { meanAt, peakAt } from '../../shared/iron/dial/chart.ts';
import type { KeptDial } from '../../shared/iron/dial/kept.ts';
import { markNumber } from '../../shared/iron/dial/mark.ts';
import { isDoubted } from '../../shared/iron/dial/sitting.ts';
import type { ChartLive, CheckLive, IronLive, TypedLive } from '../../shared/messages/live.ts';
import { seatOf, watchedHow } from '../../shared/thermometer/place.ts';
import type { WatchSettings } from '../../shared/watch/input.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { dialOf, type Settings } from '../settings/settings.ts';

/** What is shown of an iron that was read at some moment: checks, typed readings, and its chart in between. */

export interface TellingOf {
  readonly settings: Settings;
  readonly nowMs: number;
  readonly utcOf: (tMs: number) => string;
}

export function momentsLive(state: WatchState, told: TellingOf): Pick<IronLive, 'check' | 'typed' | 'chart'> {
  const { settings } = state;
  if (settings === null) return { check: null, typed: null, chart: null };
  const { probes, iron } = settings;
  const kept = watchedHow(probes, iron.id) === 'monitored' ? null : dialOf(told.settings, iron);
  return {
    check: checkLive(state, settings, told),
    typed: typedLive(state, settings, told),
    chart: kept === null ? null : chartLive(state, kept),
  };
}

const aged = (tMs: number, { nowMs, utcOf }: TellingOf): { readonly at: string; readonly ageMs: number } => ({
  at: utcOf(tMs),
  ageMs: Math.max(0, Math.round(nowMs - tMs)),
});

function checkLive(
  { checks, thermometers }: WatchState,
  { iron, probes, schedule }: WatchSettings,
  told: TellingOf,
): CheckLive | null {
  const pads = probes.filter((p) => seatOf(p, iron.id) === 'check-pad');
  if (pads.length === 0) return null;
  const lying = pads.find((p) => (checks.pads[p.id]?.contact ?? null) !== null);
  const reading = lying === undefined ? undefined : thermometers[lying.id]?.reading;
  const contact = lying === undefined ? null : (checks.pads[lying.id]?.contact ?? null);
  const reads = pads.some((p) => thermometers[p.id]?.reading.quality === 'ok');
  const { last, missed } = checks;
  return {
    pad: !reads ? 'silent' : contact === null ? 'bare' : contact.settledMs === null ? 'settling' : 'settled',
    padC: reading?.quality === 'ok' ? reading.plateC : null,
    last: last && {
      ...aged(last.toMs, told),
      plateC: last.hottestC,
      lowestC: last.lowestC ?? last.hottestC,
      guardBandK: last.guardBandK,
      standing: placeAmongStages(last.hottestC, schedule, last.guardBandK),
    },
    missed: missed && {
      ...aged(missed.toMs, told),
      atLeastC: missed.hottestC,
      ended: missed.ended ?? 'lost',
    },
  };
}

function typedLive(
  { checks: { typed } }: WatchState,
  { schedule }: WatchSettings,
  told: TellingOf,
): TypedLive | null {
  if (typed === null) return null;
  const { atMs, plateC, guardBandK } = typed;
  return {
    ...aged(atMs, told),
    plateC,
    guardBandK,
    standing: placeAmongStages(plateC, schedule, guardBandK),
  };
}

function chartLive({ work: { dial }, sitting }: WatchState, kept: KeptDial): ChartLive | null {
  if (dial === null || isDoubted(sitting, dial)) return null;
  const mark = markNumber(dial.mark, []);
  const meanC = mark === null ? null : meanAt(kept.chart, mark);
  if (mark === null || meanC === null) return null;
  return { mark: dial.mark, meanC, peakC: peakAt(kept.chart, mark) };
}
