import type { DeviceClock } from '../thermometer/device-clock.ts';
import { seatOf } from '../thermometer/place.ts';
import type { Reading } from '../thermometer/reading.ts';
import { deviceOf, type ProbeId, type Sample } from '../thermometer/sample.ts';
import {
  converted,
  hear,
  type LinkState,
  listenOn,
  type Thermometer,
  unheard,
} from '../thermometer/thermometer.ts';
import { restingGuardBandK } from '../thermometer/trust.ts';
import type { WatchedProbe } from '../thermometer/watched-probe.ts';
import type { Finding } from './finding.ts';
import type { DeviceLink, WatchInput, WatchSettings } from './input.ts';

/** The slice that turns samples into readings: one thermometer a probe, one clock and link a device. */
export interface ThermometersSlice {
  readonly thermometers: Readonly<Record<ProbeId, Thermometer>>;
  readonly readings: Readonly<Record<ProbeId, Reading>>;
  readonly clocks: Readonly<Record<string, DeviceClock>>;
  readonly links: Readonly<Record<string, LinkState>>;
}

export interface ThermometersStep {
  readonly slice: ThermometersSlice;
  readonly found: readonly Finding[];
}

const none: readonly Finding[] = [];

/** Folds one input into the slice. */
export function stepThermometers(
  slice: ThermometersSlice,
  input: WatchInput,
  settings: WatchSettings,
  tMs: number,
): ThermometersStep {
  switch (input.kind) {
    case 'sample':
      return takeSample(slice, input.sample, settings, tMs);
    case 'device':
      return lookAtClock(withLink(slice, input.device, input.link, tMs), tMs);
    case 'rejected': {
      const link = slice.links[input.device] ?? { link: 'connected', sinceMs: tMs };
      return { slice: putLink(slice, input.device, { ...link, lastRejectedMs: tMs }), found: none };
    }
    case 'tick':
      return lookAtClock(slice, tMs);
    default:
      return { slice, found: none };
  }
}

function withLink(
  slice: ThermometersSlice,
  device: string,
  link: DeviceLink,
  tMs: number,
): ThermometersSlice {
  const before = slice.links[device];
  const sinceMs = before?.link === link ? before.sinceMs : tMs;
  const linked = putLink(slice, device, { link, sinceMs, lastRejectedMs: before?.lastRejectedMs ?? null });
  if (link === 'connected') return linked;
  // Whatever comes next comes from a board that may have begun its clock anew.
  const { [device]: _, ...clocks } = linked.clocks;
  return { ...linked, clocks };
}

const putLink = (slice: ThermometersSlice, device: string, link: LinkState): ThermometersSlice => ({
  ...slice,
  links: { ...slice.links, [device]: link },
});

function takeSample(
  before: ThermometersSlice,
  sample: Sample,
  settings: WatchSettings,
  tMs: number,
): ThermometersStep {
  const settled = settings.probes.find((p) => p.id === sample.probe);
  const was = before.thermometers[sample.probe];
  if (settled === undefined || was === undefined) return { slice: before, found: none };
  const device = deviceOf(sample.probe);
  // A device that sends is there, whether or not it has been announced.
  const slice = before.links[device] === undefined ? withLink(before, device, 'connected', tMs) : before;
  const { fabricLimitC } = settings.schedule;
  const overC = fabricLimitC - restingGuardBandK({ probe: settled, iron: settings.iron }, fabricLimitC);
  const onPad = seatOf(settled, settings.iron.id) === 'check-pad';
  const heard = hear(was, sample, { tMs, clock: slice.clocks[device], overC, onPad }, settled);
  if (heard === null) return { slice, found: none };
  const clocks = heard.clock === undefined ? slice.clocks : { ...slice.clocks, [device]: heard.clock };
  return put({ ...slice, clocks }, sample.probe, heard.thermometer);
}

/** Replaces one thermometer; a change of quality is a finding. */
function put(slice: ThermometersSlice, probe: ProbeId, after: Thermometer): ThermometersStep {
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

function lookAtClock(before: ThermometersSlice, tMs: number): ThermometersStep {
  let slice = before;
  const found: Finding[] = [];
  for (const [probe, thermometer] of Object.entries(before.thermometers)) {
    const step = put(slice, probe, listenOn(thermometer, slice.links[deviceOf(probe)], tMs));
    slice = step.slice;
    found.push(...step.found);
  }
  return { slice, found };
}

/** Fits the slice to new settings: probes that left are dropped, those that came have not been heard. */
export function fitThermometers(
  slice: ThermometersSlice,
  probes: readonly WatchedProbe[],
  before: readonly WatchedProbe[],
  at: { readonly tMs: number; readonly hot: boolean },
): ThermometersSlice {
  const fit = (p: WatchedProbe): Thermometer => {
    const known = slice.thermometers[p.id];
    if (known === undefined) return unheard(p.id, at.tMs, at.hot);
    const was = before.find((b) => b.id === p.id);
    return was === undefined || convertsAlike(was, p) ? known : converted(known);
  };
  const thermometers = Object.fromEntries(probes.map((p) => [p.id, fit(p)]));
  const readings = Object.fromEntries(Object.entries(thermometers).map(([id, t]) => [id, t.reading]));
  return { ...slice, thermometers, readings };
}

/** The probes whose samples give other temperatures than they did. */
export const convertedAnew = (
  probes: readonly WatchedProbe[],
  before: readonly WatchedProbe[],
): readonly ProbeId[] =>
  probes.filter((p) => before.some((was) => was.id === p.id && !convertsAlike(was, p))).map((p) => p.id);

/** Whether the same sample gives the same temperature by both. */
const convertsAlike = (a: WatchedProbe, b: WatchedProbe): boolean =>
  a.unit === b.unit && a.thermocouple === b.thermocouple && a.calibration?.id === b.calibration?.id;
