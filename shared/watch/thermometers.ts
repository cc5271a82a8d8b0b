import type { ProbeSettings } from '../thermometer/probe.ts';
import { deviceOf, type ProbeId, type Sample } from '../thermometer/sample.ts';
import { hear, listenOn, type Thermometer, unheard } from '../thermometer/thermometer.ts';
import type { Finding } from './finding.ts';
import type { WatchInput, WatchSettings } from './input.ts';
import type { WatchState } from './state.ts';

/** The slice that turns samples into readings: one thermometer a probe, one clock and link a device. */

type Slice = Pick<WatchState, 'thermometers' | 'readings' | 'clocks' | 'links'>;
export interface SliceStep {
  readonly slice: Slice;
  readonly found: readonly Finding[];
}

const none: readonly Finding[] = [];

/** Folds one input into the slice. */
export function stepThermometers(
  slice: Slice,
  input: WatchInput,
  settings: WatchSettings,
  tMs: number,
): SliceStep {
  switch (input.kind) {
    case 'sample':
      return takeSample(slice, input.sample, settings, tMs);
    case 'device': {
      const before = slice.links[input.device];
      const link = { link: input.link, lastRejectedMs: before?.lastRejectedMs ?? null };
      return lookAtClock({ ...slice, links: { ...slice.links, [input.device]: link } }, tMs);
    }
    case 'rejected': {
      const link = { link: slice.links[input.device]?.link ?? ('connected' as const), lastRejectedMs: tMs };
      return { slice: { ...slice, links: { ...slice.links, [input.device]: link } }, found: none };
    }
    case 'tick':
      return lookAtClock(slice, tMs);
    default:
      return { slice, found: none };
  }
}

function takeSample(slice: Slice, sample: Sample, settings: WatchSettings, tMs: number): SliceStep {
  const probe = settings.probes.find((p) => p.id === sample.probe);
  if (probe === undefined) return { slice, found: none };
  const device = deviceOf(sample.probe);
  const overC = settings.schedule.fabricLimitC - probe.guardBandK;
  const heard = hear(
    slice.thermometers[probe.id],
    sample,
    { tMs, clock: slice.clocks[device], overC },
    probe,
  );
  if (heard === null) return { slice, found: none };
  const clocks = heard.clock === undefined ? slice.clocks : { ...slice.clocks, [device]: heard.clock };
  return put({ ...slice, clocks }, probe.id, heard.thermometer);
}

/** Replaces one thermometer; a change of quality is a finding. */
function put(slice: Slice, probe: ProbeId, after: Thermometer): SliceStep {
  const before = slice.thermometers[probe];
  if (before === after) return { slice, found: none };
  const changed = before?.reading.quality !== after.reading.quality;
  return {
    slice: {
      ...slice,
      thermometers: { ...slice.thermometers, [probe]: after },
      readings: { ...slice.readings, [probe]: after.reading },
    },
    found: changed ? [{ kind: 'quality', probe, quality: after.reading.quality }] : none,
  };
}

function lookAtClock(before: Slice, tMs: number): SliceStep {
  let slice = before;
  const found: Finding[] = [];
  for (const [probe, thermometer] of Object.entries(before.thermometers)) {
    const step = put(slice, probe, listenOn(thermometer, slice.links[deviceOf(probe)], tMs));
    slice = step.slice;
    found.push(...step.found);
  }
  return { slice, found };
}

/** Fits the slice to a new set of probes: those that left are dropped, those that came have not been heard. */
export function fitThermometers(
  slice: Slice,
  probes: readonly ProbeSettings[],
  at: { readonly tMs: number; readonly hot: boolean },
): Slice {
  const thermometers = Object.fromEntries(
    probes.map((p) => [p.id, slice.thermometers[p.id] ?? unheard(p.id, at.tMs, at.hot)]),
  );
  const readings = Object.fromEntries(Object.entries(thermometers).map(([id, t]) => [id, t.reading]));
  return { ...slice, thermometers, readings };
}
