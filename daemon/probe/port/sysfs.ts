import { readdir, readFile, realpath } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** What Linux tells of a port in its own files. Empty where it does not say. */
export interface TtyFacts {
  readonly manufacturer: string;
  readonly product: string;
  readonly serialNumber: string;
  readonly vendorId: string;
  readonly productId: string;
  /** Controller and sockets that it is plugged in at, the same after every start. */
  readonly physicalPort: string;
  /** Tells apart several ports of one USB device; empty for the first. */
  readonly part: string;
  /** True where a driver is ready for a chip that may not be there. */
  readonly phantom: boolean;
}

const unknown: TtyFacts = {
  manufacturer: '',
  product: '',
  serialNumber: '',
  vendorId: '',
  productId: '',
  physicalPort: '',
  part: '',
  phantom: false,
};

/** Text of a small system file; empty where there is none: that is how a device says that it does not say. */
async function text(path: string): Promise<string> {
  try {
    return (await readFile(path, 'utf8')).trim();
  } catch {
    return '';
  }
}

/** The facts of `ttyUSB0` and the like; null where the name is no hardware port or the system tells nothing. */
export async function ttyFacts(sys: string, name: string): Promise<TtyFacts | null> {
  const device = await realpath(join(sys, 'class/tty', name, 'device')).catch(() => null);
  if (device === null) return null;
  const usb = await usbAbove(device);
  if (usb === null) return { ...unknown, phantom: device.includes('/platform/serial8250') };
  const { folder, below } = usb;
  const of = (file: string): Promise<string> => text(join(folder, file));
  return {
    manufacturer: await of('manufacturer'),
    product: await of('product'),
    serialNumber: await of('serial'),
    vendorId: await of('idVendor'),
    productId: await of('idProduct'),
    physicalPort: physicalPort(folder),
    part: partOf(await text(join(below, 'bInterfaceNumber')), await text(join(device, 'port_number'))),
    phantom: false,
  };
}

/** The USB device that a port belongs to, and the folder of its interface below it. */
async function usbAbove(device: string): Promise<{ folder: string; below: string } | null> {
  let below = device;
  for (let folder = device; folder !== dirname(folder); folder = dirname(folder)) {
    if ((await text(join(folder, 'idVendor'))) !== '') return { folder, below };
    below = folder;
  }
  return null;
}

/** `0000:00:14.0-usb-1.4`: the bus's number changes from start to start, its controller and the sockets don't. */
function physicalPort(usbFolder: string): string {
  const sockets = basename(usbFolder).replace(/^[0-9]+-/, '');
  let folder = usbFolder;
  while (!/^usb[0-9]+$/.test(basename(folder)) && folder !== dirname(folder)) folder = dirname(folder);
  return `${basename(dirname(folder))}-usb-${sockets}`;
}

function partOf(usbInterface: string, port: string): string {
  const first = usbInterface === '' || usbInterface === '00' ? '' : `-if${usbInterface}`;
  return port === '' || port === '0' ? first : `${first}-port${port}`;
}

/** The names in a folder; none where it isn't there. */
export async function namesIn(folder: string): Promise<readonly string[]> {
  return await readdir(folder).catch(() => []);
}
