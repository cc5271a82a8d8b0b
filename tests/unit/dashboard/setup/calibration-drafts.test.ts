import { describe, expect, it } from 'vitest';
import { draftInUnit, dueUtcMs, emptyDraft, keepOf } from '../../../../dashboard/setup/calibration/drafts.ts';
import { readDifference, readTemperature } from '../../../../dashboard/setup/fields/number.ts';

const contact = {
  ...emptyDraft('F'),
  plate: readTemperature('309,2', 'F'),
  accuracy: readDifference('1.8', 'F'),
  instrument: 'bench thermometer',
};

describe('what is typed beside a point', () => {
  it('is sent in degC, hPa and m, whatever it was typed in', () => {
    const asked = keepOf('contact', contact);
    if (!('body' in asked) || asked.body.kind !== 'contact') return expect.unreachable();
    expect(asked.body.plateC).toBeCloseTo(154, 9);
    expect(asked.body.stated?.k).toBeCloseTo(1, 9);
    expect(asked.body).toMatchObject({ instrument: 'bench thermometer', stated: { as: 'limits' } });
    const water = { ...emptyDraft('F'), pressure: '29,92', altitude: '1000' };
    const boiling = keepOf('boiling', water);
    if (!('body' in boiling) || boiling.body.kind !== 'boiling') return expect.unreachable();
    // The standard pressure at sea level: 29.92 inHg and 1013.25 hPa (ISO 2533), the former rounded.
    expect(boiling.body.pressureHpa).toBeCloseTo(1013.2, 1);
    expect(boiling.body.altitudeM).toBeCloseTo(304.8, 9);
  });

  it('that is no number is said at its field; what is missing is left for the daemon to say', () => {
    const wrong = { ...contact, plate: readTemperature('hot', 'F'), accuracy: readDifference('-1', 'F') };
    const asked = keepOf('contact', wrong);
    expect(Object.keys('errors' in asked ? asked.errors : {})).toEqual(['plate', 'accuracy']);
    const unsaid = keepOf('contact', { ...contact, accuracy: readDifference('', 'F') });
    expect(unsaid).toMatchObject({ body: { stated: null } });
    const water = keepOf('boiling', { ...emptyDraft('C'), pressure: '1,0,1' });
    expect(Object.keys('errors' in water ? water.errors : {})).toEqual(['pressure']);
    expect(keepOf('boiling', emptyDraft('C'))).toMatchObject({
      body: { pressureHpa: null, altitudeM: null },
    });
    expect(keepOf('ice', emptyDraft('C'))).toEqual({ body: { kind: 'ice', instrument: '' } });
  });

  it('keeps its meaning in another unit', () => {
    const inC = draftInUnit(contact, 'C');
    expect([inC.plate.text, inC.accuracy.text, inC.unit]).toEqual(['154', '1', 'C']);
    const text = draftInUnit({ ...contact, plate: readTemperature('15x', 'F') }, 'C').plate.text;
    expect(text).toBe('15x');
  });
});

describe('a due date', () => {
  it('is so many months from now, or none', () => {
    expect(dueUtcMs({ ...emptyDraft('C'), due: '12' }, 0)).toBe(365 * 86_400_000);
    expect(dueUtcMs({ ...emptyDraft('C'), due: 'none' }, 0)).toBeNull();
  });
});
