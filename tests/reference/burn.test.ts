import { expect, test } from 'vitest';
import { HOT_C } from '../../shared/iron/heat.ts';
import { COLD_C } from '../../shared/thermometer/thermometer.ts';
import { json } from './data.ts';

/** When a plate may be called measured cold. Source: data/6_alarms/burn_thresholds.json, marked value by value. */

interface Thresholds {
  readonly iso13732_smooth_bare_metal: readonly {
    readonly time_s: number;
    readonly t_c: number | readonly number[];
    readonly status: string;
  }[];
  readonly serious_burn_times: readonly { readonly t_c: number }[];
}
const published = json('6_alarms/burn_thresholds.json') as Thresholds;

test('ISO 13732-1: bare metal is held to 43 °C for 8 h of contact (recalled)', () => {
  const longest = published.iso13732_smooth_bare_metal.find((r) => r.time_s === 8 * 3600);
  expect(longest).toMatchObject({ t_c: 43, status: 'recalled' });
  expect(COLD_C).toBe(longest?.t_c);
});

test('no temperature listed with a shorter time, nor any that burns seriously, is ever called cold', () => {
  const shorter = published.iso13732_smooth_bare_metal.filter((r) => r.time_s < 8 * 3600);
  for (const { t_c } of [...shorter, ...published.serious_burn_times]) {
    for (const c of typeof t_c === 'number' ? [t_c] : t_c) expect(c).toBeGreaterThan(COLD_C);
  }
});

test('an iron counts as coming up only above that, so that it doesn’t flutter', () => {
  expect(HOT_C).toBeGreaterThan(COLD_C);
});
