import { z } from 'zod';
import {
  type Calibration,
  calibrationSchema,
  currentCalibration,
} from '../../shared/calibration/calibration.ts';
import { type AirFrom, airFromSchema, usualAirFrom } from '../../shared/cure/air.ts';
import { type Cement, cementSchema } from '../../shared/cure/cement.ts';
import { shippedCements } from '../../shared/cure/shipped.ts';
import { type HeatSchedule, heatScheduleSchema } from '../../shared/heat/schedule.ts';
import { shippedSchedule } from '../../shared/heat/shipped.ts';
import type { MadeWith } from '../../shared/iron/dial/chart.ts';
import { driftOfKept, type KeptDial, keptDialSchema } from '../../shared/iron/dial/kept.ts';
import { type Iron, ironSchema } from '../../shared/iron/iron.ts';
import { type KeptPlate, keptPlateSchema, noPlate, unevennessFor } from '../../shared/iron/spots.ts';
import { type DeviceSettings, deviceSettingsSchema } from '../../shared/messages/settings.ts';
import { type Piece, pieceSchema } from '../../shared/piece/piece.ts';
import { type ProbePlace, probePlaceSchema } from '../../shared/thermometer/place.ts';
import { conversionOf, type ProbeSettings, probeSettingsSchema } from '../../shared/thermometer/probe.ts';
import type { OffPlate } from '../../shared/thermometer/watched-probe.ts';
import { type UnattendedAfter, unattendedSchema, usualUnattended } from '../../shared/watch/attended.ts';
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
    /** How evenly the irons' plates are hot; settings of before that was looked at have none. */
    plates: z.array(keptPlateSchema).default([]),
    /** Where probes are, as far as that was told or asked. */
    places: z.array(probePlaceSchema).default([]),
    /** The pieces that are worked on. Maps are immutable: every version stays. */
    pieces: z.array(pieceSchema).default([]),
    /** The cements, every version of each; settings of before there were any get the examples. */
    cements: z.array(cementSchema).default([...shippedCements]),
    /** Which probe tells the shop's air; settings of before that could be chosen have none. */
    air: airFromSchema.default(usualAirFrom),
    /** The same for the simulated shop: trying it out takes nothing away from the real one. */
    simulatedAir: airFromSchema.default(usualAirFrom),
    /** After how long a hot iron with nobody there is told of. */
    unattended: unattendedSchema.default(usualUnattended),
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

const ironKey = ({ iron, simulated }: Pick<KeptDial, 'iron' | 'simulated'>): string =>
  `${iron}${simulated ? ', simulated' : ''}`;

const namesIn = ({
  schedules,
  irons,
  probes,
  calibrations,
  dials,
  plates,
  places,
  pieces,
  cements,
}: Settings): Readonly<Record<string, readonly string[]>> => ({
  schedules: schedules.map((s) => `${s.id}, version ${s.version}`),
  irons: irons.map((i) => i.id),
  probes: probes.map((p) => p.id),
  calibrations: calibrations.map((c) => c.id),
  dials: dials.map(ironKey),
  plates: plates.map(ironKey),
  places: places.map((p) => p.probe),
  pieces: pieces.map((p) => `${p.id}, version ${p.version}`),
  cements: cements.map((c) => `${c.id}, version ${c.version}`),
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
  readonly plates: readonly KeptPlate[];
  readonly places: readonly ProbePlace[];
  readonly pieces: readonly Piece[];
  readonly cements: readonly Cement[];
  readonly air: AirFrom;
  readonly simulatedAir: AirFrom;
  readonly unattended: UnattendedAfter;
}

export const firstSettings: Settings = {
  format: 2,
  schedules: [shippedSchedule],
  irons: [],
  probes: [],
  devices: [],
  calibrations: [],
  dials: [],
  plates: [],
  places: [],
  pieces: [],
  cements: shippedCements,
  air: usualAirFrom,
  simulatedAir: usualAirFrom,
  unattended: usualUnattended,
};

/** The newest version of each, in the order in which they were first made. */
function newestOf<T extends { readonly id: string; readonly version: number }>(
  all: readonly T[],
): readonly T[] {
  const newest = new Map<string, T>();
  for (const one of all) {
    if (one.version >= (newest.get(one.id)?.version ?? 0)) newest.set(one.id, one);
  }
  return [...newest.values()];
}

export const currentSchedules = ({ schedules }: Settings): readonly HeatSchedule[] => newestOf(schedules);
export const currentCements = ({ cements }: Settings): readonly Cement[] => newestOf(cements);
export const currentPieces = ({ pieces }: Settings): readonly Piece[] => newestOf(pieces);

/** Every version of one schedule, the newest first; empty where there is no such schedule. */
export const scheduleVersions = (settings: Settings, id: string): readonly HeatSchedule[] =>
  settings.schedules.filter((s) => s.id === id).toSorted((a, b) => b.version - a.version);

/** Every calibration of one probe, the newest first. */
export const calibrationVersions = (settings: Settings, probe: string): readonly Calibration[] =>
  settings.calibrations.filter((c) => c.probe === probe).toSorted((a, b) => b.version - a.version);

/** What is kept of an iron's dial; null where nothing is. Simulated irons share nothing with real ones. */
export const dialOf = (settings: Settings, iron: Pick<Iron, 'id' | 'simulated'>): KeptDial | null =>
  settings.dials.find((d) => d.iron === iron.id && d.simulated === iron.simulated) ?? null;

/** What is kept of how evenly an iron's plate is hot; nothing of one that was not looked at. */
export const plateOf = (settings: Settings, iron: Pick<Iron, 'id' | 'simulated'>): KeptPlate =>
  settings.plates.find((p) => p.iron === iron.id && p.simulated === iron.simulated) ?? noPlate(iron);

/** A probe with its place, where one was told or asked. */
export function placed<P extends { readonly id: string }>(
  { places }: Pick<Settings, 'places'>,
  probe: P,
): P & { readonly place?: ProbePlace } {
  const place = places.find((p) => p.probe === probe.id);
  return place === undefined ? probe : { ...probe, place };
}

/** What the watch of one iron needs of the settings; `offPlateOf` says which probes a procedure takes off their irons. */
export function watchSettings(
  settings: Settings,
  iron: Iron,
  offPlateOf: (probe: string) => OffPlate,
): WatchSettings {
  const schedule = currentSchedules(settings).find((s) => s.id === iron.scheduleId);
  if (schedule === undefined)
    throw new RangeError(`The iron "${iron.name}" names no heat schedule that exists.`);
  const plate = plateOf(settings, iron);
  const probes = settings.probes
    .filter((p) => iron.probes.includes(p.id))
    .map((p) => {
      const unevenness = unevennessFor(plate, p.id);
      return {
        ...placed(settings, p),
        calibration: currentCalibration(settings.calibrations, p.id),
        ...offPlateOf(p.id),
        ...(unevenness === null ? {} : { unevenness }),
      };
    });
  const dial = dialOf(settings, iron);
  const charted = dial === null ? [] : chartedElsewhere(dial, probes);
  return {
    iron,
    probes,
    schedule,
    drift: dial === null ? null : driftOfKept(dial),
    unattended: settings.unattended,
    ...(charted.length === 0 ? {} : { charted }),
  };
}

/** What the chart has from hand thermometers, or from other probes than these as they are read now. */
function chartedElsewhere(
  { chart }: KeptDial,
  probes: readonly ProbeSettings[],
): NonNullable<WatchSettings['charted']> {
  const isOwn = ({ probe, readAs }: MadeWith): boolean =>
    readAs === undefined || probes.some((own) => own.id === probe && conversionOf(own) === readAs);
  return chart.points
    .filter(({ kind, madeWith }) => kind === 'typed' || (madeWith !== null && !isOwn(madeWith)))
    .map(({ mark, meanC }) => ({ mark, meanC }));
}
