import { execFileSync } from 'node:child_process';
import { readdirSync, readlinkSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { SerialSource } from '../../daemon/probe/serial.ts';
import type { SourceEvent } from '../../daemon/probe/source.ts';
import { withChecksum } from '../../daemon/probe/wire/checksum.ts';
import { sourceContract } from '../source-contract.ts';
import { type Bench, ptyBench } from './serial-pty.ts';

interface Watched {
  readonly source: SerialSource;
  readonly events: SourceEvent[];
}

let bench: Bench;
let sources: SerialSource[];

const nowMs = (): number => Math.floor(performance.now());

function newSource(path = bench.board.path): SerialSource {
  const source = new SerialSource({
    device: { id: path, path, simulated: false },
    baudRate: 115_200,
    nowMs,
  });
  sources.push(source);
  return source;
}

function watched(path?: string): Watched {
  const source = newSource(path);
  const events: SourceEvent[] = [];
  source.start((event) => events.push(event));
  return { source, events };
}

const until = async (true_: () => boolean): Promise<void> => {
  await vi.waitUntil(true_, { timeout: 6000, interval: 2 });
};

const links = (events: readonly SourceEvent[]): readonly string[] =>
  events.filter((e) => e.kind === 'link').map((e) => e.link);
const temperatures = (events: readonly SourceEvent[]): readonly (number | null)[] =>
  events.filter((e) => e.kind === 'sample').map((e) => e.sample.tC);
const line = (tC: number): string => `${withChecksum(`t=${tC}`)}\r\n`;

/** Terminals that this process holds open. */
const openTerminals = (): readonly string[] =>
  readdirSync('/proc/self/fd').flatMap((fd) => {
    try {
      const target = readlinkSync(`/proc/self/fd/${fd}`);
      return target.startsWith('/dev/pts/') ? [target] : [];
    } catch {
      return [];
    }
  });

/** Kinds of handles of this process of which there are more than before. */
function more(before: readonly string[]): readonly string[] {
  const left = [...before];
  return process.getActiveResourcesInfo().filter((kind) => {
    const at = left.indexOf(kind);
    if (at !== -1) left.splice(at, 1);
    return at === -1;
  });
}

/** Handles are given back a turn or two after they are closed; one that leaked never is. */
async function handlesLeft(before: readonly string[]): Promise<readonly string[]> {
  for (let turn = 0; turn < 200 && more(before).length > 0; turn += 1) {
    await new Promise((resolve) => setImmediate(resolve));
  }
  return more(before);
}

beforeEach(() => {
  bench = ptyBench();
  sources = [];
});

afterEach(async () => {
  await Promise.all(sources.map((source) => source.stop()));
  await bench.remove();
});

describe('a board on a real pseudo-terminal', () => {
  it('is pulled and put back five times: lost at once, open again within a second, nothing leaked', async () => {
    const before = process.getActiveResourcesInfo();
    const { board } = bench;
    const { source, events } = watched();
    await until(() => links(events).at(-1) === 'lost');
    for (let round = 1; round <= 5; round += 1) {
      const pluggedAt = await board.plug();
      await until(() => links(events).at(-1) === 'starting');
      expect(performance.now() - pluggedAt).toBeLessThan(1000);
      board.write(line(round));
      await until(() => temperatures(events).length === round);
      await board.pull();
      const pulledAt = performance.now();
      await until(() => links(events).at(-1) === 'lost');
      expect(performance.now() - pulledAt).toBeLessThan(250);
      source.send('alarm=3');
    }
    expect(temperatures(events)).toEqual([1, 2, 3, 4, 5]);
    const cycle = ['starting', 'connected', 'lost'];
    expect(links(events)).toEqual(['lost', ...cycle, ...cycle, ...cycle, ...cycle, ...cycle]);
    await source.stop();
    expect(openTerminals()).toEqual([]);
    expect(await handlesLeft(before)).toEqual([]);
  });

  it('is pulled in the middle of a line: it is dropped, counted, and joins nothing', async () => {
    const { board } = bench;
    await board.plug();
    const { source, events } = watched();
    await until(() => links(events).at(-1) === 'starting');
    board.write(`${line(20)}t=15`);
    await until(() => temperatures(events).length === 1);
    await board.pull();
    await until(() => links(events).at(-1) === 'lost');
    expect(source.status().rejected).toEqual([{ cause: 'unfinished', count: 1, lastRaw: 't=15' }]);
    await board.plug();
    await until(() => links(events).at(-1) === 'starting');
    board.write(`0.2\r\n${line(21)}`);
    await until(() => temperatures(events).length === 2);
    expect(temperatures(events)).toEqual([20, 21]);
  });

  it('that is in use is said to be, and is taken as soon as it is free', async () => {
    const { board } = bench;
    await board.plug();
    const first = watched();
    await until(() => links(first.events).at(-1) === 'starting');
    const second = watched();
    await until(() => second.source.status().detail.includes('in use by another program'));
    board.write(line(20));
    await until(() => temperatures(first.events).length === 1);
    await first.source.stop();
    await until(() => links(second.events).at(-1) === 'starting');
    board.write(line(21));
    await until(() => temperatures(second.events).length === 1);
  });

  it('that is not there is said not to be, and what is no port is said to be none', async () => {
    const missing = watched();
    await until(() => missing.source.status().detail.includes('There is no port'));
    const folder = watched(bench.folder);
    await until(() => folder.source.status().detail.includes('is not a serial port'));
  });

  it('is sent what is said to it, and hears nothing after it was pulled', async () => {
    const { board } = bench;
    await board.plug();
    const { source, events } = watched();
    await until(() => links(events).at(-1) === 'starting');
    source.send('alarm=2');
    source.send('ack=1');
    await until(() => board.heard === 'alarm=2\nack=1\n');
    const gone = board.pull();
    // Some of these meet a port that is gone and not yet told of.
    for (let i = 0; i < 20; i += 1) {
      source.send('alarm=3');
      await new Promise((resolve) => setImmediate(resolve));
    }
    await gone;
    await until(() => links(events).at(-1) === 'lost');
    source.send('alarm=3');
  });

  it('that writes rubbish, a megabyte without a newline among it, yields its good lines', async () => {
    const { board } = bench;
    await board.plug();
    const { source, events } = watched();
    await until(() => links(events).at(-1) === 'starting');
    board.write(`${line(20)}\u0000\u00ff\u001b[2J\r\n${'x'.repeat(1_000_000)}\n${line(21)}`);
    await until(() => temperatures(events).length === 2);
    expect(source.status().rejected.map(({ cause, count }) => [cause, count])).toEqual([
      ['not-ascii', 1],
      ['too-long', 1],
    ]);
  });

  it('is not hung up on when its port is closed, though the system would', async () => {
    const { board } = bench;
    await board.plug();
    const setting = (): string | undefined =>
      /-?hupcl/.exec(execFileSync('stty', ['-F', board.path, '-a'], { encoding: 'utf8' }))?.[0];
    execFileSync('stty', ['-F', board.path, 'hupcl']);
    const { source, events } = watched();
    await until(() => links(events).at(-1) === 'starting');
    await until(() => setting() === '-hupcl');
    await source.stop();
    expect(setting()).toBe('-hupcl');
  });
});

sourceContract('a serial port on a real pseudo-terminal', async () => {
  const own = ptyBench();
  await own.board.plug();
  const { path } = own.board;
  const source = new SerialSource({
    device: { id: path, path, simulated: false },
    baudRate: 115_200,
    nowMs,
  });
  return {
    source,
    yieldUntil: async (enough) => {
      await until(() => source.status().link !== 'lost');
      own.board.write(line(20) + line(21) + line(22));
      await until(enough);
    },
    cleanUp: () => own.remove(),
  };
});
