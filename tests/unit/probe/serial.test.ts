import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { OpenPort, Port, PortListener } from '../../../daemon/probe/port/open.ts';
import { SerialSource } from '../../../daemon/probe/serial.ts';
import type { Device, SourceEvent } from '../../../daemon/probe/source.ts';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { sourceContract } from '../../source-contract.ts';
import { MachineOnDisk } from './machine-on-disk.ts';

/** A port that does what the test says. */
class FakePort implements Port {
  readonly path: string;
  readonly listener: PortListener;
  readonly written: string[] = [];
  closed = false;

  constructor(path: string, listener: PortListener) {
    this.path = path;
    this.listener = listener;
  }

  write(text: string): void {
    this.written.push(text);
  }

  close(): Promise<void> {
    this.closed = true;
    return Promise.resolve();
  }

  say(...lines: readonly string[]): void {
    for (const line of lines) this.listener.data(Buffer.from(`${withChecksum(line)}\n`, 'latin1'));
  }
}

let machine: MachineOnDisk;
let ports: FakePort[];
let events: SourceEvent[];
let source: SerialSource;
let nowMs: number;

const open: OpenPort = ({ path }, listener) => {
  const port = new FakePort(path, listener);
  ports.push(port);
  return port;
};

const started = (device: Device): SerialSource => {
  source = new SerialSource({ device, baudRate: 115_200, nowMs: () => nowMs, open, machine });
  source.start((event) => events.push(event));
  return source;
};

const atPath = (path: string): Device => ({ id: path, path, simulated: false });

/** The port that was opened last, once there are so many. */
async function port(count: number): Promise<FakePort> {
  await vi.waitFor(() => expect(ports).toHaveLength(count), { timeout: 3000 });
  const last = ports.at(-1);
  if (last === undefined) throw new Error('no port was opened');
  return last;
}

async function opened(count: number): Promise<FakePort> {
  const last = await port(count);
  last.listener.opened();
  last.say('t=20');
  return last;
}

const links = (): readonly string[] => events.filter((e) => e.kind === 'link').map((e) => e.link);
const detail = (): string => source.status().detail;
const disconnected = (): Error => Object.assign(new Error('bad file descriptor'), { disconnected: true });

beforeEach(() => {
  machine = new MachineOnDisk();
  ports = [];
  events = [];
  nowMs = 0;
});

afterEach(async () => {
  await source.stop();
  machine.remove();
});

describe('a serial source', () => {
  it('says starting, connected, and lost at once when the device is pulled', async () => {
    started(atPath(machine.node('port', null)));
    const first = await opened(1);
    expect(links()).toEqual(['starting', 'connected']);
    first.listener.ended(disconnected());
    expect(links()).toEqual(['starting', 'connected', 'lost']);
    expect(detail()).toContain('Plug it in again');
    expect(first.closed).toBe(true);
  });

  it('uses each port once, and opens another when the device is back', async () => {
    started(atPath(machine.node('port', null)));
    const first = await opened(1);
    machine.unplug('port');
    first.listener.ended(disconnected());
    machine.node('port', null);
    await opened(2);
    expect(links()).toEqual(['starting', 'connected', 'lost', 'starting', 'connected']);
    expect(source.status().linesAccepted).toBe(2);
  });

  it('takes the device up under another path, and keeps its id', async () => {
    const board = { sockets: '1', serial: 'A50285BI' };
    started({ ...atPath(machine.plug({ ...board, name: 'ttyUSB0' })), id: 'A50285BI' });
    const first = await opened(1);
    machine.unplug('ttyUSB0');
    first.listener.ended(disconnected());
    const path = machine.plug({ ...board, name: 'ttyUSB1' });
    expect((await opened(2)).path).toBe(path);
    expect(source.device).toEqual({ id: 'A50285BI', path, simulated: false });
  });

  it('does not read another device at the old path', async () => {
    started({
      ...atPath(machine.plug({ name: 'ttyUSB0', sockets: '1', serial: 'A50285BI' })),
      id: 'A50285BI',
    });
    const first = await opened(1);
    machine.unplug('ttyUSB0');
    machine.plug({ name: 'ttyUSB0', sockets: '2', serial: 'B7' });
    first.listener.ended(disconnected());
    await vi.waitFor(() => expect(detail()).toContain('Another device'), { timeout: 3000 });
    expect(ports).toHaveLength(1);
  });

  it('says that there is no such port, and takes the device up with its own id when it comes', async () => {
    started(atPath(join(machine.dev, 'ttyUSB0')));
    await vi.waitFor(() => expect(detail()).toContain('There is no port'), { timeout: 3000 });
    expect(links()).toEqual(['lost']);
    machine.plug({ name: 'ttyUSB0', sockets: '1', serial: 'A50285BI' });
    await opened(1);
    expect(source.device.id).toBe('A50285BI');
    expect(events.find((e) => e.kind === 'sample')?.sample.probe).toBe('A50285BI/1');
  });

  it('counts a node that is gone as a pulled device, though nothing else told', async () => {
    started(atPath(machine.node('port', null)));
    const first = await opened(1);
    machine.unplug('port');
    await vi.waitFor(() => expect(links().at(-1)).toBe('lost'), { timeout: 3000 });
    expect(first.closed).toBe(true);
    first.listener.ended(disconnected());
    expect(links()).toEqual(['starting', 'connected', 'lost']);
  });

  it('tells why a port can’t be opened, once, and goes on trying', async () => {
    started(atPath(machine.node('port', null)));
    for (let i = 1; i <= 2; i += 1) {
      (await port(i)).listener.ended(new Error('Error: Permission denied, cannot open port'));
    }
    await opened(3);
    expect(links()).toEqual(['lost', 'starting', 'connected']);
    expect(events[0]).toMatchObject({ detail: expect.stringContaining('usermod') as unknown });
    expect(detail()).toBe('');
  });

  it('counts a line that was broken off, and joins nothing to the next connection', async () => {
    started(atPath(machine.node('port', null)));
    const first = await opened(1);
    first.listener.data(Buffer.from('t=15'));
    first.listener.ended(disconnected());
    const second = await opened(2);
    second.listener.data(Buffer.from('0.2\n'));
    expect(source.status().rejected.map(({ cause, lastRaw }) => [cause, lastRaw])).toEqual([
      ['unfinished', 't=15'],
      ['checksum', '0.2'],
    ]);
  });

  it('says connected after two seconds of a silent device', async () => {
    started(atPath(machine.node('port', null)));
    (await port(1)).listener.opened();
    expect(links()).toEqual(['starting']);
    nowMs = 2000;
    await vi.waitFor(() => expect(links()).toEqual(['starting', 'connected']), { timeout: 3000 });
  });

  it('writes to the device while it is open, and nothing otherwise', async () => {
    started(atPath(machine.node('port', null)));
    source.send('alarm=1');
    const first = await port(1);
    source.send('alarm=1');
    first.listener.opened();
    source.send('alarm=2');
    first.listener.ended(disconnected());
    source.send('alarm=3');
    expect(first.written).toEqual(['alarm=2\n']);
  });

  it('says that closing may reset the board, for as long as it is so', async () => {
    started(atPath(machine.node('port', null)));
    const first = await port(1);
    first.listener.opened();
    first.listener.mayReset('stty: not found');
    first.say('t=20');
    expect(detail()).toContain('stty: not found');
    first.listener.ended(disconnected());
    await opened(2);
    expect(detail()).toBe('');
  });

  it('gives the port back when it is stopped, even while it opens', async () => {
    started(atPath(machine.node('port', null)));
    const first = await port(1);
    await source.stop();
    expect(first.closed).toBe(true);
    first.listener.opened();
    first.say('t=20');
    expect(events).toEqual([]);
  });

  it('waits before it tries a port again that another program has locked', async () => {
    const locked = new Error('Error Resource temporarily unavailable Cannot lock port');
    started(atPath(machine.node('port', null)));
    (await port(1)).listener.ended(locked);
    await vi.waitFor(() => expect(detail()).toContain('in use'));
    const since = performance.now();
    await port(2);
    expect(performance.now() - since).toBeGreaterThan(1200);
  });
});

sourceContract('a serial port', async () => {
  const folder = new MachineOnDisk();
  const made: FakePort[] = [];
  const path = join(folder.dev, 'port');
  writeFileSync(path, '');
  const tested = new SerialSource({
    device: atPath(path),
    baudRate: 115_200,
    nowMs: () => Math.floor(performance.now()),
    machine: folder,
    open: (address, listener) => {
      const fake = new FakePort(address.path, listener);
      made.push(fake);
      queueMicrotask(() => listener.opened());
      return fake;
    },
  });
  return {
    source: tested,
    yieldUntil: async (enough) => {
      await vi.waitFor(() => {
        made[0]?.say('t=20.5', 'uv=800 cj=21', 'p=2 f=o');
        if (!enough()) throw new Error('not enough');
      });
    },
    cleanUp: async () => folder.remove(),
  };
});
