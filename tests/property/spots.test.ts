import fc from 'fast-check';
import { expect, it } from 'vitest';
import { expandedK } from '../../shared/iron/evenness.ts';
import { noPlate, type SpotPlace, spotPlaces, typedEvenness, withSpot } from '../../shared/iron/spots.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Spots of a plate with a known unevenness, read one after the other on its swing by a thermometer and a probe that are off. */
const scenes = fc.record({
  overK: fc.array(between(-15, 15), { minLength: 5, maxLength: 5 }),
  swungC: fc.array(between(120, 180), { minLength: 6, maxLength: 6 }),
  order: fc.shuffledSubarray([...spotPlaces], { minLength: 6 }),
  thermometerOffK: between(-4, 4),
  probeOffK: between(-4, 4),
  errorShare: fc.array(between(-1, 1), { minLength: 6, maxLength: 6 }),
  thermometerK: between(0.5, 4),
});

it('spots in any order on a swinging plate show its unevenness, within what the thermometer may be off by', () => {
  fc.assert(
    fc.property(scenes, ({ overK, swungC, order, errorShare, thermometerK, ...off }) => {
      const trueOverK = (place: SpotPlace): number =>
        place === 'probe' ? 0 : (overK[spotPlaces.indexOf(place) - 1] ?? 0);
      let plate = noPlate({ id: 'iron', simulated: false });
      for (const [i, place] of order.entries()) {
        const hereC = swungC[i] ?? 150;
        const wrongK = thermometerK * (errorShare[i] ?? 0);
        plate = withSpot(plate, {
          place,
          readC: hereC + trueOverK(place) + off.thermometerOffK + wrongK,
          thermometerK,
          probeC: hereC + off.probeOffK,
          slopeKPerS: 0,
          madeWith: { probe: 'board/1', calibration: null },
          at: '2026-05-01T09:00:00Z',
        });
      }
      const found = typedEvenness(plate) ?? expect.unreachable();
      const truth = spotPlaces.map(trueOverK);
      // Two readings, each off by its limits at the most, are apart by twice that; k = 2 of both is 1.6 times.
      const mostK = 2 * thermometerK + 1e-9;
      expect(Math.abs(found.spreadK - (Math.max(...truth) - Math.min(...truth)))).toBeLessThanOrEqual(mostK);
      expect(Math.abs((found.overLeadK ?? 99) - Math.max(...truth))).toBeLessThanOrEqual(mostK);
      expect(expandedK(found.spreadUK)).toBeCloseTo((2 * thermometerK * Math.SQRT2) / Math.sqrt(3), 9);
      expect(found.count).toBe(6);
    }),
  );
});
