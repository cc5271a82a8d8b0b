import { expect, it } from 'vitest';
import { firstSettings, settingsSchema } from '../../../daemon/settings/settings.ts';
import { upgraded } from '../../../daemon/settings/upgrade.ts';

const probe = { id: 'A/1', label: 'toe', thermocouple: 'K', unit: 'degC' };
const { calibrations: _, ...first } = firstSettings;
const iron = { id: 'i', name: 'Iron', probes: ['A/1', 'A/2'], scheduleId: 'shipped', simulated: false };

it('settings of the first format are read: an allowance that somebody stated stays one, the shipped one goes', () => {
  const old = {
    ...first,
    format: 1,
    irons: [iron],
    probes: [
      { ...probe, guardBandK: 2.2 },
      { ...probe, id: 'A/2', guardBandK: 5 },
    ],
  };
  const settings = settingsSchema.parse(upgraded(old));
  expect(settings).toMatchObject({ format: 2, calibrations: [], irons: [{ confidence: 0.95 }] });
  expect(settings.probes.map((one) => [one.mountingK, one.toleranceClass, one.lag])).toEqual([
    [null, 'astm-standard', null],
    [5, 'astm-standard', null],
  ]);
});

it('anything else is left for the schema to judge', () => {
  for (const value of [
    null,
    1,
    [],
    { format: 3 },
    { format: 1, probes: [{ guardBandK: 'much' }] },
    firstSettings,
  ])
    expect(upgraded(value)).toBe(value);
});
