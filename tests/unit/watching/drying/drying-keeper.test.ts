import { describe, expect, it } from 'vitest';
import { ShopRuns } from './support/shop-runs.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
const LONG_SINCE_BOOT_MS = 100 * HOUR_MS;

/** A real coat of ten minutes, as the program starts anew with a clock that is wrong. */
const again = (options: Parameters<ShopRuns['start']>[0]): ShopRuns => {
  const shop = new ShopRuns();
  shop.put();
  shop.wait(10 * MINUTE_MS);
  shop.start(options);
  return shop;
};

describe('a clock that is set while the simulated iron runs', () => {
  it.each([5, -3])('by %i h takes real coats along, though none of them is shown', (hours) => {
    const shop = again({ simulated: true });
    shop.put();
    shop.wait(MINUTE_MS);
    shop.set(hours * HOUR_MS, LONG_SINCE_BOOT_MS);
    expect(shop.tooOldMs()).toEqual([0]);
    shop.simulated = false;
    expect(shop.tooOldMs()).toEqual([0]);
    expect(shop.keeper.drying.clock).toMatchObject({ byMs: hours * HOUR_MS, while: 'running' });
    shop.start({ aheadMs: shop.aheadMs });
    expect(shop.tooOldMs()).toEqual([0]);
  });

  it('right soon after the machine was started gives them the time that they had', () => {
    const shop = again({ simulated: true, aheadMs: -10 * HOUR_MS });
    shop.wait(MINUTE_MS);
    shop.set(10 * HOUR_MS, 2 * MINUTE_MS);
    shop.start();
    expect(shop.tooOldMs()).toEqual([0]);
    expect(shop.folded().coats['id 1']).toMatchObject({ clockLosses: 0 });
  });

  it('writes nothing of a shop in which nothing ever happened', () => {
    const shop = again({});
    shop.set(HOUR_MS, LONG_SINCE_BOOT_MS);
    expect(shop.journal.map(({ simulated }) => simulated)).not.toContain(true);
  });
});

describe('a clock that was ahead as the machine started', () => {
  it('and is set back soon after leaves wet coats as old as they are', () => {
    const shop = again({ aheadMs: 2 * HOUR_MS });
    const early = shop.put(30 * MINUTE_MS);
    shop.wait(MINUTE_MS);
    shop.set(-2 * HOUR_MS, 2 * MINUTE_MS);
    expect(shop.tooOldMs()).toEqual([0, 0]);
    expect(shop.keeper.drying.coats[early]).toBeDefined();
    expect(shop.keeper.drying.clock).toMatchObject({ while: 'boot' });
  });

  it('already in the run before is moved back with all that happened', () => {
    const shop = new ShopRuns();
    shop.start({ aheadMs: 2 * HOUR_MS });
    shop.put();
    shop.runOn(5 * HOUR_MS);
    shop.wait(10 * MINUTE_MS);
    shop.start({ aheadMs: 2 * HOUR_MS });
    shop.set(-2 * HOUR_MS, MINUTE_MS);
    expect(shop.tooOldMs()).toEqual([0]);
    expect(shop.keeper.drying.clock).toMatchObject({ while: 'running' });
  });
});

describe('a program that starts more than once before the clock is set right', () => {
  it.each([-50_000, -10, 2])('leaves coats as old as they are, with a clock off by %i h', (hours) => {
    const shop = again({ aheadMs: hours * HOUR_MS });
    shop.put();
    shop.wait(MINUTE_MS);
    shop.start({ aheadMs: hours * HOUR_MS });
    shop.put(5 * MINUTE_MS);
    shop.wait(MINUTE_MS);
    shop.set(-hours * HOUR_MS, 3 * MINUTE_MS);
    expect(shop.tooOldMs()).toEqual([0, 0, 0]);
    expect(Object.values(shop.keeper.drying.coats).map((coat) => coat.clockLosses)).toEqual([0, 0, 0]);
  });
});

describe('a clock that lost time in one run', () => {
  it.each([-10, 2])('and is off by %i h and set right in the next, has lost it still', (hours) => {
    const shop = again({ aheadMs: -HOUR_MS });
    shop.wait(HOUR_MS);
    expect(shop.keeper.drying.coats['id 1']).toMatchObject({ clockLosses: 1 });
    shop.start({ aheadMs: hours * HOUR_MS });
    shop.set(-hours * HOUR_MS, MINUTE_MS);
    expect(shop.keeper.drying.coats['id 1']).toMatchObject({ clockLosses: 1 });
    expect(shop.keeper.drying.clock).toMatchObject({ while: 'boot' });
  });
});

describe('a clock that is set right before the book is read', () => {
  it.each([-50_000, -10, 2])('and was off by %i h, leaves coats of before as old as they are', (hours) => {
    const shop = again({ aheadMs: hours * HOUR_MS, reads: false });
    shop.put(5 * MINUTE_MS);
    shop.wait(1000);
    shop.set(-hours * HOUR_MS, MINUTE_MS);
    shop.put();
    expect(shop.tooOldMs()).toEqual([0, 0]);
    shop.read();
    expect(shop.tooOldMs()).toEqual([0, 0, 0]);
    shop.start();
    expect(shop.tooOldMs()).toEqual([0, 0, 0]);
  });

  it('long after the machine was started does what it does later: all goes along, and that is said', () => {
    const [early, late] = [false, true].map((reads) => {
      const shop = again({ reads });
      shop.set(2 * HOUR_MS, LONG_SINCE_BOOT_MS);
      if (!reads) shop.read();
      return shop;
    });
    expect(early?.keeper.drying.coats).toEqual(late?.keeper.drying.coats);
    expect(early?.keeper.drying.clock).toMatchObject({ while: 'running' });
    expect(early?.tooOldMs()).toEqual([0]);
  });

  it('and still stands before what the book has moves what is of before, and says so', () => {
    const shop = again({ aheadMs: -10 * HOUR_MS, reads: false });
    const put = shop.put();
    shop.wait(1000);
    shop.set(HOUR_MS, MINUTE_MS);
    shop.read();
    expect(shop.tooOldMs()).toEqual([expect.any(Number), 0]);
    expect(shop.tooOldMs()[0]).toBeLessThan(0);
    expect(shop.keeper.drying.coats['id 1']).toMatchObject({ clockLosses: 1 });
    expect(shop.keeper.drying.clock).toMatchObject({ while: 'off' });
    const shown = shop.keeper.drying.coats;
    expect(shop.folded().coats).toEqual(shown);
    expect(shown[put]).toBeDefined();
  });
});

describe('simulated time that went faster than life', () => {
  it('goes on from where it was, whatever the machine’s clock says, and says nothing of that', () => {
    const shop = new ShopRuns();
    shop.start({ simulated: true });
    shop.put();
    shop.aheadMs += 3 * HOUR_MS;
    void shop.keeper.happened({ kind: 'air', airC: 20, rhPct: 50, how: 'typed', probe: '' });
    const ageMs = (): number =>
      shop.nowUtcMs - (Object.values(shop.keeper.drying.coats)[0]?.fromUtcMs ?? Number.NaN);
    shop.wait(HOUR_MS);
    for (const _ of ['once', 'again']) {
      shop.start({ simulated: true });
      expect(Math.abs(ageMs() - 3 * HOUR_MS)).toBeLessThan(10);
      expect(shop.keeper.drying.clock).toMatchObject({ while: 'simulated' });
      expect(Object.values(shop.keeper.drying.coats)).toMatchObject([{ clockLosses: 0 }]);
    }
  });
});

describe('a program that runs on while nothing happens', () => {
  const noted = ({ journal }: ShopRuns, simulated = false): number =>
    journal.filter((e) => e.happened.kind === 'runs' && e.simulated === simulated).length;

  it('notes that, so that a clock which stands before its end is seen to have lost time', () => {
    const shop = new ShopRuns();
    shop.put();
    shop.runOn(5.5 * HOUR_MS);
    shop.wait(10 * HOUR_MS);
    // It stands where the coat was five hours old.
    shop.start({ aheadMs: -10.5 * HOUR_MS });
    expect(shop.keeper.drying.coats['id 1']).toMatchObject({ clockLosses: 1 });
    expect(shop.keeper.drying.clock).toMatchObject({ while: 'off' });
    expect(shop.tooOldMs()[0]).toBeLessThan(-9.5 * HOUR_MS);
  });

  it('every ten minutes at first, and for a coat that is forgotten ever more seldom', () => {
    const shop = new ShopRuns();
    shop.put();
    shop.runOn(8 * HOUR_MS);
    expect(noted(shop)).toBe(48);
    shop.runOn(60 * 24 * HOUR_MS);
    expect(noted(shop)).toBeLessThan(350);
    shop.put();
    const before = noted(shop);
    shop.runOn(HOUR_MS);
    expect(noted(shop)).toBe(before + 6);
  });

  it('says nothing where no coat is open, where other things happen, nor before the book was read', () => {
    const shop = new ShopRuns();
    shop.runOn(HOUR_MS);
    const coat = shop.put();
    for (let i = 0; i < 10; i += 1) {
      shop.runOn(9 * MINUTE_MS);
      void shop.keeper.happened({ kind: 'air', airC: 20, rhPct: 50, how: 'probe', probe: 'A/1' });
    }
    shop.start({ reads: false });
    shop.runOn(HOUR_MS);
    shop.read();
    void shop.keeper.happened({ kind: 'ended', coat, why: 'done' });
    shop.runOn(HOUR_MS);
    expect(noted(shop)).toBe(0);
  });

  it('notes it for real coats while the simulated iron runs too, but not where simulated time is another', () => {
    const shop = again({ simulated: true });
    shop.put();
    shop.runOn(HOUR_MS);
    expect([noted(shop), noted(shop, true)]).toEqual([6, 6]);
    shop.start({ simulated: true, byWallClock: false });
    shop.runOn(HOUR_MS);
    expect([noted(shop), noted(shop, true)]).toEqual([6, 12]);
  });
});
