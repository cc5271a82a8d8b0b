import { describe, expect, it } from 'vitest';
import { type ClockReadings, clockChanges } from '../../../daemon/watching/clock-watch.ts';

const before: ClockReadings = { monotonicMs: 1000, wallMs: 1_700_000_000_000, uptimeMs: 50_000 };

/** Ten seconds later, with the clocks apart by so much. */
const later = ({ wall = 0, uptime = 0, monotonic = 0 }): ClockReadings => ({
  monotonicMs: before.monotonicMs + 10_000 + monotonic,
  wallMs: before.wallMs + 10_000 + wall,
  uptimeMs: before.uptimeMs + 10_000 + uptime,
});

describe('two looks at the clocks of the machine', () => {
  it.each([
    ['that kept together', {}, []],
    ['that are slewed or rounded', { wall: 1900, uptime: -1900 }, []],
    ['after the wall clock was set forward', { wall: 3_600_000 }, [{ change: 'step', byMs: 3_600_000 }]],
    ['after it was set back', { wall: -7200.4 }, [{ change: 'step', byMs: -7200 }]],
    // A suspend stops the monotonic clock; the time since boot and the wall clock go on.
    ['after a suspend', { wall: 60_000, uptime: 60_000 }, [{ change: 'suspend', byMs: 60_000 }]],
    ['after a suspend with slewing', { wall: 61_900, uptime: 60_000 }, [{ change: 'suspend', byMs: 60_000 }]],
    [
      'after a suspend, and a step before anybody looked',
      { wall: 3_660_000, uptime: 60_000 },
      [
        { change: 'suspend', byMs: 60_000 },
        { change: 'step', byMs: 3_600_000 },
      ],
    ],
    [
      'after a suspend that a step hides in the wall clock',
      { wall: 0, uptime: 60_000 },
      [
        { change: 'suspend', byMs: 60_000 },
        { change: 'step', byMs: -60_000 },
      ],
    ],
    // A host that did nothing for long: all clocks say so alike.
    ['after a stall', { wall: 30_000, uptime: 30_000, monotonic: 30_000 }, []],
  ])('%s', (_, apart, changes) => {
    const after = later(apart);
    const told = changes.map((change) => ({ ...change, sinceBootMs: after.uptimeMs }));
    expect(clockChanges(before, after)).toEqual(told);
  });
});
