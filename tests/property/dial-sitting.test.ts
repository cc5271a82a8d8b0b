import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { settledCycle } from '../../daemon/probe/simulated/cycle.ts';
import { bigIron, swingingIron } from '../../daemon/probe/simulated/irons.ts';
import { advanceBody, coldBody, type IronBody } from '../../daemon/probe/simulated/physics.ts';
import { noSitting } from '../../shared/iron/dial/sitting.ts';
import { Sitter } from '../unit/iron/dial/sitting-plate.ts';

/** However an iron is used and interrupted: what is said of a mark is what the iron does at it. */

const ambientC = 21;
const dialsC = [112, 138, 165];
const readEveryMs = 1000;

interface Spell {
  readonly forS: number;
  /** Index of the mark that the dial is turned to and told at; null: switched off; -1: left as it is. */
  readonly mark: number | null;
  readonly place: 'unknown' | 'on-work' | 'on-rest';
  readonly stageId: string;
  /** Silence before it, during which the iron goes on as before, s. */
  readonly silentS: number;
  /** Told even where the dial stands there already. */
  readonly toldAnew: boolean;
}

const spells: fc.Arbitrary<readonly Spell[]> = fc.array(
  fc.record({
    forS: fc.oneof(fc.integer({ min: 5, max: 200 }), fc.integer({ min: 600, max: 2000 })),
    mark: fc.oneof(
      { arbitrary: fc.constant(-1), weight: 4 },
      { arbitrary: fc.integer({ min: 0, max: 2 }), weight: 4 },
      { arbitrary: fc.constant(null), weight: 1 },
    ),
    place: fc.constantFrom('on-rest', 'on-rest', 'on-rest', 'on-work', 'unknown'),
    stageId: fc.constantFrom('tack', 'tack', 'tack', 'final'),
    silentS: fc.constantFrom(0, 0, 0, 4, 20, 90),
    toldAnew: fc.boolean(),
  }),
  { minLength: 2, maxLength: 8 },
);

/** After all of it, told anew and left alone for long enough to come there and cycle: that is always measured. */
const leftAlone = { forS: 3000, place: 'on-rest', stageId: 'tack', silentS: 0, toldAnew: true } as const;

function use(body: IronBody, way: readonly Spell[]): Sitter {
  const sitter = new Sitter();
  let state = coldBody(ambientC);
  let around = { ambientC, dialC: null as number | null, onWork: false, runaway: false };
  let marked: number | null = null;
  for (const { forS, mark: turned, place, stageId, silentS, toldAnew } of way) {
    const mark: number | null = turned === -1 ? marked : turned;
    state = advanceBody(body, state, around, silentS);
    sitter.tMs += silentS * 1000;
    around = {
      ...around,
      dialC: mark === null ? null : (dialsC[mark] ?? null),
      onWork: place === 'on-work',
    };
    sitter.say({ place, stageId, ...(mark === marked && !toldAnew ? {} : { mark }) });
    marked = mark;
    for (let s = 0; s < forS; s += readEveryMs / 1000) {
      state = advanceBody(body, state, around, readEveryMs / 1000);
      sitter.hear(sitter.tMs + readEveryMs, state.plateC);
    }
  }
  return sitter;
}

describe.each([bigIron, swingingIron])('$name', ({ body }) => {
  const truths = dialsC.map((dialC) =>
    settledCycle(body, { ambientC, dialC, onWork: false, runaway: false }),
  );

  it('every stretch has the mean, peaks and troughs of its mark; what is kept stays small and plain', () => {
    fc.assert(
      fc.property(spells, fc.integer({ min: 0, max: 2 }), (way, lastMark) => {
        const { stretches, loads, sitting } = use(body, [...way, { ...leftAlone, mark: lastMark }]);
        expect(stretches.at(-1)?.mark).toBe(lastMark);
        for (const { mark, figures } of stretches) {
          const truth = typeof mark === 'number' ? truths[mark] : undefined;
          if (truth === undefined) throw new Error(`nobody told of mark ${mark}`);
          expect(Math.abs(figures.meanC - truth.meanC)).toBeLessThan(1);
          expect(Math.abs(figures.peakC - truth.peakC)).toBeLessThan(1);
          expect(Math.abs(figures.troughC - truth.troughC)).toBeLessThan(1);
          if (figures.heatingUpS !== null) expect(figures.heatingUpS).toBeGreaterThan(30);
        }
        for (const { meanDropK } of loads) if (meanDropK !== null) expect(meanDropK).toBeGreaterThan(-2);
        expect(JSON.parse(JSON.stringify(sitting))).toEqual(sitting);
        expect(JSON.stringify(sitting).length).toBeLessThan(7000);
      }),
      { numRuns: 12 },
    );
  });
});

it('begins with nothing', () => {
  expect(new Sitter().sitting).toEqual(noSitting);
});
