import { describe, expect, test } from 'vitest';
import { shippedSchedule } from '../../../shared/heat/shipped.ts';
import { guardBandK } from '../../../shared/thermometer/uncertainty.ts';
import { Live } from './support/live.ts';
import { carried, LIMIT_C, PROBE, probeSettings, watchSettings } from './support/settings.ts';

const TOE = 'board/2';
const over = (unevenness?: { overK: number; uK: number }) =>
  new Live(carried(watchSettings([probeSettings(PROBE, unevenness === undefined ? {} : { unevenness })])));

describe('limits hold for the hottest spot', () => {
  test('of two probes, whichever is hotter raises the alarm, and the iron is as hot as that', () => {
    const live = new Live(carried(watchSettings([probeSettings(), probeSettings(TOE)])));
    live.readAll(20, { [PROBE]: 150, [TOE]: LIMIT_C + 2 });
    expect(live.alarm('over-limit', TOE)).toMatchObject({ state: 'unacknowledged' });
    expect(live.alarm('over-limit', TOE)?.peakC).toBeCloseTo(LIMIT_C + 2, 1);
    expect(live.alarm('over-limit', PROBE)).toBeUndefined();
    const turned = new Live(carried(watchSettings([probeSettings(), probeSettings(TOE)])));
    turned.readAll(20, { [PROBE]: LIMIT_C + 2, [TOE]: 150 });
    expect(turned.alarm('over-limit', PROBE)?.state).toBe('unacknowledged');
  });

  test('heading for the limit is judged of each probe too', () => {
    const live = new Live(carried(watchSettings([probeSettings(), probeSettings(TOE)])));
    live.readAll(5, { [PROBE]: 140, [TOE]: LIMIT_C - 35 });
    live.readAll(30, { [PROBE]: 140, [TOE]: (s) => LIMIT_C - 35 + 1.1 * s });
    expect(live.changes).toContain('heading-for-limit raised');
    expect(live.alarm('heading-for-limit', PROBE)).toBeUndefined();
  });

  test('with one probe the known excess of the hottest spot goes on top of what is not known', () => {
    const plainC = LIMIT_C - 1;
    expect(over().read(20, plainC).alarm('over-limit')).toBeUndefined();
    const uneven = { overK: 8, uK: 2 };
    const limitC = LIMIT_C - 8;
    expect(over(uneven).read(20, plainC).alarm('over-limit')?.state).toBe('unacknowledged');
    expect(over(uneven).read(20, limitC).alarm('over-limit')?.state).toBe('unacknowledged');
    // How well the excess is known adds to the rest by squares, so it is not as much as it is alone.
    expect(
      over(uneven)
        .read(20, limitC - guardBandK(2, 0.95))
        .alarm('over-limit'),
    ).toBeUndefined();
  });

  test('an excess that comes with new settings counts from then on, and goes with them', () => {
    const live = over().read(20, LIMIT_C - 3);
    const unevenness = { overK: 6, uK: 1 };
    live.give({ kind: 'settings', settings: watchSettings([probeSettings(PROBE, { unevenness })]) });
    live.read(10, LIMIT_C - 3);
    expect(live.alarm('over-limit')?.state).toBe('unacknowledged');
    live.acknowledge('over-limit', PROBE).give({ kind: 'settings', settings: watchSettings() });
    live.read(30, LIMIT_C - 4);
    expect(live.alarm('over-limit')?.state).toBe('normal');
    expect(LIMIT_C).toBeLessThan(shippedSchedule.fabricLimitC);
  });
});
