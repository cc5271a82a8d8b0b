import { describe, expect, test } from 'vitest';
import { residualsLayout } from '../../../../dashboard/setup/calibration/residuals-layout.ts';
import { correctionUK, trustAlong } from '../../../../shared/calibration/correction.ts';
import { residualsK } from '../../../../shared/calibration/fit.ts';
import { contactPoint, fit, fittedProbe } from '../../calibration/points.ts';

function shown(readings: readonly (readonly [readingC: number, referenceC: number])[]) {
  const points = readings.map(([readingC, referenceC]) => contactPoint(readingC, referenceC));
  const correction = fit(points, fittedProbe);
  return {
    correction,
    readingsC: points.map((p) => p.readingC),
    residualsK: residualsK(points, correction),
    along: trustAlong(correction),
  };
}

describe('a residuals drawing', () => {
  const three = shown([
    [130, 133],
    [150, 153.8],
    [165, 168],
  ]);

  test('has each point at its reading and at what is left over of it, the middle being nothing', () => {
    const drawn = residualsLayout(three);
    for (const [i, { x, y }] of drawn.points.entries()) {
      expect(drawn.fromC + x * (drawn.toC - drawn.fromC)).toBeCloseTo(three.readingsC[i] ?? 0, 9);
      expect((0.5 - y) * 2 * drawn.tallK).toBeCloseTo(three.residualsK[i] ?? 0, 9);
    }
    expect(drawn.fromC).toBeLessThan(130);
    expect(drawn.toC).toBeGreaterThan(165);
  });

  test('holds all that is drawn, with room to spare', () => {
    const drawn = residualsLayout(three);
    for (const { x, y } of [...drawn.points, ...drawn.upper, ...drawn.lower]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(1);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(1);
    }
  });

  test('has a band of twice the standard uncertainty, alike on both sides, wider beyond the points', () => {
    for (const { readC, bandK } of three.along)
      expect(bandK).toBeCloseTo(2 * correctionUK(three.correction, readC), 12);
    const { upper, lower } = residualsLayout(three);
    for (const [i, { y }] of upper.entries()) expect(y + (lower[i]?.y ?? 0)).toBeCloseTo(1, 12);
    const bandsK = three.along.map((a) => a.bandK);
    expect(bandsK[0]).toBeGreaterThan(Math.min(...bandsK));
    expect(bandsK.at(-1)).toBeGreaterThan(Math.min(...bandsK));
  });

  test('of one point has a place for it too', () => {
    const [point] = residualsLayout(shown([[150, 154]])).points;
    expect(point).toEqual({ x: 0.5, y: 0.5 });
  });
});
