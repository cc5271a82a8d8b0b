import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { portProblem, troubleWords } from '../../../daemon/probe/port/trouble.ts';
import { describePorts, probablePorts } from '../../../daemon/probe/ports.ts';
import { type PortFacts, portsText, portTitle } from '../../../shared/words/serial.ts';
import { MachineOnDisk } from './machine-on-disk.ts';

let machine: MachineOnDisk;

beforeEach(() => {
  machine = new MachineOnDisk();
});

afterEach(() => machine.remove());

const names = (ports: readonly PortFacts[]): readonly string[] =>
  ports.map(({ path }) => path.slice(machine.dev.length + 1));

describe('the list of ports', () => {
  it('tells boards apart, without udev’s tools', async () => {
    const path = machine.plug({ name: 'ttyUSB0', sockets: '1.4', serial: 'A50285BI' });
    const byId = machine.link('usb-Bench_board_A50285BI-if00-port0', path);
    expect(await describePorts(machine)).toEqual([
      {
        path,
        manufacturer: '',
        product: 'Bench board',
        serialNumber: 'A50285BI',
        vendorId: '1a86',
        productId: '7523',
        byId,
        physicalPort: '0000:00:14.0-usb-1.4',
        likely: true,
        problem: '',
      },
    ]);
  });

  it('has likely boards first, in the order of their numbers, and leaves out what is no port', async () => {
    const platform = join(machine.sys, 'devices/platform');
    machine.node('ttyS0', join(machine.sys, 'devices/pnp0/00:05'));
    machine.node('ttyS4', join(platform, 'serial8250'));
    machine.node('ttyAMA0', join(platform, 'soc/uart'));
    machine.node('tty7', null);
    machine.node('null', null);
    for (const name of ['ttyUSB10', 'ttyUSB2', 'ttyACM0']) machine.plug({ name, sockets: name.slice(3) });
    const all = await describePorts(machine);
    expect(names(all)).toEqual(['ttyACM0', 'ttyUSB2', 'ttyUSB10', 'ttyAMA0', 'ttyS0']);
    expect(names(await probablePorts(machine))).toEqual(['ttyACM0', 'ttyUSB2', 'ttyUSB10']);
  });

  it('knows boards by name where the system’s own files are not to be had', async () => {
    machine.node('ttyUSB0', null);
    machine.node('ttyS0', null);
    expect(names(await probablePorts(machine))).toEqual(['ttyUSB0']);
  });

  it('on macOS names the cu. path', async () => {
    const mac = new MachineOnDisk('darwin');
    mac.listed = [
      { path: '/dev/tty.Bluetooth-Incoming-Port' },
      { path: '/dev/tty.usbserial-1', vendorId: '1a86' },
    ];
    const ports = await describePorts(mac);
    expect(ports.map(({ path, likely }) => [path, likely])).toEqual([
      ['/dev/cu.usbserial-1', true],
      ['/dev/cu.Bluetooth-Incoming-Port', false],
    ]);
    mac.remove();
  });

  it('says which group to join where the port may not be used', async () => {
    const path = machine.node('ttyUSB0', null);
    chmodSync(path, 0o000);
    writeFileSync(machine.groups, `root:x:0:\nserial-users:x:${process.getgid?.() ?? 0}:\n`);
    const [port] = await describePorts(machine);
    // Whoever runs this as root may use any port.
    const refused = process.getuid?.() !== 0;
    expect(port?.problem.includes('sudo usermod -aG')).toBe(refused);
  });
});

describe('trouble with a port', () => {
  // The texts of @serialport/bindings-cpp 13, from its C++ sources (all of them) and from a real port (Linux).
  it.each([
    ['permission', 'Error: Permission denied, cannot open /dev/ttyUSB0'],
    ['permission', 'EACCES: permission denied, access'],
    ['missing', 'Error: No such file or directory, cannot open /dev/ttyUSB0'],
    ['missing', 'Opening COM3: File not found'],
    ['busy', 'Error Resource temporarily unavailable Cannot lock port'],
    ['busy', 'Error: Device or resource busy, cannot open /dev/ttyUSB0'],
    ['busy', 'Opening COM3: Access denied'],
    ['not-a-port', 'Error: Inappropriate ioctl for device setting custom baud rate of 115200'],
    ['not-a-port', 'Error: Is a directory, cannot open /tmp'],
    ['baud', 'Error baud rate of 12345 is not supported on your platform'],
    ['other', 'Error: Input/output error, cannot open /dev/ttyS4'],
  ])('is %s where the library says: %s', (problem, reason) => {
    expect(portProblem(reason)).toBe(problem);
  });

  it('names the remedy on each system', async () => {
    const denied = 'Error: Permission denied, cannot open';
    const locked = 'Error Resource temporarily unavailable Cannot lock port';
    expect(await troubleWords(machine, '/nowhere', denied)).toContain('sudo usermod -aG dialout');
    expect(await troubleWords(machine, '/nowhere', denied)).toContain('log out and in again');
    expect(await troubleWords(machine, '/nowhere', locked)).toContain('modems or braille');
    const elsewhere = { dev: '', sys: '', groups: '', list: () => Promise.resolve([]) };
    const mac = { ...elsewhere, platform: 'darwin' as const };
    expect(await troubleWords(mac, '/dev/tty.usbserial-1', denied)).toContain('use /dev/cu.usbserial-1');
    const windows = { ...elsewhere, platform: 'win32' as const };
    expect(await troubleWords(windows, 'COM3', 'Opening COM3: Access denied')).toContain('another program');
    expect(await troubleWords(machine, '/dev/x', 'Odd error')).toContain('Odd error');
  });
});

describe('ports as text', () => {
  const port: PortFacts = {
    path: '/dev/ttyUSB0',
    manufacturer: 'Acme',
    product: 'Bench board',
    serialNumber: 'A1',
    vendorId: '1a86',
    productId: '7523',
    byId: '/dev/serial/by-id/usb-A1',
    physicalPort: '0000:00:14.0-usb-1.4',
    likely: true,
    problem: 'This user may not use it.',
  };

  it('tell what tells a port from another', () => {
    expect(portTitle(port)).toBe('/dev/ttyUSB0: Acme Bench board, serial number A1');
    const text = portsText([port, { ...port, path: '/dev/ttyS0', likely: false }]);
    for (const part of [port.path, '1a86:7523', port.byId, port.physicalPort, port.problem, '/dev/ttyS0']) {
      expect(text).toContain(part);
    }
  });

  it('say so where there is none', () => {
    expect(portsText([])).toContain('No serial port was found');
    expect(portsText([{ ...port, likely: false }])).toContain('No serial port was found');
  });
});
