import { describe, expect, it } from 'vitest';
import {
  type Hearing,
  hearingAfter,
  nobodyYet,
  type Seen,
  UNHEARD_AFTER_MS,
} from '../../../daemon/watching/hearing.ts';

/** What comes of looking at each of these moments, in order. */
const looked = (...looks: readonly (readonly [atMs: number, seen: Seen])[]): Hearing =>
  looks.reduce((before, [atMs, seen]) => hearingAfter(before, seen, atMs), nobodyYet);

const deaf = { armedPages: 0, hot: true };

describe('whether an alarm could be heard', () => {
  it('is not asked while nothing is hot', () => {
    expect(looked([0, { armedPages: 0, hot: false }], [60_000, { armedPages: 0, hot: false }])).toEqual({
      armedPages: 0,
      sinceMs: null,
      unheard: false,
    });
  });

  it('is denied once a plate has been hot with no page armed for as long as a page takes to load', () => {
    expect(looked([100, deaf], [100 + UNHEARD_AFTER_MS - 1, deaf]).unheard).toBe(false);
    expect(looked([100, deaf], [100 + UNHEARD_AFTER_MS, deaf])).toMatchObject({
      unheard: true,
      sinceMs: 100,
    });
  });

  it('is granted at once when a page is armed, or nothing is hot any more', () => {
    const long = [
      [0, deaf],
      [UNHEARD_AFTER_MS, deaf],
    ] as const;
    expect(looked(...long).unheard).toBe(true);
    expect(looked(...long, [4000, { armedPages: 2, hot: true }])).toMatchObject({
      unheard: false,
      armedPages: 2,
    });
    expect(looked(...long, [4000, { armedPages: 0, hot: false }]).unheard).toBe(false);
  });

  it('begins its wait anew when the last armed page is lost', () => {
    const armed = { armedPages: 1, hot: true };
    const lost = looked([0, deaf], [2000, armed], [9000, deaf]);
    expect(lost).toEqual({ armedPages: 0, sinceMs: 9000, unheard: false });
    expect(hearingAfter(lost, deaf, 9000 + UNHEARD_AFTER_MS).unheard).toBe(true);
  });
});
