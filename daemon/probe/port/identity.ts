import { realpath } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Device } from '../source.ts';
import { isThere, type ListedPort, type Machine } from './machine.ts';
import { namesIn, ttyFacts } from './sysfs.ts';

/** By what a device is known again: its serial number, or the socket that it is plugged in at. */
export interface Identity {
  readonly bySerial: string | null;
  readonly byPort: string | null;
}

const nobody: Identity = { bySerial: null, byPort: null };

/** Numbers that makers of cheap boards give to all of them (common practice, no source). */
const placeholder = /^(0*1?|0?123456.*)$/;

function identity(serialNumber: string, physicalPort: string, part: string): Identity {
  const serial = serialNumber
    .replace(/[^ -~]/g, '')
    .trim()
    .slice(0, 100);
  return {
    bySerial: placeholder.test(serial) ? null : serial + part,
    byPort: physicalPort === '' ? null : physicalPort + part,
  };
}

/** Names that USB serial devices have on Linux. */
const usbName = /^tty(USB|ACM)[0-9]+$/;

/** What the device behind a path is known by; nothing where the system tells nothing of it. */
export async function identityAt(machine: Machine, path: string): Promise<Identity> {
  if (machine.platform === 'linux') {
    const node = await realpath(path).catch(() => path);
    const facts = await ttyFacts(machine.sys, basename(node));
    return facts === null ? nobody : identity(facts.serialNumber, facts.physicalPort, facts.part);
  }
  const listed = (await machine.list()).find((port) => samePort(port, path));
  return listed === undefined ? nobody : identity(listed.serialNumber ?? '', listed.locationId ?? '', '');
}

/** macOS lists `/dev/tty.x` for the port that is better used as `/dev/cu.x`. */
const samePort = (port: ListedPort, path: string): boolean =>
  port.path.replace('/dev/tty.', '/dev/cu.') === path.replace('/dev/tty.', '/dev/cu.');

/** Paths of the USB ports that are there now; only Linux renumbers them, so only there is it asked. */
async function usbPaths(machine: Machine): Promise<readonly string[]> {
  if (machine.platform !== 'linux') return [];
  return (await namesIn(machine.dev))
    .filter((name) => usbName.test(name))
    .map((name) => join(machine.dev, name));
}

/**
 * The device at a path. Known by its USB serial number; by its socket where it has none or another port present has
 * the same one; by its path where neither is known (or it is not there yet).
 */
export async function identifyDevice(machine: Machine, path: string): Promise<Device> {
  const { bySerial, byPort } = await identityAt(machine, path);
  const shared = bySerial !== null && (await countOf(machine, bySerial)) > 1;
  const id = (shared ? byPort : (bySerial ?? byPort)) ?? path;
  return { id, path, simulated: false };
}

async function countOf(machine: Machine, serial: string): Promise<number> {
  const all = await Promise.all((await usbPaths(machine)).map((path) => identityAt(machine, path)));
  return all.filter(({ bySerial }) => bySerial === serial).length;
}

/** Where a device is now, or why it can't be had. */
export type Whereabouts =
  | { readonly kind: 'at'; readonly path: string }
  | { readonly kind: 'missing' }
  | { readonly kind: 'other-device' };

/**
 * Looks for a device where it was, then under other paths. One that is known by more than its path is never taken for
 * another that sits at its old path.
 */
export async function findDevice(machine: Machine, device: Device): Promise<Whereabouts> {
  const there = await isThere(device.path, machine.platform);
  if (machine.platform !== 'linux' || device.id === device.path) {
    return there ? { kind: 'at', path: device.path } : { kind: 'missing' };
  }
  const candidates = [...(there ? [device.path] : []), ...(await usbPaths(machine))];
  for (const path of candidates) {
    const { bySerial, byPort } = await identityAt(machine, path);
    if (bySerial === device.id || byPort === device.id) return { kind: 'at', path };
  }
  return there ? { kind: 'other-device' } : { kind: 'missing' };
}
