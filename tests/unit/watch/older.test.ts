import { expect, test } from 'vitest';
import type { WatchSettings } from '../../../shared/watch/input.ts';
import { completed } from '../../../shared/watch/older.ts';
import { watchSettings } from './support/settings.ts';

test('settings that an older version stored are completed; those of this version stay the same object', () => {
  const now = watchSettings();
  expect(completed(now)).toBe(now);
  const { confidence: _, ...iron } = now.iron;
  const old = {
    ...now,
    iron,
    probes: [{ id: 'board/1', label: 'toe', thermocouple: 'J', unit: 'degC', guardBandK: 2.2 }],
  } as unknown as WatchSettings;
  expect(completed(old)).toMatchObject({
    iron: { confidence: 0.95 },
    probes: [
      { thermocouple: 'J', toleranceClass: 'astm-standard', mountingK: null, lag: null, calibration: null },
    ],
  });
});
