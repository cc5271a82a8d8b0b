import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findDevice, identifyDevice } from '../../../daemon/probe/port/identity.ts';
import { MachineOnDisk } from './machine-on-disk.ts';

let machine: MachineOnDisk;

beforeEach(() => {
  machine = new MachineOnDisk();
});

afterEach(() => machine.remove());

const idAt = async (path: string): Promise<string> => (await identifyDevice(machine, path)).id;

describe('a device is known', () => {
  it('by its USB serial number', async () => {
    const path = machine.plug({ name: 'ttyUSB0', sockets: '1.4', serial: 'A50285BI' });
    expect(await identifyDevice(machine, path)).toEqual({ id: 'A50285BI', path, simulated: false });
    const link = machine.link('usb-Bench_board_A50285BI-if00-port0', path);
    expect(await idAt(link)).toBe('A50285BI');
  });

  it('by its socket where it has no serial number, or one that is given to all of its kind', async () => {
    expect(await idAt(machine.plug({ name: 'ttyUSB0', sockets: '1.4' }))).toBe('0000:00:14.0-usb-1.4');
    for (const [i, serial] of ['', '0', '0000', '0001', '0123456789', '123456'].entries()) {
      const path = machine.plug({ name: `ttyACM${i}`, sockets: `2.${i}`, serial });
      expect(await idAt(path)).toBe(`0000:00:14.0-usb-2.${i}`);
    }
  });

  it('by its socket, whatever number the bus got at this start', async () => {
    expect(await idAt(machine.plug({ name: 'ttyUSB0', sockets: '3', bus: 4 }))).toBe('0000:00:14.0-usb-3');
  });

  it('by its socket where another one has the same serial number', async () => {
    const one = machine.plug({ name: 'ttyUSB0', sockets: '1', serial: 'TWIN' });
    const other = machine.plug({ name: 'ttyUSB1', sockets: '2', serial: 'TWIN' });
    expect([await idAt(one), await idAt(other)]).toEqual(['0000:00:14.0-usb-1', '0000:00:14.0-usb-2']);
  });

  it('apart from other ports of the same device', async () => {
    const shared = { sockets: '1', serial: 'DUAL' };
    const ids = [
      await idAt(machine.plug({ ...shared, name: 'ttyACM0' })),
      await idAt(machine.plug({ ...shared, name: 'ttyACM1', usbInterface: '02' })),
      await idAt(machine.plug({ ...shared, name: 'ttyUSB0', usbInterface: '03', port: '0' })),
      await idAt(machine.plug({ ...shared, name: 'ttyUSB1', usbInterface: '03', port: '1' })),
    ];
    expect(ids).toEqual(['DUAL', 'DUAL-if02', 'DUAL-if03', 'DUAL-if03-port1']);
  });

  it('by its path where the system tells nothing of it, or it is not there', async () => {
    const path = machine.node('pts-link', null);
    expect(await idAt(path)).toBe(path);
    expect(await idAt('/nowhere/ttyUSB9')).toBe('/nowhere/ttyUSB9');
  });

  it('on other systems by what the serial library lists', async () => {
    const mac = new MachineOnDisk('darwin');
    mac.listed = [
      { path: '/dev/tty.usbserial-1', serialNumber: 'A50285BI', locationId: '14200000' },
      { path: '/dev/tty.usbmodem2', locationId: '14300000' },
    ];
    expect((await identifyDevice(mac, '/dev/cu.usbserial-1')).id).toBe('A50285BI');
    expect((await identifyDevice(mac, '/dev/cu.usbmodem2')).id).toBe('14300000');
    mac.remove();
  });
});

describe('a device is found', () => {
  it('where it was, and missing where it is not', async () => {
    const path = machine.node('port', null);
    const device = await identifyDevice(machine, path);
    expect(await findDevice(machine, device)).toEqual({ kind: 'at', path });
    machine.unplug('port');
    expect(await findDevice(machine, device)).toEqual({ kind: 'missing' });
  });

  it('under another path, by its serial number or its socket', async () => {
    for (const board of [{ sockets: '1', serial: 'A50285BI' }, { sockets: '2' }]) {
      const device = await identifyDevice(machine, machine.plug({ ...board, name: 'ttyUSB0' }));
      machine.unplug('ttyUSB0');
      expect(await findDevice(machine, device)).toEqual({ kind: 'missing' });
      const path = machine.plug({ ...board, name: 'ttyUSB1' });
      expect(await findDevice(machine, device)).toEqual({ kind: 'at', path });
      machine.unplug('ttyUSB1');
    }
  });

  it('never in another one that sits at its old path', async () => {
    const path = machine.plug({ name: 'ttyUSB0', sockets: '1', serial: 'A50285BI' });
    const device = await identifyDevice(machine, path);
    machine.unplug('ttyUSB0');
    machine.plug({ name: 'ttyUSB0', sockets: '2', serial: 'B7' });
    expect(await findDevice(machine, device)).toEqual({ kind: 'other-device' });
    machine.plug({ name: 'ttyUSB1', sockets: '1', serial: 'A50285BI' });
    expect(await findDevice(machine, device)).toEqual({ kind: 'at', path: join(machine.dev, 'ttyUSB1') });
  });

  it('still by its serial number when a twin has come meanwhile', async () => {
    const path = machine.plug({ name: 'ttyUSB0', sockets: '1', serial: 'TWIN' });
    const device = await identifyDevice(machine, path);
    machine.plug({ name: 'ttyUSB1', sockets: '2', serial: 'TWIN' });
    expect(await findDevice(machine, device)).toEqual({ kind: 'at', path });
  });

  it('on Windows by opening it alone', async () => {
    const windows = new MachineOnDisk('win32');
    const device = { id: 'COM3', path: 'COM3', simulated: false };
    expect(await findDevice(windows, device)).toEqual({ kind: 'at', path: 'COM3' });
    windows.remove();
  });
});
