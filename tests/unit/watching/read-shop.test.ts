import { expect, it } from 'vitest';
import { readShop } from '../../../daemon/watching/shop/read-shop.ts';
import { ShopKeeper } from '../../../daemon/watching/shop/shop-keeper.ts';
import type { ShopEntry } from '../../../shared/shop/entry.ts';

const nothing = { visits: [], notes: [], entries: [], unreadable: 0 };
const parts = (shops: (() => Promise<typeof nothing>)[]) => {
  const complaints: string[] = [];
  const taken: ShopEntry[] = [];
  const ending = new AbortController();
  const shop = new ShopKeeper(() => undefined);
  const reader = { shop: () => shops.shift()?.() ?? Promise.resolve(nothing) };
  const drying = { takeBook: (entries: readonly ShopEntry[]) => void taken.push(...entries) };
  const done = readShop({ reader, shop, drying, ending: ending.signal, complain: (m) => complaints.push(m) });
  return { complaints, ending, shop, done };
};
const fails = () => Promise.reject(new Error('the disk is away'));

it('is ready once the book was read', async () => {
  const { shop, done, complaints } = parts([]);
  expect(shop.ready).toBe(false);
  await done;
  expect([shop.ready, complaints]).toEqual([true, []]);
});

it('says once how many rows of the journal are left out, and takes the others', async () => {
  const { shop, done, complaints } = parts([() => Promise.resolve({ ...nothing, unreadable: 2 })]);
  await done;
  expect(shop.ready).toBe(true);
  expect(complaints).toEqual([expect.stringContaining('left out: 2')]);
});

it('says nothing where the program ends meanwhile', async () => {
  let reject: (error: Error) => void = () => undefined;
  const one = parts([() => new Promise((_, no) => (reject = no))]);
  one.ending.abort();
  reject(new Error('the reader is gone'));
  await one.done;
  expect([one.shop.ready, one.complaints]).toEqual([false, []]);
});

it('says that it failed, and ends its waiting with the program', async () => {
  const one = parts([fails]);
  await expect.poll(() => one.complaints).toHaveLength(1);
  one.ending.abort();
  await one.done;
  expect(one.shop.ready).toBe(false);
});
