import { dialFor, highestMark, type Wanted } from '../../shared/iron/dial/advice.ts';
import { pointOf } from '../../shared/iron/dial/chart.ts';
import { driftOfKept, type KeptDial, noDial, withMeasured } from '../../shared/iron/dial/kept.ts';
import { markNumber } from '../../shared/iron/dial/mark.ts';
import type { Iron } from '../../shared/iron/iron.ts';
import type { IronDial } from '../../shared/messages/dial.ts';
import { UNMEASURED_LAG_S } from '../../shared/thermometer/lag/filter.ts';
import { restingGuardBandK } from '../../shared/thermometer/trust.ts';
import type { Finding, FoundEntry } from '../../shared/watch/finding.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { withDial } from '../settings/dials.ts';
import { dialOf, type Settings, watchSettings } from '../settings/settings.ts';

/** What is learned of irons' dials while they are watched, and what it says to the user. */

/** The settings with what was found of a dial; the same object where nothing was. */
export function learned(
  settings: Settings,
  found: readonly FoundEntry[],
  state: WatchState,
  utcOf: (tMs: number) => string,
): Settings {
  const iron = state.settings?.iron;
  if (iron === undefined) return settings;
  let dial = dialOf(settings, iron) ?? noDial(iron);
  const before = dial;
  for (const { finding } of found) {
    if (finding.kind === 'stretch') dial = withStretch(dial, finding, state, utcOf);
    else if (finding.kind === 'load') {
      const { fromMs, toMs: _to, ...load } = finding.load;
      dial = { ...dial, load: { ...load, at: utcOf(fromMs) } };
    }
  }
  return dial === before ? settings : withDial(settings, dial);
}

function withStretch(
  dial: KeptDial,
  { probe, stretch }: Extract<Finding, { kind: 'stretch' }>,
  state: WatchState,
  utcOf: (tMs: number) => string,
): KeptDial {
  const at = utcOf(stretch.fromMs);
  const own = state.settings?.probes.find((p) => p.id === probe);
  // A stretch never goes on over a change of calibration: what holds now has held throughout.
  const madeWith = { probe, calibration: own?.calibration?.id ?? null };
  const resolutionK = state.thermometers[probe]?.filter?.noise.stepK ?? dial.resolutionK;
  const last = { mark: stretch.mark, at, figures: stretch.figures, madeWith };
  const mark = markNumber(stretch.mark, []);
  const next = { ...dial, last, resolutionK };
  if (mark === null) return next;
  const lagS = own?.lag?.tauS ?? UNMEASURED_LAG_S;
  return withMeasured(next, pointOf(stretch, mark, at, { lagS, madeWith }));
}

/** An iron's chart with what it says for each stage of its schedule. */
export function dialAnswer(settings: Settings, iron: Iron, leader: string | null): IronDial {
  const { iron: id, simulated, chart, since, last, load, ...rest } = dialOf(settings, iron) ?? noDial(iron);
  const { schedule, probes } = watchSettings(settings, iron, () => false);
  const lead = probes.find((p) => p.id === (leader ?? iron.probes[0])) ?? probes[0];
  const { fabricLimitC } = schedule;
  const uncertaintyK = lead === undefined ? 0 : restingGuardBandK({ probe: lead, iron }, fabricLimitC);
  // Which stages go over a bonded edge isn't known: the page says where a plate would pass the cement limit.
  const wanted = (stage: Wanted['stage']): Wanted => ({
    stage,
    fabricLimitC,
    cementLimitC: null,
    uncertaintyK,
    unevennessK: 0,
  });
  const [first] = schedule.stages;
  return {
    iron: id,
    simulated,
    chart,
    since,
    last,
    load,
    drift: driftOfKept({ iron: id, simulated, chart, since, last, load, ...rest }),
    uncertaintyK,
    advice: schedule.stages.map((stage) => ({
      stageId: stage.id,
      stage: stage.name,
      targetC: stage.targetC,
      advice: dialFor(chart, wanted(stage)),
    })),
    highest: first === undefined ? null : highestMark(chart, wanted(first)),
  };
}
