import { describe, expect, it } from 'vitest';
import type { ShopEntry } from '../../../../shared/shop/entry.ts';
import { FakeSource } from '../support/bench.ts';
import { inShop, waterBorne } from './support/in-shop.ts';

const HOUR_MS = 3_600_000;

describe('the wall clock', () => {
  it('of a machine that slept has gone on, and so has the coat', async () => {
    const one = await inShop();
    const id = await one.put(waterBorne);
    one.wall.aheadMs += HOUR_MS;
    one.wait(1);
    expect(one.coat(id)).toMatchObject({ state: 'due', stage: 'set-to-touch' });
    expect(one.cure.coats().clock).toBeNull();
  });

  it.each([-3, 5])('that is set by %i h takes the coats along, and that is said', async (hours) => {
    const one = await inShop();
    const id = await one.put(waterBorne);
    one.wait(600);
    const before = one.coat(id);
    one.wall.aheadMs += hours * HOUR_MS;
    one.program.drying.clockSet({ byMs: hours * HOUR_MS, sinceBootMs: 100 * HOUR_MS });
    one.wait(1);
    const after = one.coat(id);
    const byMs = (a: string | null | undefined, b: string | null | undefined): number =>
      Date.parse(a ?? '') - Date.parse(b ?? '');
    expect(byMs(after.startedAt, before.startedAt)).toBe(hours * HOUR_MS);
    for (const [i, { likely }] of after.stages.entries())
      expect(byMs(likely, before.stages[i]?.likely)).toBe(hours * HOUR_MS);
    expect(after.state).toBe(before.state);
    expect(one.cure.coats().clock).toMatchObject({ byMs: hours * HOUR_MS, while: 'running' });
  });
});

describe('time that goes on with nothing happening', () => {
  it('is noted in the journal, and shows on no page', async () => {
    const one = await inShop({ byWallClock: true, hot: false });
    await one.put(waterBorne);
    // Until the start can't be taken back any more, and that has been told.
    for (let minutes = 0; minutes < 12; minutes += 1) one.wait(60);
    const [noted, before] = [one.journal.length, one.program.live().situation.work.coatRevision];
    for (let minutes = 0; minutes < 10; minutes += 1) one.wait(60);
    expect(one.journal.slice(noted).map(({ happened }) => happened)).toEqual([{ kind: 'runs' }]);
    expect(one.program.live().situation.work.coatRevision).toBe(before);
  });
});

describe('a clock that is set right soon after the machine was started', () => {
  it.each([
    ['stood shortly after its last entry', 600_000],
    ['stood years behind', -50_000 * HOUR_MS],
  ])('and %s, gives the coats the night that nobody counted', async (_, behindMs) => {
    const before = await inShop();
    const id = await before.put(waterBorne);
    const startedAt = before.coat(id).startedAt;
    const one = await inShop({ book: null, aheadMs: behindMs });
    one.program.drying.keeper.takeBook(before.journal);
    one.wait(60);
    expect(one.coat(id).state).toBe('drying');
    one.wall.aheadMs = 10 * HOUR_MS;
    one.program.drying.clockSet({ byMs: 10 * HOUR_MS - behindMs, sinceBootMs: 60_000 });
    one.wait(1);
    expect(one.coat(id).startedAt).toBe(startedAt);
    expect(one.coat(id).state).toBe('due');
    expect(one.cure.coats().clock).toBeNull();
  });
});

describe('the program that comes back', () => {
  const before = async () => {
    const one = await inShop();
    const id = await one.put(waterBorne, 'First end');
    await one.act({ kind: 'check', coat: id, stage: 'set-to-touch', found: 'tacky' }, 'tap');
    return { id, journal: one.journal, shown: one.coat(id) };
  };
  const back = async (entries: readonly ShopEntry[], byMs: number) => {
    const one = await inShop({ book: null });
    const moved = entries.map((entry) => ({ ...entry, atUtcMs: entry.atUtcMs + byMs }));
    one.program.drying.keeper.takeBook(moved);
    one.wait(1);
    return one;
  };

  it('takes in the book once, however often that is opened', async () => {
    const { journal } = await before();
    const one = await back(journal, 0);
    const late = await one.put(waterBorne, 'Middle');
    one.program.drying.keeper.takeBook([]);
    one.wait(1);
    expect(one.cure.coats().coats.map(({ id }) => id)).toContain(late);
  });

  it('goes on with its coats, and knows the commands of before', async () => {
    const { id, journal, shown } = await before();
    const one = await back(journal, 0);
    expect(one.coat(id).stages.map(({ likely }) => likely)).toEqual(shown.stages.map(({ likely }) => likely));
    await one.act({ kind: 'check', coat: id, stage: 'set-to-touch', found: 'tacky' }, 'tap');
    expect(one.journal.filter((e) => e.happened.kind === 'checked')).toEqual([]);
    expect(one.cure.coats().clock).toBeNull();
  });

  it('with its clock behind goes on from where it left off, says so, and shows a wider range for it', async () => {
    const { id, journal } = await before();
    const one = await back(journal, 7_200_000);
    expect(one.cure.coats().clock).toMatchObject({ while: 'off' });
    expect(Date.parse(one.coat(id).startedAt)).toBeLessThanOrEqual(Date.parse(one.program.live().at));
    expect(one.coat(id).why).toContain('clock');
  });

  it('after simulated time that ran ahead goes on from there, and blames no clock', async () => {
    const { id, journal } = await before();
    const one = await inShop({ book: null });
    one.program.addSource(new FakeSource('S', one.clock, true));
    const ahead = journal.map((e) => ({ ...e, simulated: true, atUtcMs: e.atUtcMs + 7_200_000 }));
    one.program.drying.keeper.takeBook(ahead);
    one.wait(1);
    expect(one.cure.coats().clock).toBeNull();
    expect(one.coat(id).why).not.toContain('clock');
  });

  it('tells of a coat whose cement is gone, and loses nothing of the others', async () => {
    const { id, journal } = await before();
    const gone = journal.map((entry) =>
      entry.happened.kind === 'coats'
        ? {
            ...entry,
            commandId: 'g',
            happened: {
              ...entry.happened,
              cement: 'gone',
              places: [{ coat: 'g', side: 1 as const, area: null }],
            },
          }
        : null,
    );
    const one = await back([...journal, ...gone.filter((entry) => entry !== null)], 0);
    expect(one.cure.coats()).toMatchObject({ coats: [{ id }] });
    expect(one.cure.coats().amiss).toEqual([
      { coat: 'g', text: expect.stringContaining('Demo flap, Upper') },
    ]);
    await one.work('Middle');
    one.heat(one.iron, 121, 3);
    expect(one.alarm('wet-cement')?.detail).toContain('gone on Demo flap, Upper');
    expect(one.cure.coats().amiss[0]?.text).toContain('its vapour as one that burns');
    await one.act({ kind: 'end', coat: 'g', why: 'done' });
    expect(one.cure.coats().amiss).toEqual([]);
  });
});
