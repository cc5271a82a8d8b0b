import { expect, it } from 'vitest';
import { jobOf, tableText, waysOver } from './where-next/study.ts';

/** `SOLEPLATE_PIECES` takes another number of simulated pieces. */
const PIECES = Number(process.env['SOLEPLATE_PIECES'] ?? 400);

it(`${PIECES} pieces ironed as proposed, and along from end to end`, () => {
  const all = Array.from({ length: PIECES }, (_, i) => waysOver(jobOf(i + 1), i + 1));
  console.log(tableText(all));
  for (const [proposed, , turning] of all) {
    if (proposed === undefined || turning === undefined) return expect.unreachable();
    expect(proposed.visits).toBe(turning.visits);
    expect(proposed.worstSides).toBeLessThanOrEqual(turning.worstSides + 1e-9);
    expect(proposed.worstEnds).toBeLessThanOrEqual(turning.worstEnds + 1e-9);
    expect(proposed.turns).toBeLessThanOrEqual(turning.turns);
  }
});
