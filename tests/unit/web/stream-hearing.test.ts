import pino from 'pino';
import { afterEach, describe, expect, it } from 'vitest';
import { streamLimits } from '../../../daemon/web/stream/limits.ts';
import { Stream } from '../../../daemon/web/stream/stream.ts';
import { SOUND_HOLDS_MS, SOUND_SAID_EVERY_MS } from '../../../shared/messages/hearing.ts';
import { webWords } from '../../../shared/words/web.ts';
import { EPOCH, fakeDesk } from './support/fake-desk.ts';
import { ManualTimers } from './support/manual-timers.ts';
import { rawStream } from './support/raw.ts';
import { eventually, type Running, running, TestClient } from './support/running.ts';
import { SimPipe } from './support/sim-pipe.ts';

/** A stream whose time a test moves, and how many armed pages the program was told of, in order. */
function bench() {
  const counts: number[] = [];
  const desk = fakeDesk({ hearing: (armedPages) => counts.push(armedPages) });
  const timers = new ManualTimers();
  const log = pino({ level: 'silent' });
  const stream = new Stream({ desk, epoch: EPOCH, limits: streamLimits, timers, log });
  const join = () => {
    const pipe = new SimPipe();
    const client = stream.join(pipe, null);
    pipe.answer = (id) => stream.heard(client, id);
    return { pipe, client };
  };
  /** Lets time pass with every one of `pipes` reading and answering. */
  const pass = (ms: number, ...pipes: readonly SimPipe[]): void => {
    for (let gone = 0; gone < ms; gone += streamLimits.pulseMs) {
      timers.advance(streamLimits.pulseMs);
      for (const pipe of pipes) pipe.read();
    }
  };
  return { stream, counts, join, pass };
}

describe('pages with their sound on', () => {
  it('are counted within a pulse, and the program hears of changes only', () => {
    const { stream, counts, join, pass } = bench();
    const [one, other] = [join(), join()];
    pass(2000, one.pipe, other.pipe);
    expect(counts).toEqual([]);
    stream.saysSound(one.client, true);
    stream.saysSound(other.client, true);
    pass(streamLimits.pulseMs, one.pipe, other.pipe);
    expect(counts).toEqual([2]);
    stream.saysSound(one.client, false);
    pass(streamLimits.pulseMs, one.pipe, other.pipe);
    expect(counts).toEqual([2, 1]);
  });

  it('count for as long as they say so again', () => {
    const { stream, counts, join, pass } = bench();
    const { pipe, client } = join();
    for (let i = 0; i < 10; i += 1) {
      stream.saysSound(client, true);
      pass(SOUND_SAID_EVERY_MS, pipe);
    }
    expect(counts).toEqual([1]);
    // Frozen: its connection answers pings, but the page itself says no more.
    pass(SOUND_HOLDS_MS + streamLimits.pulseMs, pipe);
    expect(counts).toEqual([1, 0]);
    expect(pipe.open).toBe(true);
  });

  it('count no more once they leave', () => {
    const { stream, counts, join, pass } = bench();
    const { pipe, client } = join();
    stream.saysSound(client, true);
    pass(streamLimits.pulseMs, pipe);
    stream.leave(client);
    pass(streamLimits.pulseMs);
    expect(counts).toEqual([1, 0]);
  });

  it('count no more once the network is gone', () => {
    const { stream, counts, join, pass } = bench();
    const { pipe, client } = join();
    stream.saysSound(client, true);
    pass(streamLimits.pulseMs, pipe);
    pass(SOUND_HOLDS_MS + streamLimits.pulseMs);
    expect(counts).toEqual([1, 0]);
  });

  it('that say so without end are let go', () => {
    const { stream, counts, join, pass } = bench();
    const { pipe, client } = join();
    for (let i = 0; i <= streamLimits.saidIn; i += 1) stream.saysSound(client, true);
    expect(pipe.open).toBe(false);
    expect(stream.clients).toBe(0);
    pass(streamLimits.pulseMs);
    expect(counts).toEqual([]);
  });
});

describe('over a real socket', () => {
  let it_: Running;
  afterEach(() => it_.web.close());
  const told = (): unknown[] => it_.desk.calls.filter(([what]) => what === 'hearing').map(([, n]) => n);

  it('a page says that its sound is on, and is missed when its tab closes', async () => {
    it_ = await running();
    const page = new TestClient(it_.web);
    await page.until((all) => all.length === 1);
    page.socket.send('{"kind":"sound","armed":true}');
    await eventually(() => told().length === 1);
    await page.end();
    await eventually(() => told().length === 2);
    expect(told()).toEqual([1, 0]);
  });

  it('a page is missed when its connection is torn', async () => {
    it_ = await running();
    const socket = await rawStream(it_.web.port);
    const frame = Buffer.from('{"kind":"sound","armed":true}');
    socket.write(Buffer.concat([Buffer.from([0x81, 0x80 | frame.length]), Buffer.alloc(4), frame]));
    await eventually(() => told().length === 1);
    socket.resetAndDestroy();
    await eventually(() => told().length === 2);
    expect(told()).toEqual([1, 0]);
  });

  it.each([
    ['{"kind":"sound"}'],
    ['{"kind":"sound","armed":1}'],
    ['{"kind":"sound","armed":true,"more":1}'],
    ['{"kind":"mark","armed":true}'],
    ['[]'],
    ['true'],
    ['{"kind":"sound","armed":true'],
    [''],
  ])('%s closes, saying what would be right', async (text) => {
    it_ = await running();
    const client = new TestClient(it_.web);
    await client.until((all) => all.length === 1);
    client.socket.send(text);
    expect(await client.closed).toEqual({ code: 1008, why: webWords.streamTakesOnly });
    expect(told()).toEqual([]);
  });

  it('the same as a binary message closes too', async () => {
    it_ = await running();
    const client = new TestClient(it_.web);
    await client.until((all) => all.length === 1);
    client.socket.send(Buffer.from('{"kind":"sound","armed":true}'));
    expect(await client.closed).toMatchObject({ code: 1008 });
  });
});
