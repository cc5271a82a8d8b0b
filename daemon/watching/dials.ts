import type { HeatStage } from '../../shared/heat/schedule.ts';
import { dialFor, highestMark, type Wanted } from '../../shared/iron/dial/advice.ts';
import { madeWithOf, pointOf } from '../../shared/iron/dial/chart.ts';
import {
  type DrawnStretch,
  drawnChart,
  drawnCycles,
  stageNear,
  turnsOf,
} from '../../shared/iron/dial/drawing.ts';
import {
  driftOfKept,
  type KeptDial,
  noDial,
  withDrawn,
  withMeasured,
  withWarmUp,
} from '../../shared/iron/dial/kept.ts';
import { markNumber } from '../../shared/iron/dial/mark.ts';
import type { Iron } from '../../shared/iron/iron.ts';
import { expectedOverK, type KeptPlate, withLook } from '../../shared/iron/spots.ts';
import type { IronDial } from '../../shared/messages/dial.ts';
import { UNMEASURED_LAG_S } from '../../shared/thermometer/lag/filter.ts';
import { restingBudget } from '../../shared/thermometer/trust.ts';
import type { Finding, FoundEntry } from '../../shared/watch/finding.ts';
import type { WatchState } from '../../shared/watch/state.ts';
import { withDial } from '../settings/dials.ts';
import { withPlate } from '../settings/plates.ts';
import { dialOf, plateOf, type Settings, watchSettings } from '../settings/settings.ts';
import { probesEvenness } from './evenness.ts';

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
  let plate = plateOf(settings, iron);
  const before = { dial, plate };
  for (const { finding } of found) {
    if (finding.kind === 'stretch') {
      dial = withStretch(dial, finding, state, utcOf);
      plate = withProbesLook(plate, state, utcOf(finding.stretch.toMs));
    } else if (finding.kind === 'load') {
      const { fromMs, toMs: _to, ...load } = finding.load;
      dial = { ...dial, load: { ...load, at: utcOf(fromMs) } };
    }
  }
  const charted = dial === before.dial ? settings : withDial(settings, dial);
  return plate === before.plate ? charted : withPlate(charted, plate);
}

/** How far the hottest probe is over the one that the chart is made by: at the next setting of the dial it is again. */
function withProbesLook(plate: KeptPlate, state: WatchState, at: string): KeptPlate {
  const overLeadK = probesEvenness(state)?.overLeadK ?? null;
  return overLeadK === null || state.leader === null
    ? plate
    : withLook(plate, { lead: state.leader, overLeadK, at });
}

function withStretch(
  dial: KeptDial,
  { probe, stretch }: Extract<Finding, { kind: 'stretch' }>,
  state: WatchState,
  utcOf: (tMs: number) => string,
): KeptDial {
  const at = utcOf(stretch.fromMs);
  const own = state.settings?.probes.find((p) => p.id === probe);
  // What a doubted probe reads is no chart.
  if (own === undefined || state.doubts[probe]?.suspicion) return dial;
  // A stretch never goes on over a change of calibration: what holds now has held throughout.
  const madeWith = madeWithOf(own);
  const resolutionK = state.thermometers[probe]?.filter?.noise.stepK ?? dial.resolutionK;
  const last = { mark: stretch.mark, at, figures: stretch.figures, madeWith };
  const mark = markNumber(stretch.mark, []);
  const cycles = drawnCycles(stretch.cycles);
  const next = withDrawn(withWarmUp({ ...dial, last, resolutionK }, last), {
    mark: stretch.mark,
    at,
    cycles,
    madeWith,
  });
  if (mark === null) return next;
  const lagS = own.lag?.tauS ?? UNMEASURED_LAG_S;
  return withMeasured(next, pointOf(stretch, mark, at, { lagS, madeWith }));
}

/** An iron's chart with what it says for each stage of its schedule. */
export function dialAnswer(settings: Settings, iron: Iron, leader: string | null): IronDial {
  const dial = dialOf(settings, iron) ?? noDial(iron);
  const { iron: id, simulated, chart, since, last, load, warmUp } = dial;
  const { schedule, probes } = watchSettings(settings, iron, () => ({}));
  const lead = probes.find((p) => p.id === (leader ?? iron.probes[0])) ?? probes[0];
  const { fabricLimitC } = schedule;
  const budget = lead === undefined ? null : restingBudget({ probe: lead, iron }, fabricLimitC);
  const uncertaintyK = budget === null ? 0 : budget.guardBandK - budget.overK;
  const unevennessK = lead === undefined ? 0 : expectedOverK(plateOf(settings, iron), lead.id);
  // Which stages go over a bonded edge isn't known: the page says where a plate would pass the cement limit.
  const wanted = (stage: Wanted['stage']): Wanted => ({
    stage,
    fabricLimitC,
    cementLimitC: null,
    uncertaintyK,
    unevennessK,
  });
  const [first] = schedule.stages;
  return {
    iron: id,
    simulated,
    chart,
    since,
    last,
    load,
    warmUp,
    drift: driftOfKept(dial),
    uncertaintyK,
    unevennessK,
    advice: schedule.stages.map((stage) => ({
      stageId: stage.id,
      stage: stage.name,
      targetC: stage.targetC,
      advice: dialFor(chart, wanted(stage)),
    })),
    highest: first === undefined ? null : highestMark(chart, wanted(first)),
    drawing: {
      fabricLimitC,
      ...(first === undefined ? { mean: [], hottest: [] } : drawnChart(chart, wanted(first))),
      stretches: dial.drawn.map((stretch) => drawingOf(stretch, schedule.stages)),
    },
  };
}

/** A stretch as it is drawn, with the stage that its mark is for. */
function drawingOf(
  { mark, at, cycles }: DrawnStretch,
  stages: readonly HeatStage[],
): IronDial['drawing']['stretches'][number] {
  const lastS = cycles.at(-1)?.toS ?? 0;
  const spanS = cycles.reduce((sum, one) => sum + one.toS - one.fromS, 0);
  const meanC = cycles.reduce((sum, one) => sum + one.meanC * (one.toS - one.fromS), 0) / spanS;
  const stage = stageNear(stages, meanC);
  return {
    mark,
    at,
    count: cycles.length,
    lines: turnsOf(cycles),
    lastS,
    meanC,
    highestC: Math.max(...cycles.map(({ peakC }) => peakC)),
    lowestC: Math.min(...cycles.map(({ troughC }) => troughC)),
    stage: stage === null ? null : { name: stage.name, lowC: stage.lowC, highC: stage.highC },
  };
}
