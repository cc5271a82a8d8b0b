import { describe, expect, it } from 'vitest';
import { tiles } from '../../../../dashboard/parts/hatch.tsx';
import { levelHatch, levelOf, levelsOf } from '../../../../dashboard/piece/levels.ts';
import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import { fToC } from '../../../../shared/units/temperature.ts';

describe('the level of a stage', () => {
  it('is one for all stages of one target, the coolest first', () => {
    expect(levelsOf(shippedSchedule)).toEqual([
      { number: 1, stages: ['tack', 'initial shrink', 'tape smoothing'] },
      { number: 2, stages: ['intermediate shrink'] },
      { number: 3, stages: ['final shrink'] },
    ]);
  });

  it('of a stage that the schedule has changed since is that of the hottest that is not hotter', () => {
    expect(levelOf(null, shippedSchedule)).toBe(0);
    expect(levelOf({ targetC: fToC(350) }, shippedSchedule)).toBe(3);
    expect(levelOf({ targetC: fToC(320) }, shippedSchedule)).toBe(2);
    expect(levelOf({ targetC: fToC(200) }, shippedSchedule)).toBe(1);
  });
});

/** How much of a hatching is drawn: the length of its strokes within a tile, for each unit of its area. */
function inkOf({ size, path }: { readonly size: number; readonly path: string }): number {
  const strokes = [...path.matchAll(/M(-?\d+) (-?\d+) L(-?\d+) (-?\d+)/g)];
  const inside = strokes.map(([, ...ends]) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = ends.map(Number);
    const steps = 1000;
    const held = Array.from({ length: steps }, (_, i) => (i + 0.5) / steps).filter((t) => {
      const [x, y] = [x1 + t * (x2 - x1), y1 + t * (y2 - y1)];
      return x >= 0 && x <= size && y >= 0 && y <= size;
    });
    return (Math.hypot(x2 - x1, y2 - y1) * held.length) / steps;
  });
  return inside.reduce((sum, length) => sum + length, 0) / size ** 2;
}

describe('the hatching of a level', () => {
  it('is denser the hotter the stage: half as much again at least', () => {
    const inks = [1, 2, 3, 4].map((level) => {
      const name = levelHatch(level);
      return name === null ? 0 : inkOf(tiles[name]);
    });
    expect(inks[0]).toBeGreaterThan(0);
    for (const [i, ink] of inks.slice(1).entries()) expect(ink).toBeGreaterThan(1.5 * (inks[i] ?? 0));
  });

  it('of more levels than there are hatchings is the densest, and of none is none', () => {
    expect(levelHatch(0)).toBeNull();
    expect(levelHatch(9)).toBe(levelHatch(4));
  });
});
