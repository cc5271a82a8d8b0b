import type { LineForm, LinesRead } from '../../shared/messages/line-form.ts';
import type { DeviceSettings } from '../../shared/messages/settings.ts';
import { formProblemWords } from '../../shared/words/line-forms.ts';
import { linesRead } from '../probe/wire/forms/lines-read.ts';
import { readerFor } from '../probe/wire/forms/reader.ts';
import { Refusal } from '../refusal.ts';
import { withDeviceForm } from '../settings/change.ts';
import { readersOf } from '../settings/forms.ts';
import type { SettingsKeeper } from '../settings/keeper.ts';
import type { Settings } from '../settings/settings.ts';
import type { Devices } from './devices.ts';

/** What the desk does about the form of a device's lines. */

/** The last lines of a device that is in use, read in a form that need not be the one in use. */
export async function deviceLines(
  { sources }: Pick<Devices, 'sources'>,
  { probes }: Settings,
  id: string,
  form: LineForm,
): Promise<LinesRead> {
  const source = sources.find((one) => one.device.id === id);
  if (source === undefined) throw new Refusal('unknown', formProblemWords.noDevice(id), 'id');
  if (source.wire === undefined) throw new Refusal('conflict', formProblemWords.noLines, 'id');
  const unitOf = (probe: string): string =>
    probes.find((one) => one.id === probe)?.unit === 'degF' ? '°F' : '°C';
  return linesRead(source.wire.recentLines(), { form, deviceId: id, unitOf });
}

/** Settles in which form a device's lines are; it need not be there now. In effect once it is written. */
export async function putDeviceForm(
  devices: Devices,
  settings: SettingsKeeper,
  id: string,
  form: LineForm,
): Promise<DeviceSettings> {
  const source = devices.sources.find((one) => one.device.id === id);
  if (source !== undefined && source.wire === undefined)
    throw new Refusal('conflict', formProblemWords.noLines, 'id');
  const read = await readerFor(form);
  if (read.kind === 'problem') throw new Refusal('invalid', read.problem.message, read.problem.where);
  const { device } = await settings.change((now) => withDeviceForm(now, id, form));
  await useForms(devices, settings);
  return device;
}

/** Brings the forms that are settled to the devices. They were seen to be readable before they were settled. */
export async function useForms(devices: Devices, settings: SettingsKeeper): Promise<void> {
  const named = settings.current.devices;
  const read = await readersOf(named);
  const isNewest = JSON.stringify(settings.current.devices) === JSON.stringify(named);
  // A change that came meanwhile brings its own.
  if (read.kind === 'readers' && isNewest) devices.readBy(read.readers);
}
