import { afterEach, describe, expect, it } from 'vitest';
import type { ProbeSource, SourceEvent } from '../daemon/probe/source.ts';
import { deviceOf } from '../shared/thermometer/sample.ts';

/** A source under test, and how to make it yield. */
export interface SourceUnderTest {
  readonly source: ProbeSource;
  /** Makes a started source yield: settles once `enough` says so. */
  readonly yieldUntil: (enough: () => boolean) => Promise<void>;
  /** Gives back what the source was given. */
  readonly cleanUp?: () => Promise<void>;
}

/** What every probe source keeps to, whatever it reads from. `make` gives a new one, not yet started. */
export function sourceContract(name: string, make: () => Promise<SourceUnderTest>): void {
  describe(`${name} keeps the contract of probe sources:`, () => {
    let under: SourceUnderTest | null = null;

    const made = async (): Promise<SourceUnderTest> => {
      under = await make();
      return under;
    };

    /** A source that has yielded three samples, with all its events. */
    const yielded = async (): Promise<SourceUnderTest & { events: SourceEvent[] }> => {
      const made3 = await made();
      const events: SourceEvent[] = [];
      made3.source.start((event) => events.push(event));
      await made3.yieldUntil(() => events.filter((e) => e.kind === 'sample').length >= 3);
      return { ...made3, events };
    };

    afterEach(async () => {
      await under?.source.stop();
      await under?.cleanUp?.();
      under = null;
    });

    it('it has a status before it is started, and can be stopped without a start', async () => {
      const { source } = await made();
      expect(source.status().linesAccepted).toBe(0);
      await source.stop();
    });

    it('it says how its link is before it yields a sample, and then that it is connected', async () => {
      const { events, source } = await yielded();
      const kinds = events.map((event) => (event.kind === 'link' ? event.link : event.kind));
      expect(events[0]?.kind).toBe('link');
      expect(kinds.indexOf('connected')).toBeGreaterThanOrEqual(0);
      expect(kinds.indexOf('connected')).toBeLessThan(kinds.indexOf('sample'));
      expect(source.status().link).toBe('connected');
    });

    it('its samples are of its own device, and hold numbers, air or faults', async () => {
      const { events, source } = await yielded();
      for (const event of events) {
        if (event.kind !== 'sample') continue;
        expect(deviceOf(event.sample.probe)).toBe(source.device.id);
        const { tC, emfUv, coldJunctionC, airC, rhPct, faults } = event.sample;
        const numbers = [tC, emfUv, coldJunctionC, airC, rhPct].filter((value) => value !== null);
        expect(numbers.every(Number.isFinite)).toBe(true);
        expect(numbers.length + faults.length).toBeGreaterThan(0);
      }
    });

    it('its times are whole milliseconds and never decrease', async () => {
      const { events } = await yielded();
      const times = events.map((event) => event.tMs);
      expect(times.every(Number.isInteger)).toBe(true);
      expect([...times].sort((a, b) => a - b)).toEqual(times);
    });

    it('its status survives JSON, and counts what it yielded', async () => {
      const { events, source } = await yielded();
      const status = source.status();
      expect(JSON.parse(JSON.stringify(status))).toEqual(status);
      const samples = events.filter((event) => event.kind === 'sample').length;
      expect(status.linesAccepted).toBeGreaterThanOrEqual(samples);
      expect(status.device).toEqual(source.device);
    });

    it('it takes words to the device at any time', async () => {
      const { source, yieldUntil } = await made();
      source.send('alarm=0');
      let events = 0;
      source.start(() => {
        events += 1;
      });
      source.send('alarm=2');
      await yieldUntil(() => events > 0);
      source.send('ack=1');
      await source.stop();
      source.send('alarm=0');
    });

    it('it is silent once it was told to stop, and may be told twice', async () => {
      const { events, source } = await yielded();
      const stopped = source.stop();
      const told = events.length;
      await stopped;
      await source.stop();
      await new Promise((resolve) => setImmediate(resolve));
      expect(events).toHaveLength(told);
    });
  });
}
