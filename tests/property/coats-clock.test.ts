import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { ShopRuns } from '../unit/watching/drying/support/shop-runs.ts';

/** Whatever the machine's clock does, no coat counts as older than it is once that is right again, and none loses its age. */

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;

const act = (waitMs: number) =>
  fc.record({
    kind: fc.constantFrom('put', 'air', 'flip'),
    waitMs: fc.integer({ min: 0, max: waitMs }),
    agoMs: fc.constantFrom(0, 1000, HOUR_MS),
  });
type Act = ReturnType<typeof act> extends fc.Arbitrary<infer T> ? T : never;

/** How far a clock is ahead as the machine is started; less than 0: behind, by years where it has no battery, ms. */
const wrongMs = fc.oneof(
  fc.constant(0),
  fc.constant(-50_000 * HOUR_MS),
  fc.integer({ min: -40 * HOUR_MS, max: 40 * HOUR_MS }).filter((ms) => Math.abs(ms) > 2000),
);

const run = fc.record({
  offMs: fc.integer({ min: MINUTE_MS, max: 30 * HOUR_MS }),
  wrongMs,
  simulated: fc.boolean(),
  /** When the book is read: at once, while the clock is wrong, or once it was set right. */
  reads: fc.constantFrom('first', 'wrong', 'right'),
  early: fc.array(act(MINUTE_MS), { maxLength: 5 }),
  /** The program starts once more before the clock is set right. */
  again: fc.boolean(),
  late: fc.array(act(4 * HOUR_MS), { maxLength: 5 }),
});
type Run = typeof run extends fc.Arbitrary<infer T> ? T : never;

function carryOut(shop: ShopRuns, acts: readonly Act[]): void {
  for (const { kind, waitMs, agoMs } of acts) {
    shop.wait(waitMs);
    if (kind === 'flip') shop.simulated = !shop.simulated;
    if (kind === 'put') shop.put(agoMs);
    if (kind === 'air')
      void shop.keeper.happened({ kind: 'air', airC: 20, rhPct: 50, how: 'typed', probe: '' });
  }
}

/** A run whose clock is set right soon after the machine was started. */
function carryOutRun(shop: ShopRuns, { offMs, simulated, reads, early, late, ...one }: Run): void {
  shop.wait(offMs);
  const bootMs = shop.trueMs - 30_000;
  const start = { aheadMs: one.wrongMs, simulated, reads: reads === 'first' };
  shop.start(start);
  carryOut(shop, early);
  if (one.again && start.reads) {
    shop.start(start);
    carryOut(shop, early);
  }
  if (reads === 'wrong') shop.read();
  if (one.wrongMs !== 0) shop.set(-one.wrongMs, shop.trueMs - bootMs);
  if (reads === 'right') shop.read();
  carryOut(shop, late);
}

const inBoth = (shop: ShopRuns, look: () => void): void => {
  for (const simulated of [false, true]) {
    shop.simulated = simulated;
    look();
  }
};

const runs = fc.array(run, { minLength: 1, maxLength: 4 });

test('a clock that is set right soon after the machine was started leaves every coat its age, in both worlds', () => {
  fc.assert(
    fc.property(runs, (all) => {
      const shop = new ShopRuns();
      for (const one of all) carryOutRun(shop, one);
      inBoth(shop, () => {
        for (const ms of shop.tooOldMs()) expect(ms).toBeLessThanOrEqual(0);
        // Before the book is read what is of this run can only be told by its time.
        if (all.every(({ reads }) => reads === 'first')) for (const ms of shop.tooOldMs()) expect(ms).toBe(0);
      });
    }),
    { numRuns: 500 },
  );
});

test('a clock that is set at any other time takes every coat along, whichever world is shown', () => {
  const steps = fc.array(fc.tuple(wrongMs, fc.array(act(HOUR_MS), { maxLength: 3 })), { maxLength: 4 });
  fc.assert(
    fc.property(runs, steps, (all, then) => {
      const shop = new ShopRuns();
      for (const one of all) carryOutRun(shop, { ...one, reads: 'first' });
      for (const [byMs, acts] of then) {
        shop.set(byMs, 100 * HOUR_MS);
        carryOut(shop, acts);
      }
      inBoth(shop, () => {
        for (const ms of shop.tooOldMs()) expect(ms).toBe(0);
      });
    }),
    { numRuns: 300 },
  );
});

test('a clock that stands behind the end of the last run makes no coat older, and its loss is known', () => {
  const ranMs = fc.integer({ min: 1, max: 40 * 60 }).map((minutes) => minutes * MINUTE_MS);
  fc.assert(
    fc.property(
      ranMs,
      fc.double({ min: 0, max: 2, noNaN: true }),
      wrongMs.map((ms) => Math.abs(ms) + 1),
      (ran, part, offMs) => {
        const shop = new ShopRuns();
        shop.put();
        shop.runOn(ran);
        shop.wait(offMs);
        const behindMs = Math.round(part * ran);
        shop.start({ aheadMs: -offMs - behindMs });
        expect(shop.tooOldMs()[0]).toBeLessThanOrEqual(0);
        const losses = shop.keeper.drying.coats['id 1']?.clockLosses;
        // So much may go by without an entry, and a minute until somebody looks.
        if (behindMs > Math.max(10 * MINUTE_MS, 0.02 * ran) + 2 * MINUTE_MS) expect(losses).toBe(1);
      },
    ),
  );
});

test('a journal that is read from its beginning comes to what the program held', () => {
  fc.assert(
    fc.property(runs, (all) => {
      const shop = new ShopRuns();
      for (const one of all) carryOutRun(shop, one);
      inBoth(shop, () => {
        expect(shop.folded()).toEqual(shop.keeper.drying);
      });
    }),
  );
});
