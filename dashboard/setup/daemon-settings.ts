import { computed, effect, signal } from '@preact/signals';
import type { z } from 'zod';
import {
  deviceListSchema,
  ironListSchema,
  probeListSchema,
  scheduleListSchema,
} from '../../shared/messages/settings.ts';
import { type UnattendedAfter, unattendedSchema } from '../../shared/watch/attended.ts';
import { isLive, live } from '../link/daemon.ts';
import { get } from './ask-daemon.ts';

/** The settings as the daemon has them. Read when they are needed, and again whenever somebody has changed them. */

type Of<S extends z.ZodType> = z.output<S>;

export const schedules = signal<Of<typeof scheduleListSchema>['schedules'] | null>(null);
export const irons = signal<Of<typeof ironListSchema>['irons'] | null>(null);
export const probes = signal<Of<typeof probeListSchema>['probes'] | null>(null);
/** Devices that something was settled about. */
export const devicesSettled = signal<Of<typeof deviceListSchema>['devices'] | null>(null);
/** After how long a hot iron that is left alone is told of. */
export const unattendedAfter = signal<UnattendedAfter | null>(null);
/** Why they could not be read; empty while all is well. */
export const readTrouble = signal('');

/** Reads them all. What could be read is taken, whatever became of the rest. */
export async function readSettings(): Promise<void> {
  const [schedulesRead, ironsRead, probesRead, devicesRead, unattendedRead] = await Promise.all([
    get('/api/schedules', scheduleListSchema),
    get('/api/irons', ironListSchema),
    get('/api/probes', probeListSchema),
    get('/api/devices', deviceListSchema),
    get('/api/unattended', unattendedSchema),
  ]);
  if (schedulesRead.kind === 'done') schedules.value = schedulesRead.value.schedules;
  if (ironsRead.kind === 'done') irons.value = ironsRead.value.irons;
  if (probesRead.kind === 'done') probes.value = probesRead.value.probes;
  if (devicesRead.kind === 'done') devicesSettled.value = devicesRead.value.devices;
  if (unattendedRead.kind === 'done') unattendedAfter.value = unattendedRead.value;
  const all = [schedulesRead, ironsRead, probesRead, devicesRead, unattendedRead];
  const trouble = all.find((one) => one.kind !== 'done');
  readTrouble.value = trouble === undefined ? '' : trouble.why;
}

/** What the stream says of the settings: when it changes, somebody has changed them, here or on another page. */
const told = computed(() => {
  const now = live.value;
  return now === null ? '' : `${now.program.epoch} ${now.situation.settingsRevision}`;
});

function whenShown(): void {
  if (!document.hidden && isLive.peek()) void readSettings();
}

/** Keeps the settings fresh for as long as somebody needs them; returns a function that ends it. */
export function followSettings(): () => void {
  const ends = effect(() => {
    if (told.value !== '' && isLive.value) void readSettings();
  });
  document.addEventListener('visibilitychange', whenShown);
  return () => {
    ends();
    document.removeEventListener('visibilitychange', whenShown);
  };
}
