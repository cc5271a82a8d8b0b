import { type Calibration, nextCalibrationVersion } from '../../shared/calibration/calibration.ts';
import type { HeatSchedule, HeatScheduleDraft } from '../../shared/heat/schedule.ts';
import { restatedDial } from '../../shared/iron/dial/restate.ts';
import type { Iron, IronDraft } from '../../shared/iron/iron.ts';
import { type LineForm, protocolForm } from '../../shared/messages/line-form.ts';
import type { DeviceSettings } from '../../shared/messages/settings.ts';
import { type ProbeDraft, type ProbeSettings, unknownProbe } from '../../shared/thermometer/probe.ts';
import { deviceOf, type ProbeId } from '../../shared/thermometer/sample.ts';
import { USUAL_CONFIDENCE } from '../../shared/thermometer/uncertainty.ts';
import { settingsWords } from '../../shared/words/settings.ts';
import { Refusal } from '../refusal.ts';
import { placesAfter } from './moved.ts';
import { nextVersion } from './next-version.ts';
import { currentSchedules, type Settings, settingsSchema } from './settings.ts';

/** Changes of the settings: each a function from the settings to the next ones, or a refusal that says why. */

export function checked(next: Settings): Settings {
  const parsed = settingsSchema.safeParse(next);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw new Refusal('invalid', issue?.message ?? '', issue?.path.join('.') ?? '');
}

/** A probe that is known. Throws `Refusal` where there is none of this id. */
export function probeOf(settings: Settings, id: string): ProbeSettings {
  const probe = settings.probes.find((p) => p.id === id);
  if (probe === undefined) throw new Refusal('unknown', settingsWords.noProbe(id), 'id');
  return probe;
}

/** Adds a version of a schedule, made from the version `basedOn` (0: a new schedule). */
export function withSchedule(
  settings: Settings,
  draft: HeatScheduleDraft,
  head: { readonly id: string; readonly basedOn: number; readonly madeAt: string },
): { readonly settings: Settings; readonly schedule: HeatSchedule } {
  const { id, basedOn, madeAt } = head;
  const version = nextVersion(settings.schedules, head, {
    none: settingsWords.noSchedule(id),
    changed: (newest) => settingsWords.scheduleChanged(id, newest, basedOn),
  });
  const schedule = { ...draft, id, version, madeAt };
  return { settings: checked({ ...settings, schedules: [...settings.schedules, schedule] }), schedule };
}

/**
 * Changes an iron, or adds one; a probe named here is taken off the iron it sat on, and an iron that loses its last
 * one goes. One that has none to begin with is read by a hand thermometer, and stays.
 */
export function withIron(
  settings: Settings,
  id: string,
  draft: IronDraft,
): { readonly settings: Settings; readonly iron: Iron } {
  const before = settings.irons.find((i) => i.id === id);
  const confidence = draft.confidence ?? before?.confidence ?? USUAL_CONFIDENCE;
  const { soleCm2 = before?.soleCm2 ?? null } = draft;
  const iron: Iron = { ...draft, id, confidence, soleCm2, simulated: simulatedOf(draft, before) };
  checkNames(settings, draft);
  const others = settings.irons
    .filter((i) => i.id !== id)
    .map((i) => ({ ...i, left: i.probes.filter((p) => !draft.probes.includes(p)) }))
    .filter(({ probes, left }) => probes.length === 0 || left.length > 0)
    .map(({ left, ...i }) => ({ ...i, probes: left }));
  const irons = before === undefined ? [...others, iron] : replaceIn(settings.irons, others, iron);
  const places = placesAfter(settings, irons);
  return { settings: checked({ ...settings, irons, places }), iron };
}

function checkNames({ schedules, probes }: Settings, { scheduleId, probes: named }: IronDraft): void {
  if (!schedules.some((s) => s.id === scheduleId))
    throw new Refusal('invalid', settingsWords.noSchedule(scheduleId), 'scheduleId');
  for (const [i, id] of named.entries()) {
    if (!probes.some((p) => p.id === id))
      throw new Refusal('invalid', settingsWords.noProbe(id), `probes.${i}`);
    if (named.indexOf(id) !== i) throw new Refusal('invalid', settingsWords.probeTwice(id), `probes.${i}`);
  }
}

/** Whether an iron is a simulated one: what is labelled so, and what is not, must stay apart for good. */
function simulatedOf({ probes }: IronDraft, before: Iron | undefined): boolean {
  // One that is read by a hand thermometer only is a real one.
  if (probes.length === 0) return before?.simulated ?? false;
  const simulated = probes.some(isSimulated);
  const mixed = simulated !== probes.every(isSimulated);
  if (mixed || (before !== undefined && before.simulated !== simulated))
    throw new Refusal('invalid', settingsWords.mixedProbes, 'probes');
  return simulated;
}

/** The simulated iron's device has this id; a real one is named by its serial number, socket or path. */
export const isSimulated = (probe: ProbeId): boolean => deviceOf(probe) === 'simulated';

/** Takes away an iron that is read by a hand thermometer only. */
export function withoutIron(settings: Settings, id: string): { readonly settings: Settings } {
  const iron = settings.irons.find((i) => i.id === id);
  if (iron === undefined) throw new Refusal('unknown', settingsWords.noIron(id), 'id');
  if (iron.probes.length > 0) throw new Refusal('conflict', settingsWords.hasProbes(iron.name), 'id');
  return { settings: checked({ ...settings, irons: settings.irons.filter((i) => i.id !== id) }) };
}

/** Keeps the order in which the irons are shown. */
const replaceIn = (order: readonly Iron[], others: readonly Iron[], iron: Iron): readonly Iron[] =>
  order.flatMap((i) => (i.id === iron.id ? [iron] : others.filter((o) => o.id === i.id)));

export function withProbe(
  settings: Settings,
  id: ProbeId,
  draft: ProbeDraft,
): { readonly settings: Settings; readonly probe: ProbeSettings } {
  const before = settings.probes.find((p) => p.id === id);
  if (before === undefined) throw new Refusal('unknown', settingsWords.noProbe(id));
  const { toleranceClass = before.toleranceClass, mountingK = before.mountingK, lag = before.lag } = draft;
  const { motion = before.motion ?? null } = draft;
  const probe: ProbeSettings = { ...draft, id, toleranceClass, mountingK, lag, motion };
  const probes = settings.probes.map((p) => (p.id === id ? probe : p));
  return { settings: checked({ ...settings, probes }), probe };
}

/**
 * Adds the next version of a probe's calibration: earlier ones stay as they are. What the probe measured of dials is
 * brought under the new one, or a chart would look as if its iron had drifted.
 */
export function withCalibration(
  settings: Settings,
  made: Omit<Calibration, 'version'>,
): { readonly settings: Settings; readonly calibration: Calibration } {
  if (!settings.probes.some((p) => p.id === made.probe))
    throw new Refusal('unknown', settingsWords.noProbe(made.probe));
  const calibration = { ...made, version: nextCalibrationVersion(settings.calibrations, made.probe) };
  const calibrations = [...settings.calibrations, calibration];
  const dials = settings.dials.map((dial) => restatedDial(dial, calibration, settings.calibrations));
  return { settings: checked({ ...settings, calibrations, dials }), calibration };
}

type DeviceChange = { readonly settings: Settings; readonly device: DeviceSettings };

/** Names a device; an empty name takes its name away. Devices that are not there now can be named too. */
export const withDeviceName = (settings: Settings, id: string, name: string): DeviceChange =>
  withDevice(settings, { ...deviceSettings(settings, id), name });

/** Settles in which form a device's lines are; that such a form can be read has been seen to before. */
export const withDeviceForm = (settings: Settings, id: string, form: LineForm): DeviceChange =>
  withDevice(settings, { ...deviceSettings(settings, id), form });

/** What is settled about a device; one that nothing was settled about has no name and speaks our own protocol. */
export const deviceSettings = ({ devices }: Settings, id: string): DeviceSettings =>
  devices.find((d) => d.id === id) ?? { id, name: '', form: protocolForm };

function withDevice(settings: Settings, device: DeviceSettings): DeviceChange {
  const others = settings.devices.filter((d) => d.id !== device.id);
  const isPlain = device.name === '' && device.form.kind === 'protocol';
  return { settings: checked({ ...settings, devices: isPlain ? others : [...others, device] }), device };
}

/**
 * Takes in a probe that sits nowhere: one that has not been seen before, or that was taken off its iron. It gets an iron
 * of its own, so that no plate goes unwatched until somebody finds the time to say where the probe sits.
 */
export function withNewProbe(settings: Settings, id: ProbeId, simulated: boolean): Settings {
  const known = settings.probes.some((p) => p.id === id);
  const probes = known ? settings.probes : [...settings.probes, newProbe(id)];
  // Nor the id of an iron that is gone and has left a chart: another iron is no heir to it.
  const left = [...settings.dials, ...settings.plates].map(({ iron }) => iron);
  const taken = new Set([...settings.irons.map((i) => i.id), ...left]);
  let n = 1;
  while (taken.has(`iron-${n}`)) n += 1;
  const iron: Iron = {
    id: `iron-${n}`,
    name: simulated ? settingsWords.simulatedIron : settingsWords.newIron(n),
    probes: [id],
    scheduleId: currentSchedules(settings)[0]?.id ?? 'shipped',
    confidence: USUAL_CONFIDENCE,
    simulated,
  };
  return checked({ ...settings, probes, irons: [...settings.irons, iron] });
}

const newProbe = (id: ProbeId): ProbeSettings => ({
  id,
  label: settingsWords.newProbe(id.slice(id.lastIndexOf('/') + 1)),
  ...unknownProbe,
});
