import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ListedPort, Machine } from '../../../daemon/probe/port/machine.ts';

export interface UsbBoard {
  /** Node's name, such as ttyUSB0. */
  readonly name: string;
  /** Sockets from the controller, such as 1.4. */
  readonly sockets: string;
  readonly bus?: number;
  readonly serial?: string;
  readonly usbInterface?: string;
  readonly port?: string;
}

/** A machine whose system files are in a folder of its own, laid out as Linux lays them out. */
export class MachineOnDisk implements Machine {
  readonly platform: NodeJS.Platform;
  readonly root = mkdtempSync(join(tmpdir(), 'machine-'));
  readonly dev = join(this.root, 'dev');
  readonly sys = join(this.root, 'sys');
  readonly groups = join(this.root, 'group');
  listed: readonly ListedPort[] = [];

  constructor(platform: NodeJS.Platform = 'linux') {
    this.platform = platform;
    mkdirSync(this.dev);
    mkdirSync(join(this.sys, 'class/tty'), { recursive: true });
  }

  list(): Promise<readonly ListedPort[]> {
    return Promise.resolve(this.listed);
  }

  plug(board: UsbBoard): string {
    const { name, sockets, bus = 1, serial, usbInterface = '00', port } = board;
    const usb = join(this.sys, `devices/pci0000:00/0000:00:14.0/usb${bus}/${bus}-${sockets}`);
    const below = join(usb, `${bus}-${sockets}:1.${Number(usbInterface)}`);
    const device = port === undefined ? below : join(below, name);
    mkdirSync(device, { recursive: true });
    const files: Record<string, string> = { idVendor: '1a86', idProduct: '7523', product: 'Bench board' };
    if (serial !== undefined) files['serial'] = serial;
    for (const [file, text] of Object.entries(files)) writeFileSync(join(usb, file), `${text}\n`);
    writeFileSync(join(below, 'bInterfaceNumber'), `${usbInterface}\n`);
    if (port !== undefined) writeFileSync(join(device, 'port_number'), `${port}\n`);
    return this.node(name, device);
  }

  /** A node whose hardware is described in that folder, if it is. */
  node(name: string, device: string | null): string {
    if (device !== null) {
      mkdirSync(device, { recursive: true });
      mkdirSync(join(this.sys, 'class/tty', name), { recursive: true });
      symlinkSync(device, join(this.sys, 'class/tty', name, 'device'));
    }
    const path = join(this.dev, name);
    writeFileSync(path, '');
    return path;
  }

  unplug(name: string): void {
    rmSync(join(this.dev, name));
    rmSync(join(this.sys, 'class/tty', name), { recursive: true, force: true });
  }

  link(byId: string, path: string): string {
    const folder = join(this.dev, 'serial/by-id');
    mkdirSync(folder, { recursive: true });
    const link = join(folder, byId);
    symlinkSync(path, link);
    return link;
  }

  remove(): void {
    rmSync(this.root, { recursive: true });
  }
}
