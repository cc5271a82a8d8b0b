import { z } from 'zod';
import {
  type Calibration,
  calibrationSchema,
  currentCalibration,
} from '../../shared/calibration/calibration.ts';
import { type HeatSchedule, heatScheduleSchema } from '../../shared/heat/schedule.ts';
import { shippedSchedule } from '../../shared/heat/shipped.ts';
import { driftOfKept, type KeptDial, keptDialSchema } from '../../shared/iron/dial/kept.ts';
import { type Iron, ironSchema } from '../../shared/iron/iron.ts';
import { type DeviceSettings, deviceSettingsSchema } from '../../shared/messages/settings.ts';
import { type ProbePlace, probePlaceSchema } from '../../shared/thermometer/place.ts';
import { type ProbeSettings, probeSettingsSchema } from '../../shared/thermometer/probe.ts';
import type { WatchSettings } from '../../shared/watch/input.ts';

/** All that the user has settled, as one file. Schedules are immutable: every version stays. */
export const settingsSchema = z
  .strictObject({
    format: z.literal(2),
    schedules: z.array(heatScheduleSchema).min(1),
    irons: z.array(ironSchema),
    probes: z.array(probeSettingsSchema),
    /** Settings of before devices could be named have none. */
    devices: z.array(deviceSettingsSchema).default([]),
    /** Every version of every probe's calibration: none is ever changed. */
    calibrations: z.array(calibrationSchema).default([]),
    /** What the irons do at the marks of their dials; also of irons that are gone, which may come back. */
    dials: z.array(keptDialSchema).default([]),
    /** Where probes are, as far as that was told or asked. */
    places: z.array(probePlaceSchema).default([]),
  })
  .superRefine((settings, ctx) => {
    for (const [field, names] of Object.entries(namesIn(settings))) {
      const i = names.findIndex((name, at) => names.indexOf(name) !== at);
      if (i !== -1)
        ctx.addIssue({ code: 'custom', path: [field, i, 'id'], message: `"${names[i]}" is used twice` });
    }
    const ids = new Set(settings.schedules.map((s) => s.id));
    const sits = new Map<string, string>();
    for (const [i, iron] of settings.irons.entries()) {
      if (!ids.has(iron.scheduleId)) {
        const message = `no heat schedule has the id "${iron.scheduleId}"`;
        ctx.addIssue({ code: 'custom', path: ['irons', i, 'scheduleId'], message });
      }
      for (const [j, probe] of iron.probes.entries()) {
        const other = sits.get(probe);
        if (other !== undefined) {
          const message = `this probe already sits on the iron "${other}"; a probe sits on one iron`;
          ctx.addIssue({ code: 'custom', path: ['irons', i, 'probes', j], message });
        }
        if (!settings.probes.some((p) => p.id === probe)) {
          const message = `no probe has the id "${probe}"`;
          ctx.addIssue({ code: 'custom', path: ['irons', i, 'probes', j], message });
        }
        sits.set(probe, iron.name);
      }
    }
  });

const namesIn = ({
  schedules,
  irons,
  probes,
  calibrations,
  dials,
  places,
}: Settings): Readonly<Record<string, readonly string[]>> => ({
  schedules: schedules.map((s) => `${s.id}, version ${s.version}`),
  irons: irons.map((i) => i.id),
  probes: probes.map((p) => p.id),
  calibrations: calibrations.map((c) => c.id),
  dials: dials.map((d) => `${d.iron}${d.simulated ? ', simulated' : ''}`),
  places: places.map((p) => p.probe),
});

export interface Settings {
  readonly format: 2;
  readonly schedules: readonly HeatSchedule[];
  readonly irons: readonly Iron[];
  readonly probes: readonly ProbeSettings[];
  /** Devices that the user has given a name, or whose lines are in a form of their own. */
  readonly devices: readonly DeviceSettings[];
  readonly calibrations: readonly Calibration[];
  readonly dials: readonly KeptDial[];
  readonly places: readonly ProbePlace[];
}

export const firstSettings: Settings = {
  format: 2,
  schedules: [shippedSchedule],
  irons: [],
  probes: [],
  devices: [],
  calibrations: [],
  dials: [],
  places: [],
};

/** The newest version of each schedule. */
export function currentSchedules(settings: Settings): readonly HeatSchedule[] {
  const newest = new Map<string, HeatSchedule>();
  for (const s of settings.schedules) {
    if (s.version >= (newest.get(s.id)?.version ?? 0)) newest.set(s.id, s);
  }
  return [...newest.values()];
}

/** Every version of one schedule, the newest first; empty where there is no such schedule. */
export const scheduleVersions = (settings: Settings, id: string): readonly HeatSchedule[] =>
  settings.schedules.filter((s) => s.id === id).toSorted((a, b) => b.version - a.version);

/** Every calibration of one probe, the newest first. */
export const calibrationVersions = (settings: Settings, probe: string): readonly Calibration[] =>
  settings.calibrations.filter((c) => c.probe === probe).toSorted((a, b) => b.version - a.version);

/** What is kept of an iron's dial; null where nothing is. Simulated irons share nothing with real ones. */
export const dialOf = (settings: Settings, iron: Pick<Iron, 'id' | 'simulated'>): KeptDial | null =>
  settings.dials.find((d) => d.iron === iron.id && d.simulated === iron.simulated) ?? null;

/** A probe with its place, where one was told or asked. */
export function placed<P extends { readonly id: string }>(
  { places }: Pick<Settings, 'places'>,
  probe: P,
): P & { readonly place?: ProbePlace } {
  const place = places.find((p) => p.probe === probe.id);
  return place === undefined ? probe : { ...probe, place };
}

/** What the watch of one iron needs of the settings; `isDipped` says which probes are being calibrated off their irons. */
export function watchSettings(
  settings: Settings,
  iron: Iron,
  isDipped: (probe: string) => boolean,
): WatchSettings {
  const schedule = currentSchedules(settings).find((s) => s.id === iron.scheduleId);
  if (schedule === undefined)
    throw new RangeError(`The iron "${iron.name}" names no heat schedule that exists.`);
  const probes = settings.probes
    .filter((p) => iron.probes.includes(p.id))
    .map((p) => ({
      ...placed(settings, p),
      calibration: currentCalibration(settings.calibrations, p.id),
      ...(isDipped(p.id) ? { dipped: true as const } : {}),
    }));
  const dial = dialOf(settings, iron);
  return { iron, probes, schedule, drift: dial === null ? null : driftOfKept(dial) };
}
