import { constants } from 'node:fs';
import { access, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import type { PortFacts } from '../../shared/words/serial.ts';
import { type ListedPort, type Machine, thisMachine } from './port/machine.ts';
import { namesIn, ttyFacts } from './port/sysfs.ts';
import { troubleWords } from './port/trouble.ts';

/**
 * The serial ports of this machine with what tells them apart, those first that are likely to be a probe's board.
 * Ports that can't be used say in `problem` why, and what to do.
 */
export async function describePorts(machine: Machine = thisMachine): Promise<readonly PortFacts[]> {
  const ports = machine.platform === 'linux' ? await linuxPorts(machine) : await listedPorts(machine);
  return [...ports].sort((a, b) => Number(b.likely) - Number(a.likely) || byPath(a, b));
}

const byPath = (a: PortFacts, b: PortFacts): number => a.path.localeCompare(b.path, 'en', { numeric: true });

/** The ports that are likely to be a probe's board. */
export async function probablePorts(machine: Machine = thisMachine): Promise<readonly PortFacts[]> {
  return (await describePorts(machine)).filter((port) => port.likely);
}

/** USB devices and ports that look like one by name, where the system tells nothing more of them. */
const likelyName = /^tty(USB|ACM)[0-9]+$/;

async function linuxPorts(machine: Machine): Promise<readonly PortFacts[]> {
  const [nodes, hardware, links] = await Promise.all([
    namesIn(machine.dev),
    namesIn(join(machine.sys, 'class/tty')),
    linksById(machine),
  ]);
  const there = nodes.filter((name) => hardware.includes(name) || likelyName.test(name));
  const ports = await Promise.all(there.map((name) => linuxPort(machine, name, links)));
  return ports.filter((port) => port !== null);
}

async function linuxPort(machine: Machine, name: string, links: ByNode): Promise<PortFacts | null> {
  const facts = await ttyFacts(machine.sys, name);
  if (facts === null ? !likelyName.test(name) : facts.phantom) return null;
  const path = join(machine.dev, name);
  return {
    path,
    manufacturer: facts?.manufacturer ?? '',
    product: facts?.product ?? '',
    serialNumber: facts?.serialNumber ?? '',
    vendorId: facts?.vendorId ?? '',
    productId: facts?.productId ?? '',
    byId: links.get(path) ?? '',
    physicalPort: facts?.physicalPort ?? '',
    likely: likelyName.test(name) || (facts?.vendorId ?? '') !== '',
    problem: await accessProblem(machine, path),
  };
}

type ByNode = ReadonlyMap<string, string>;

/** The lasting names that udev gives, by the node that they lead to. */
async function linksById(machine: Machine): Promise<ByNode> {
  const folder = join(machine.dev, 'serial/by-id');
  const links = new Map<string, string>();
  for (const name of await namesIn(folder)) {
    const link = join(folder, name);
    // A link whose device has just been pulled leads nowhere.
    const node = await realpath(link).catch(() => null);
    if (node !== null) links.set(node, link);
  }
  return links;
}

async function accessProblem(machine: Machine, path: string): Promise<string> {
  try {
    await access(path, constants.R_OK | constants.W_OK);
    return '';
  } catch (error) {
    return await troubleWords(machine, path, error instanceof Error ? error.message : String(error));
  }
}

async function listedPorts(machine: Machine): Promise<readonly PortFacts[]> {
  return await Promise.all((await machine.list()).map((port) => listedPort(machine, port)));
}

async function listedPort(machine: Machine, port: ListedPort): Promise<PortFacts> {
  const mac = machine.platform === 'darwin';
  const path = mac ? port.path.replace('/dev/tty.', '/dev/cu.') : port.path;
  return {
    path,
    manufacturer: port.manufacturer ?? '',
    product: '',
    serialNumber: port.serialNumber ?? '',
    vendorId: port.vendorId ?? '',
    productId: port.productId ?? '',
    byId: '',
    physicalPort: port.locationId ?? '',
    likely: (port.vendorId ?? '') !== '',
    problem: mac ? await accessProblem(machine, path) : '',
  };
}
