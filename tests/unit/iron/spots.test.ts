import { describe, expect, test } from 'vitest';
import {
  expectedOverK,
  type KeptPlate,
  noPlate,
  objectionToSpot,
  overProbeK,
  type SpotPlace,
  type TypedSpot,
  typedEvenness,
  unevennessFor,
  withLook,
  withoutSpot,
  withSpot,
} from '../../../shared/iron/spots.ts';

const PROBE = 'board/1';
const AT = '2026-05-01T09:00:00Z';
const nothing = noPlate({ id: 'iron', simulated: false });

const spot = (place: SpotPlace, readC: number, probeC: number, more: Partial<TypedSpot> = {}): TypedSpot => ({
  place,
  readC,
  thermometerK: 3,
  probeC,
  slopeKPerS: 0,
  madeWith: { probe: PROBE, calibration: null },
  at: AT,
  ...more,
});
const plateOf = (...spots: readonly TypedSpot[]): KeptPlate => spots.reduce(withSpot, nothing);

/** The thermometer reads 2 K less than the probe everywhere; the plate swung by 14 K between the readings. */
const read = plateOf(spot('probe', 148, 150), spot('toe', 168, 164), spot('heel', 150, 157));

describe('what typed spots show', () => {
  test('the swing falls out, and so does what probe and thermometer are apart', () => {
    const [, toe, heel] = read.spots;
    expect(overProbeK(read, toe ?? expect.unreachable())).toBe(6);
    expect(overProbeK(read, heel ?? expect.unreachable())).toBe(-5);
    expect(typedEvenness(read)).toMatchObject({
      hottest: { at: 'toe' },
      coldest: { at: 'heel' },
      spreadK: 11,
      overLeadK: 6,
    });
  });

  test('its uncertainty: the thermometer’s limits over the root of 3, of both places', () => {
    expect(unevennessFor(read, PROBE)).toEqual({ overK: 6, uK: Math.hypot(3, 3) / Math.sqrt(3) });
  });

  test('a plate that goes while it is read makes it wider', () => {
    const moving = plateOf(spot('probe', 148, 150), spot('toe', 168, 164, { slopeKPerS: -0.4 }));
    // 5 s at 0.4 K/s are 2 K, as limits.
    expect(unevennessFor(moving, PROBE)?.uK).toBeCloseTo(Math.sqrt((9 + 9 + 4) / 3), 12);
  });

  test('nothing before the place of the probe is typed, and nothing of a probe that is another one', () => {
    const without = plateOf(spot('toe', 168, 164));
    expect(typedEvenness(without)).toBeNull();
    expect(unevennessFor(without, PROBE)).toBeNull();
    expect(unevennessFor(read, 'board/2')).toBeNull();
  });

  test('a spot that was held against another probe or calibration doesn’t count', () => {
    const mixed = withSpot(
      read,
      spot('middle', 190, 164, { madeWith: { probe: PROBE, calibration: 'later' } }),
    );
    expect(typedEvenness(mixed)).toMatchObject({ hottest: { at: 'toe' }, count: 3 });
  });

  test('where the probe sits at the hottest spot, limits need nothing more', () => {
    const cooler = plateOf(spot('probe', 150, 150), spot('toe', 146, 150));
    expect(unevennessFor(cooler, PROBE)).toBeNull();
    expect(expectedOverK(cooler, PROBE)).toBe(0);
  });

  test('typed again, a place has its new reading; taken out, none', () => {
    const again = withSpot(read, spot('toe', 158, 160));
    expect(again.spots).toHaveLength(3);
    expect(unevennessFor(again, PROBE)).toBeNull();
    expect(withoutSpot(again, 'toe')?.spots.map(({ place }) => place)).toEqual(['probe', 'heel']);
    expect(withoutSpot(again, 'left')).toBeNull();
  });
});

test('of spots and of what several probes showed, the dial’s advice counts the most', () => {
  const looked = withLook(read, { lead: PROBE, overLeadK: 9, at: AT });
  expect(expectedOverK(looked, PROBE)).toBe(9);
  expect(expectedOverK(looked, 'board/2')).toBe(0);
  let many = read;
  for (let i = 0; i < 30; i++) many = withLook(many, { lead: PROBE, overLeadK: i / 10, at: AT });
  expect(many.looks).toHaveLength(10);
  expect(expectedOverK(many, PROBE)).toBe(6);
});

describe('what is refused', () => {
  test.each([
    ['no reading', 150, null, 'no-reading'],
    ['no slope yet', 150, { plateC: 150, slopeKPerS: null }, 'no-reading'],
    ['a cold plate', 40, { plateC: 40, slopeKPerS: 0 }, 'cold'],
    ['a plate that rushes', 150, { plateC: 150, slopeKPerS: 0.9 }, 'moving'],
    ['degrees of the other unit', 300, { plateC: 150, slopeKPerS: 0 }, 'far-off'],
    ['degrees of the other unit, the other way', 66, { plateC: 150, slopeKPerS: 0 }, 'far-off'],
    ['nothing of a sound one', 158, { plateC: 150, slopeKPerS: -0.3 }, null],
  ] as const)('%s', (_, readC, probe, objection) => {
    expect(objectionToSpot(readC, probe)).toBe(objection);
  });
});
