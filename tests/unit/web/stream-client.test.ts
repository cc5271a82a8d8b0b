import pino from 'pino';
import { describe, expect, it } from 'vitest';
import { type StreamLimits, streamLimits } from '../../../daemon/web/stream/limits.ts';
import { type Resume, Stream } from '../../../daemon/web/stream/stream.ts';
import { BEAT_MS, DAEMON_LOST_AFTER_MS } from '../../../shared/messages/stream.ts';
import { EPOCH, fakeDesk } from './support/fake-desk.ts';
import { ManualTimers } from './support/manual-timers.ts';
import { alarmLive, probeLive, situation } from './support/samples.ts';
import { SimPipe } from './support/sim-pipe.ts';

function made(limits: Partial<StreamLimits> = {}) {
  const timers = new ManualTimers();
  const desk = fakeDesk();
  const log = pino({ level: 'silent' });
  const stream = new Stream({ desk, epoch: EPOCH, timers, log, limits: { ...streamLimits, ...limits } });
  const join = (resume: Resume | null = null) => {
    const pipe = new SimPipe();
    const client = stream.join(pipe, resume);
    pipe.answer = (id) => stream.heard(client, id);
    return { pipe, client, kinds: () => pipe.read().map((message) => message.kind) };
  };
  const reading = (plateC: number, id?: string) =>
    desk.change({ kind: 'readings', probes: [probeLive(plateC, id)] });
  const note = (text: string) => desk.change({ kind: 'mark', iron: 'small', mark: { kind: 'note', text } });
  return { timers, desk, stream, join, reading, note };
}

const plates = (pipe: SimPipe): (number | null)[][] =>
  pipe
    .read()
    .flatMap((message) => (message.kind === 'readings' ? [message.probes.map((p) => p.plateC)] : []));

describe('readings', () => {
  it('after a pause go at once, then at most one message in a gap, with the newest of each probe', () => {
    const { timers, join, reading } = made();
    const { pipe } = join();
    reading(100);
    expect(plates(pipe)).toEqual([[100]]);
    reading(101);
    reading(102);
    reading(50, 'b/1');
    timers.advance(streamLimits.readingsGapMs - 1);
    expect(plates(pipe)).toEqual([]);
    timers.advance(1);
    expect(plates(pipe)).toEqual([[102, 50]]);
    timers.advance(500);
    reading(103);
    expect(plates(pipe)).toEqual([[103]]);
  });

  it('that come faster than a screen can show them go a frame apart, and at once again when there are few', () => {
    const { timers, join, reading } = made();
    const { pipe } = join();
    const messagesIn = (ms: number, everyMs: number): number => {
      let messages = 0;
      for (let passed = 0; passed < ms; passed += everyMs) {
        reading(100 + passed / 1000);
        timers.advance(everyMs);
        // Read as they come: a client that lets them pile up counts as slow.
        messages += plates(pipe).length;
      }
      return messages;
    };
    messagesIn(500, 2);
    expect(messagesIn(1000, 2)).toBeLessThanOrEqual(1000 / streamLimits.manyGapMs + 1);
    messagesIn(500, 5);
    expect(messagesIn(1000, 5)).toBe(200);
  });

  it('never hold an alarm up', () => {
    const { desk, join, reading } = made();
    const { pipe } = join();
    reading(100);
    reading(193);
    desk.change({ kind: 'alarm', change: 'raised', alarm: alarmLive() });
    expect(pipe.read().map((message) => message.kind)).toEqual(['snapshot', 'readings', 'alarm']);
  });
});

describe('a beat', () => {
  it('comes where nothing else does, often enough', () => {
    const { timers, join } = made();
    const { pipe } = join();
    pipe.read();
    let longestMs = 0;
    let quietMs = 0;
    for (let i = 0; i < 1000; i += 1) {
      timers.advance(10);
      quietMs = pipe.read().length > 0 ? 0 : quietMs + 10;
      longestMs = Math.max(longestMs, quietMs);
    }
    expect(longestMs).toBeLessThanOrEqual(BEAT_MS);
    expect(BEAT_MS * 2).toBeLessThan(DAEMON_LOST_AFTER_MS);
  });

  it('does not come between readings', () => {
    const { timers, join, reading } = made();
    const { pipe } = join();
    for (let i = 0; i < 50; i += 1) {
      reading(i);
      timers.advance(100);
    }
    expect(pipe.read().filter((message) => message.kind === 'beat')).toEqual([]);
  });
});

describe('a slow client', () => {
  const small = { slowFromBytes: 2000, slowUntilBytes: 500 };

  it('gets every alarm and mark in order, and of the rest only the newest', () => {
    const { timers, desk, join, reading, note } = made({ ...small, dropOverBytes: 1e6 });
    const { pipe } = join();
    for (let i = 1; i <= 60; i += 1) {
      reading(i);
      if (i % 20 === 0) note(`mark ${i}`);
      if (i === 50) desk.change({ kind: 'situation', situation: situation({ simulated: false }) });
      timers.advance(20);
    }
    const messages = pipe.read();
    expect(messages.filter((message) => message.kind === 'mark').length).toBe(3);
    expect(messages.filter((message) => message.kind === 'readings').length).toBeLessThan(12);
    reading(61);
    const rest = pipe.read();
    expect(rest.map((message) => message.kind)).toEqual(['readings']);
    // What was owed when the last mark came went ahead of it, in one message each.
    expect(messages.slice(-3).map((message) => message.kind)).toEqual(['situation', 'readings', 'mark']);
    const seqs = [...messages, ...rest].map((message) => message.seq);
    expect(seqs).toEqual([...new Set(seqs)].sort((a, b) => a - b));
  });

  it('is caught up as soon as there is room, without a new change', () => {
    const { timers, stream, join, reading } = made(small);
    const { pipe, client } = join();
    for (let i = 1; i <= 20; i += 1) {
      reading(i);
      timers.advance(20);
    }
    plates(pipe);
    stream.drained(client);
    expect(plates(pipe)).toEqual([[20]]);
  });

  it('is slow until little is waiting, not merely less', () => {
    const { timers, join, reading } = made(small);
    const { pipe } = join();
    while (pipe.waitingBytes < small.slowFromBytes) {
      reading(1);
      timers.advance(20);
    }
    reading(1);
    while (pipe.waitingBytes >= small.slowFromBytes) pipe.read(1);
    expect(pipe.waitingBytes).toBeGreaterThan(small.slowUntilBytes);
    timers.advance(20);
    const before = pipe.waitingBytes;
    expect(before).toBeLessThan(small.slowFromBytes);
    reading(2);
    expect(pipe.waitingBytes).toBe(before);
  });

  it('is told by an unanswered ping, even where the system took all bytes', () => {
    const { timers, join, reading } = made();
    const { pipe } = join();
    timers.advance(streamLimits.lateAfterMs);
    pipe.waitingBytes = 0;
    reading(99);
    expect(pipe.waitingBytes).toBe(0);
    expect(plates(pipe).at(-1)).toEqual([99]);
  });

  it('is dropped once too many bytes or messages wait', () => {
    for (const limits of [{ dropOverBytes: 5000 }, { dropOverMessages: 10 }]) {
      const { stream, join, note } = made(limits);
      const { pipe } = join();
      for (let i = 0; i < 200; i += 1) note(`mark ${i}`);
      expect(pipe.open).toBe(false);
      expect(stream.clients).toBe(0);
      expect(pipe.mostWaitingBytes).toBeLessThan(7000);
    }
  });
});

describe('a peer', () => {
  it('that answers no more is noticed within 10 s, wherever in the cycle it dies', () => {
    for (let diesAtMs = 0; diesAtMs < 2500; diesAtMs += 130) {
      const { timers, stream, join } = made();
      const { pipe } = join();
      for (let ms = 0; ms < diesAtMs; ms += 10) {
        pipe.read();
        timers.advance(10);
      }
      timers.advance(10_000);
      expect(stream.clients).toBe(0);
      expect(pipe.open).toBe(false);
    }
  });

  it('that answers stays, and is not pinged too often', () => {
    const { timers, stream, join } = made();
    const { pipe } = join();
    for (let ms = 0; ms < 60_000; ms += 50) {
      pipe.read();
      timers.advance(50);
    }
    expect(stream.clients).toBe(1);
    expect(pipe.pings).toBeGreaterThan(50);
    expect(pipe.pings).toBeLessThanOrEqual(61);
  });

  it('that answers with another ping’s id has not answered', () => {
    const { timers, stream, join } = made();
    const { pipe, client } = join();
    for (let s = 0; s < 10; s += 1) {
      timers.advance(1000);
      stream.heard(client, 'other');
    }
    expect(pipe.open).toBe(false);
  });

  it('that sends frame after frame is dropped', () => {
    const { stream, join } = made();
    const { pipe, client } = join();
    for (let i = 0; i <= streamLimits.framesIn; i += 1) stream.heard(client, null);
    expect(pipe.open).toBe(false);
  });
});

describe('a client that comes back', () => {
  it('gets what it missed and nothing twice', () => {
    const { timers, stream, join, reading, note } = made();
    const first = join();
    reading(100);
    const seen = first.pipe.read().at(-1)?.seq ?? 0;
    stream.leave(first.client);
    note('missed');
    timers.advance(20);
    reading(101);
    timers.advance(20);
    reading(102);
    const again = join({ epoch: EPOCH, after: seen });
    expect(again.pipe.read().map((message) => [message.kind, message.seq - seen])).toEqual([
      ['mark', 1],
      ['readings', 3],
    ]);
    expect(join({ epoch: EPOCH, after: seen + 3 }).kinds()).toEqual([]);
  });

  it('having missed nothing, and slow later, is not given old readings again', () => {
    // Slow before the first beat, so that this connection has carried nothing yet.
    const { timers, desk, join, reading } = made({ lateAfterMs: 100 });
    reading(100);
    const { pipe } = join({ epoch: EPOCH, after: 1 });
    timers.advance(100);
    desk.change({ kind: 'situation', situation: situation() });
    expect(pipe.waitingBytes).toBe(0);
    // The ping that is answered now brings what is owed.
    expect(pipe.read().map((message) => message.kind)).toEqual(['situation']);
  });

  it.each([
    ['of another run', { epoch: 'other', after: 1 }],
    ['from the future', { epoch: EPOCH, after: 999 }],
    ['after too long', { epoch: EPOCH, after: 0 }],
  ])('%s gets how things stand', (_why, resume) => {
    const { join, note } = made({ keptEvents: 2 });
    for (const text of ['a', 'b', 'c']) note(text);
    expect(join(resume).kinds()).toEqual(['snapshot']);
    expect(join({ epoch: EPOCH, after: 1 }).kinds()).toEqual(['mark', 'mark']);
  });

  it('finds no more kept than the bytes allow', () => {
    const { join, note } = made({ keptBytes: 1000 });
    for (let i = 0; i < 100; i += 1) note('x'.repeat(100));
    expect(join({ epoch: EPOCH, after: 95 }).kinds().length).toBe(5);
    expect(join({ epoch: EPOCH, after: 50 }).kinds()).toEqual(['snapshot']);
  });
});

describe('the end', () => {
  it('is said to every client, and nothing runs on', () => {
    const { timers, desk, stream, join } = made();
    const { pipe } = join();
    stream.close(1001, 'bye');
    expect(pipe.goodbye).toEqual({ code: 1001, why: 'bye' });
    expect([desk.listeners, timers.pending]).toEqual([0, 0]);
  });
});
