import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { monotonicClock, SteppedClock } from '../../../daemon/clock.ts';
import { bigIron } from '../../../daemon/probe/simulated/irons.ts';
import { type FaultSpan, leftOnRest } from '../../../daemon/probe/simulated/scenario.ts';
import { type SimulatedOptions, simulatedSource } from '../../../daemon/probe/simulated/source.ts';
import type { SourceEvent } from '../../../daemon/probe/source.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function run(options: Partial<SimulatedOptions> = {}) {
  const clock = options.clock ?? monotonicClock();
  const source = simulatedSource({ scenario: leftOnRest(150), ...options, clock });
  const events: SourceEvent[] = [];
  source.start((event) => events.push(event));
  const samples = () => events.flatMap((e) => (e.kind === 'sample' ? [e] : []));
  const links = () => events.flatMap((e) => (e.kind === 'link' ? [e.link] : []));
  return { source, clock, events, samples, links };
}

const withFaults = (...faults: readonly FaultSpan[]) => ({ scenario: { ...leftOnRest(150), faults } });

describe('the simulated source', () => {
  it('is labelled as simulated and starts with a greeting and its first sample', () => {
    const { source, samples, links } = run();
    expect(source.device).toEqual({ id: 'simulated', path: 'simulated', simulated: true });
    vi.advanceTimersByTime(20);
    expect(links()).toEqual(['starting', 'connected']);
    expect(samples()).toHaveLength(1);
    expect(samples()[0]?.sample).toMatchObject({ probe: 'simulated/1', deviceMs: 0, faults: [] });
    expect(source.status()).toMatchObject({
      link: 'connected',
      detail: '',
      hello: { probes: '1' },
      linesAccepted: 2,
      checksummed: true,
      samplesMissed: 0,
      rejected: [],
    });
  });

  it('gives ten samples a second by the clock that it follows', () => {
    const { samples } = run();
    vi.advanceTimersByTime(10_000);
    expect(samples()).toHaveLength(101);
    for (const [i, { tMs }] of samples().entries()) {
      expect(tMs).toBeGreaterThanOrEqual(i * 100);
      expect(tMs).toBeLessThanOrEqual(i * 100 + 20);
    }
  });

  it('pushes a stepped clock to each line’s own time', () => {
    const { samples, clock } = run({ clock: new SteppedClock(), speed: 60 });
    vi.advanceTimersByTime(1000);
    expect(samples()).toHaveLength(601);
    expect(samples().map((s) => s.tMs)).toEqual(samples().map((_, i) => i * 100));
    expect(clock.nowMs()).toBe(60_000);
  });

  it('gives the same samples at any speed', () => {
    const [slow, fast] = [1, 50].map((speed) => {
      const heard = run({ clock: new SteppedClock(), speed });
      vi.advanceTimersByTime(5000 / speed);
      return heard.samples();
    });
    expect(slow?.length).toBeGreaterThan(45);
    expect(fast?.slice(0, slow?.length)).toEqual(slow);
  });

  it('loses what was said while the host was away for long, and says how much', () => {
    const { samples, source } = run();
    vi.advanceTimersByTime(1000);
    const before = samples().length;
    const away = performance.now() + 60_000;
    // The timer comes once after the pause, as after a suspend.
    vi.spyOn(performance, 'now').mockImplementation(() => away);
    vi.advanceTimersToNextTimer();
    expect(samples().length - before).toBeLessThanOrEqual(101);
    expect(source.status().samplesMissed).toBeGreaterThanOrEqual(490);
    vi.restoreAllMocks();
  });

  it('says open junctions as faults', () => {
    const { samples } = run(withFaults({ fromS: 1, toS: 2, kind: 'open' }));
    vi.advanceTimersByTime(3000);
    const open = samples().filter((s) => s.sample.faults.includes('open'));
    expect(open).toHaveLength(10);
    for (const { sample } of open) expect(sample.tC).toBeNull();
  });

  it('lets time go on while silent, and counts what is missing', () => {
    const { samples, clock, source } = run({
      ...withFaults({ fromS: 1, toS: 4, kind: 'silence' }),
      clock: new SteppedClock(),
      speed: 10,
    });
    vi.advanceTimersByTime(300);
    expect(clock.nowMs()).toBe(3000);
    expect(samples()).toHaveLength(10);
    vi.advanceTimersByTime(200);
    expect(samples().length).toBeGreaterThan(10);
    expect(source.status().samplesMissed).toBe(30);
  });

  it('refuses damaged lines by cause and takes no number from them', () => {
    const clean = run();
    const { samples, source, events } = run(withFaults({ fromS: 5, toS: 65, kind: 'garbage' }));
    vi.advanceTimersByTime(70_000);
    const rejected = events.filter((e) => e.kind === 'rejected');
    expect(rejected.length).toBeGreaterThan(400);
    expect(source.status().rejected.reduce((sum, r) => sum + r.count, 0)).toBe(rejected.length);
    expect(source.status().rejected.map((r) => r.cause)).toEqual(
      expect.arrayContaining(['checksum', 'not-ascii']),
    );
    const said = new Map(clean.samples().map((s) => [s.sample.deviceMs, s.sample]));
    for (const { sample } of samples()) expect(sample).toEqual(said.get(sample.deviceMs));
  });

  it('says that the cable is pulled, once, and starts afresh when it is back', () => {
    const { links, samples, source } = run(withFaults({ fromS: 1, toS: 3, kind: 'lost' }));
    vi.advanceTimersByTime(2000);
    expect(links()).toEqual(['starting', 'connected', 'lost']);
    expect(source.status()).toMatchObject({ link: 'lost' });
    expect(source.status().detail).not.toBe('');
    expect(samples()).toHaveLength(10);
    vi.advanceTimersByTime(1500);
    expect(links()).toEqual(['starting', 'connected', 'lost', 'starting', 'connected']);
    expect(samples()[10]?.sample.deviceMs).toBe(0);
    expect(source.status()).toMatchObject({ link: 'connected', detail: '', samplesMissed: 0 });
  });

  it('is connected though silent from the start, once the time of boot text is over', () => {
    const { links } = run(withFaults({ fromS: 0, toS: 60, kind: 'silence' }));
    vi.advanceTimersByTime(1900);
    expect(links()).toEqual(['starting']);
    vi.advanceTimersByTime(200);
    expect(links()).toEqual(['starting', 'connected']);
  });

  it('remembers what its lamp was told', () => {
    const { source } = run();
    expect(source.lamp()).toEqual({ level: 0, acknowledged: false });
    source.send('alarm=3');
    expect(source.lamp()).toEqual({ level: 3, acknowledged: false });
    source.send('ack=1');
    source.send('alarm=9');
    expect(source.lamp()).toEqual({ level: 3, acknowledged: true });
    source.send('alarm=0');
    expect(source.lamp()).toEqual({ level: 0, acknowledged: false });
  });

  it('is still after stop, also when stopped from within an event', async () => {
    const outer = run();
    vi.advanceTimersByTime(500);
    await outer.source.stop();
    const count = outer.events.length;
    vi.advanceTimersByTime(5000);
    expect(outer.events).toHaveLength(count);

    const source = simulatedSource({ clock: new SteppedClock(), speed: 1000, traits: bigIron });
    let samples = 0;
    source.start((event) => {
      if (event.kind !== 'sample') return;
      samples += 1;
      if (samples === 5) void source.stop();
    });
    vi.advanceTimersByTime(200);
    expect(samples).toBe(5);
  });
});
