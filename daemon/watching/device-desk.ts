import type { LineForm, LinesRead } from '../../shared/messages/line-form.ts';
import type { DeviceSettings } from '../../shared/messages/settings.ts';
import { formProblemWords } from '../../shared/words/line-forms.ts';
import type { ProbeSource } from '../probe/source.ts';
import { linesRead } from '../probe/wire/forms/lines-read.ts';
import { readerFor } from '../probe/wire/forms/reader.ts';
import { Refusal } from '../refusal.ts';
import { deviceSettings, withDeviceForm, withDeviceName } from '../settings/change.ts';
import { readersOf } from '../settings/forms.ts';
import type { SettingsKeeper } from '../settings/keeper.ts';
import type { DeviceDesk as Asked } from '../web/desk.ts';
import type { Devices } from './devices.ts';
import type { Program } from './program.ts';
import { settle } from './settle.ts';

/** The part of the desk where devices are named, and where it is settled in which form their lines are. */
export class DeviceDesk implements Asked {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  devices(): readonly DeviceSettings[] {
    return this.#settings.current.devices;
  }

  async putName(id: string, name: string): Promise<DeviceSettings> {
    return (await settle(this.#program, (s) => withDeviceName(s, id, name))).device;
  }

  /** It need not be the form in use. */
  async lines(id: string, form: LineForm | null): Promise<LinesRead> {
    const settings = this.#settings.current;
    const source = this.#source(id);
    if (source === undefined) throw new Refusal('unknown', formProblemWords.noDevice(id), 'id');
    if (source.wire === undefined) throw new Refusal('conflict', formProblemWords.noLines, 'id');
    const unitOf = (probe: string): string =>
      settings.probes.find((one) => one.id === probe)?.unit === 'degF' ? '°F' : '°C';
    return linesRead(source.wire.recentLines(), {
      form: form ?? deviceSettings(settings, id).form,
      deviceId: id,
      unitOf,
    });
  }

  /** The device need not be there now. In effect once it is written. */
  async putForm(id: string, form: LineForm): Promise<DeviceSettings> {
    const source = this.#source(id);
    if (source !== undefined && source.wire === undefined)
      throw new Refusal('conflict', formProblemWords.noLines, 'id');
    const read = await readerFor(form);
    if (read.kind === 'problem') throw new Refusal('invalid', read.problem.message, read.problem.where);
    const { device } = await this.#settings.change((now) => withDeviceForm(now, id, form));
    await useForms(this.#program.devices, this.#settings);
    return device;
  }

  #source(id: string): ProbeSource | undefined {
    return this.#program.devices.sources.find((one) => one.device.id === id);
  }

  get #settings(): SettingsKeeper {
    return this.#program.options.settings;
  }
}

/** Brings the forms that are settled to the devices. They were seen to be readable before they were settled. */
export async function useForms(devices: Devices, settings: SettingsKeeper): Promise<void> {
  const named = settings.current.devices;
  const read = await readersOf(named);
  const isNewest = JSON.stringify(settings.current.devices) === JSON.stringify(named);
  // A change that came meanwhile brings its own.
  if (read.kind === 'readers' && isNewest) devices.readBy(read.readers);
}
