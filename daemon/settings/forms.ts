import type { DeviceSettings } from '../../shared/messages/settings.ts';
import type { FormProblem, LineReader } from '../probe/wire/forms/form-read.ts';
import { readerFor } from '../probe/wire/forms/reader.ts';

export type FormsRead =
  | { readonly kind: 'readers'; readonly readers: ReadonlyMap<string, LineReader> }
  | { readonly kind: 'problem'; readonly device: number; readonly problem: FormProblem };

/** How the lines of each device are read, by its id; or the first form that can't be read. */
export async function readersOf(devices: readonly DeviceSettings[]): Promise<FormsRead> {
  const readers = new Map<string, LineReader>();
  for (const [device, { id, form }] of devices.entries()) {
    // One after the other: as a rule there is one, and nothing is to be loaded for it.
    const read = await readerFor(form);
    if (read.kind === 'problem') return { kind: 'problem', device, problem: read.problem };
    readers.set(id, read.reader);
  }
  return { kind: 'readers', readers };
}
