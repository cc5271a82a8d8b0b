import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoPad, live } from '../unit/iron/check/pads.ts';

const visit = fc.record({
  waitS: fc.integer({ min: 1, max: 60 }),
  forS: fc.integer({ min: 2, max: 90 }),
  plateC: fc.double({ min: 21, max: 220, noNaN: true }),
});

const traits = fc.record({
  lagS: fc.double({ min: 1, max: 20, noNaN: true }),
  airS: fc.double({ min: 30, max: 120, noNaN: true }),
  noiseK: fc.double({ min: 0, max: 0.6, noNaN: true }),
  resolutionK: fc.constantFrom(0.001, 0.25, 1),
  everyS: fc.constantFrom(0.1, 0.5, 1, 3),
});

describe('a check pad on which an iron is parked again and again', () => {
  it('never tells of more than it has read, tells each check in order, and stays small', () => {
    fc.assert(
      fc.property(fc.array(visit, { maxLength: 6 }), traits, fc.boolean(), (visits, pad, known) => {
        let s = 0;
        const spans = visits.map(({ waitS, forS, plateC }) => {
          const fromS = s + waitS;
          s = fromS + forS;
          return { fromS, toS: s, plateC };
        });
        const run = live(
          s + 60,
          (at) => spans.find((span) => at >= span.fromS && at < span.toS)?.plateC ?? null,
          { ...demoPad, ...pad },
          { tauS: known ? pad.lagS : null, uK: 2.2 },
        );
        const hottestReadC = Math.max(...run.readC);
        let begunMs = -1;
        let open = false;
        for (const { fromMs, toMs, hottestC, lowestC, settledMs, ended } of run.found) {
          expect(hottestC).toBeLessThanOrEqual(hottestReadC + 1e-9);
          expect(lowestC ?? hottestC).toBeLessThanOrEqual(hottestC);
          expect(toMs).toBeGreaterThanOrEqual(fromMs);
          if (open) expect(fromMs).toBe(begunMs);
          else expect(fromMs).toBeGreaterThan(begunMs);
          if (ended === null) expect(settledMs).not.toBeNull();
          begunMs = fromMs;
          open = ended === null;
        }
        expect(run.pad.levels.length).toBeLessThanOrEqual(90);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  it('is within the uncertainty that it settled to, where its time constant is known', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 220, noNaN: true }),
        fc.double({ min: 1.5, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (plateC, lagS, noiseK) => {
          const pad = { ...demoPad, lagS, noiseK, airS: 60 };
          const plate = (s: number) => (s >= 10 && s < 160 ? plateC : null);
          const { found } = live(150, plate, pad, { tauS: lagS, uK: 2.2 });
          const [settled] = found;
          expect(settled?.settledMs).not.toBeNull();
          expect(Math.abs((settled?.hottestC ?? 0) - plateC)).toBeLessThan(2.2 + 4 * noiseK);
        },
      ),
      { numRuns: 60, seed: 12 },
    );
  });
});
