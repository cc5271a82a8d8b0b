import { parseLine } from '../../../build/daemon/probe/wire/line.js';
import { withNewProbe } from '../../../build/daemon/settings/change.js';
import { firstSettings, watchSettings } from '../../../build/daemon/settings/settings.js';
import { regulatedC, wireLine } from './wire.mjs';

/** What the watch of an iron is begun with, and what it hears, without a device. */

export const PROBES = [
  'usb-demo-0001/heel',
  'usb-demo-0001/toe',
  'usb-demo-0001/left',
  'usb-demo-0001/right',
];

/** What a watch carries that begins anew, for an iron with these probes, as the program takes them in. */
export function freshlyCarried(probes) {
  const settings = probes.reduce((before, probe) => withNewProbe(before, probe, false), firstSettings);
  const [iron] = settings.irons;
  return {
    settings: watchSettings(settings, { ...iron, probes }, () => false),
    alarms: [],
    stageId: null,
    place: 'unknown',
    hot: false,
    fromSession: null,
    state: null,
  };
}

/** The sample that line `n` of a probe carries, and when it arrives: up to 4 ms after it was sent. */
export function sampleAt(probe, n) {
  const place = PROBES.indexOf(probe);
  const sentMs = n * 100 + place * 25;
  const line = wireLine(n, sentMs, regulatedC(place, n / 10)).trimEnd();
  const parsed = parseLine(line, 'usb-demo-0001');
  if (parsed.kind !== 'sample') throw new Error(`not a sample: ${line}`);
  return { sample: { ...parsed.sample, probe }, tMs: sentMs + ((n * 7 + place * 3) % 5) };
}
