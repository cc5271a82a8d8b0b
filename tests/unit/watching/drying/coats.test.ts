import { describe, expect, it } from 'vitest';
import type { Settings } from '../../../../daemon/settings/settings.ts';
import type { CoatAct } from '../../../../shared/messages/cure.ts';
import { cement } from '../../web/support/shop-samples.ts';
import { inShop, waterBorne } from './support/in-shop.ts';

describe('a coat', () => {
  it('of a cement that nothing is learned of takes the instructions’ time at the instructions’ conditions', async () => {
    const one = await inShop();
    const id = await one.put(waterBorne);
    const { startedAt, stages, state, wet, placeName } = one.coat(id);
    const afterS = stages.map(({ likely }) => (Date.parse(likely ?? '') - Date.parse(startedAt)) / 1000);
    // The middle of what the example gives: 20 to 30 min, 1 to 2 h, 2 to 4 h, 1 to 2 days.
    expect(afterS.slice(0, 3)).toEqual([1500, 5400, 10_800]);
    expect({ state, wet, placeName }).toEqual({ state: 'drying', wet: true, placeName: 'Demo flap, Upper' });
  });

  it('comes sooner once the heater is on, and as much later as the air was worse', async () => {
    const one = await inShop();
    const id = await one.put(waterBorne);
    const before = Date.parse(one.coat(id).stages[1]?.likely ?? '');
    one.wait(900);
    await one.cure.sayAir({ airC: 28, rhPct: 37 }, 'heater');
    one.wait(1);
    const after = Date.parse(one.coat(id).stages[1]?.likely ?? '');
    expect(after).toBeLessThan(before - 15 * 60_000);
    await one.cure.sayAir({ airC: 20, rhPct: 100 }, 'fog');
    one.wait(1);
    expect(one.coat(id)).toMatchObject({ stands: true });
    expect(one.coat(id).stages[1]?.likely).toBeNull();
  });

  it('may be ready from its likely time on, is due from its latest, and dry only by a tap', async () => {
    const one = await inShop();
    const id = await one.put(waterBorne);
    one.wait(1501);
    expect(one.coat(id)).toMatchObject({ state: 'may-be-ready', stage: 'set-to-touch' });
    one.wait(3600);
    expect(one.coat(id).state).toBe('due');
    await one.act({ kind: 'check', coat: id, stage: 'set-to-touch', found: 'dry' });
    expect(one.coat(id)).toMatchObject({ stage: 'ready-for-iron', state: 'drying' });
    await one.act({ kind: 'check', coat: id, stage: 'cured', found: 'dry' });
    expect(one.coat(id)).toMatchObject({ stage: null, state: 'dry', wet: false });
    await one.act({ kind: 'end', coat: id, why: 'done' });
    expect(one.cure.coats().coats).toEqual([]);
  });

  it('teaches the cement by its taps, which can be taken back and forgotten', async () => {
    const one = await inShop();
    const learned = () => one.cure.cements().learned[waterBorne];
    const id = await one.put(waterBorne);
    one.wait(1000);
    await one.act({ kind: 'check', coat: id, stage: 'set-to-touch', found: 'dry' }, 'tap');
    expect(learned()).toMatchObject({ observations: 1 });
    expect(learned()?.factor).toBeLessThan(1);
    await one.act({ kind: 'take-back', of: 'tap' });
    expect([learned(), one.coat(id).stage]).toEqual([undefined, 'set-to-touch']);
    await one.act({ kind: 'check', coat: id, stage: 'set-to-touch', found: 'tacky' });
    expect(learned()).toMatchObject({ observations: 1 });
    await one.cure.learnAnew(waterBorne, 'anew');
    expect(learned()).toBeUndefined();
  });

  it('starts once, however often its command comes', async () => {
    const one = await inShop();
    const start: CoatAct = {
      kind: 'start',
      cement: waterBorne,
      piece: 'flap',
      places: [
        { side: 1, area: null },
        { side: 2, area: null },
      ],
      agoS: 600,
    };
    const outcomes = await Promise.all([one.act(start, 'same'), one.act(start, 'same')]);
    expect(outcomes).toEqual([0, 1].map(() => ({ commandId: 'same', session: null, kept: true })));
    expect(one.cure.coats().coats).toHaveLength(2);
  });

  it('is gone with its start only while nobody has touched it, on any page', async () => {
    const one = await inShop();
    const places = ['First end', 'Last end'].map((name) => ({ side: 1 as const, area: one.area(name) }));
    await one.act({ kind: 'start', cement: waterBorne, piece: 'flap', places, agoS: 3600 }, 'start');
    const [first, second] = one.cure.coats().coats;
    expect(one.cure.coats().started).toEqual([
      {
        of: 'start',
        piece: 'flap',
        cement: expect.stringContaining('water-borne'),
        placeNames: [first?.placeName, second?.placeName],
        startedAt: first?.startedAt,
      },
    ]);
    const back = { kind: 'take-back', of: 'start' } as const;
    await one.act({ kind: 'check', coat: second?.id ?? '', stage: 'cured', found: 'tacky' }, 'tap');
    await expect(one.act(back)).rejects.toThrow('End each coat as a mistake instead');
    expect(one.cure.coats()).toMatchObject({ coats: [{}, {}], started: [] });
    await one.act({ kind: 'take-back', of: 'tap' });
    await one.act(back);
    expect(one.cure.coats()).toMatchObject({ coats: [], started: [] });
  });

  it('that was ended is told for an hour, each with what takes that back, after a restart too', async () => {
    const before = await inShop();
    const ids = [await before.put(waterBorne, 'First end'), await before.put(waterBorne)];
    for (const [i, coat] of ids.entries()) await before.act({ kind: 'end', coat, why: 'done' }, `end ${i}`);
    const one = await inShop({ book: before.journal });
    expect(one.cure.coats().ended.map(({ coat, of }) => [coat, of])).toEqual(
      ids.map((id, i) => [id, `end ${i}`]),
    );
    const revision = one.cure.coats().revision;
    await one.act({ kind: 'take-back', of: 'end 0' });
    expect(one.cure.coats()).toMatchObject({
      coats: [{ id: ids[0] }],
      ended: [{ coat: ids[1], why: 'done' }],
    });
    expect(one.cure.coats().revision).toBeGreaterThan(revision);
    one.wait(3600);
    expect(one.cure.coats().ended).toEqual([]);
  });

  it('is told anew only when something that is shown has changed', async () => {
    const one = await inShop();
    await one.put(waterBorne);
    const before = one.program.live().situation.work.coatRevision;
    for (let i = 0; i < 20; i += 1) one.wait(1);
    expect(one.program.live().situation.work.coatRevision).toBe(before);
    one.wait(1500);
    expect(one.program.live().situation.work.coatRevision).toBeGreaterThan(before);
  });

  it.each<[string, Partial<Extract<CoatAct, { kind: 'start' }>>, string]>([
    ['a cement that there is none of', { cement: 'nope' }, 'There is no cement "nope"'],
    ['a piece that there is none of', { piece: 'nope' }, 'There is no piece "nope"'],
    ['an area that its map does not have', { places: [{ side: 1, area: 'nope' }] }, 'has no area "nope"'],
    [
      'a place twice',
      {
        places: [
          { side: 1, area: null },
          { side: 1, area: null },
        ],
      },
      'is named twice',
    ],
  ])('is refused on %s', async (_, wrong, message) => {
    const one = await inShop();
    const start = { kind: 'start', cement: waterBorne, piece: 'flap', agoS: 0 } as const;
    const act: CoatAct = { ...start, places: [{ side: 1, area: null }], ...wrong };
    await expect(one.act(act)).rejects.toThrow(message);
    expect(one.cure.coats().coats).toEqual([]);
  });

  it('refuses what can’t be said of it', async () => {
    const one = await inShop();
    const id = await one.put(cement.id);
    const check = (stage: 'set-to-touch' | 'cured') =>
      one.act({ kind: 'check', coat: id, stage, found: 'dry' });
    await expect(check('cured')).rejects.toThrow('give no time');
    await check('set-to-touch');
    await expect(check('set-to-touch')).rejects.toThrow('said to be dry');
    await one.act({ kind: 'check', coat: id, stage: 'set-to-touch', found: 'tacky' });
    expect(one.coat(id)).toMatchObject({ stage: 'set-to-touch', wet: true });
    await expect(one.act({ kind: 'end', coat: 'nope', why: 'done' })).rejects.toThrow('no such coat');
    await expect(one.act({ kind: 'take-back', of: 'nope' })).rejects.toThrow('no such tap');
    const water = await one.put(waterBorne);
    await expect(one.act({ kind: 'fire-answer', coat: water, answer: 'stopped' })).rejects.toThrow(
      'does not burn',
    );
  });
});

describe('the air', () => {
  it('that has changed is told anew, whether anything dries or not', async () => {
    const one = await inShop();
    one.wait(1);
    const before = one.program.live().situation.work.coatRevision;
    await one.cure.sayAir({ airC: 4, rhPct: 92 }, 'fog');
    expect(one.program.live().situation.work.coatRevision).toBeGreaterThan(before);
    expect(one.cure.air().concerns.map(({ kind }) => kind)).toContain('too-cold');
  });
});

describe('what is amiss with the air', () => {
  const narrow = {
    ...cement,
    id: 'narrow',
    name: 'Narrow demo cement',
    airLimits: { lowC: 24, highC: null, lowRhPct: null, highRhPct: null },
  };
  const withNarrow = (archived: boolean) => (settings: Settings) => ({
    settings: {
      ...settings,
      cements: [...settings.cements, { ...narrow, version: archived ? 2 : 1, archived }],
    },
  });
  const told = (one: Awaited<ReturnType<typeof inShop>>) =>
    one.cure.air().concerns.flatMap(({ kind, cements }) => cements.map((name) => `${kind} ${name}`));

  it('is told for the cement that may be put on next too, while another one dries', async () => {
    const one = await inShop();
    await one.settings.change(withNarrow(false));
    await one.put(waterBorne);
    expect(told(one)).toEqual(['too-cold Narrow demo cement']);
  });

  it('is told for a cement that dries though it is archived, once', async () => {
    const one = await inShop();
    await one.settings.change(withNarrow(false));
    await one.put('narrow');
    await one.settings.change(withNarrow(true));
    expect(told(one)).toEqual(['too-cold Narrow demo cement']);
  });
});

describe('typed air, a forecast and learning anew', () => {
  const at = (ms: number): string => new Date(ms).toISOString();
  const said = (one: Awaited<ReturnType<typeof inShop>>) =>
    [
      ['air', () => one.cure.sayAir({ airC: 4, rhPct: 92 }, 'fog')],
      [
        'forecast',
        () => one.cure.sayForecast({ points: [{ at: at(2e12), airC: 20, rhPct: null }] }, 'report'),
      ],
      ['learn-anew', () => one.cure.learnAnew(waterBorne, 'anew')],
    ] as const;

  it('tell whether they are in the book, and count all the same where they are not', async () => {
    for (const takes of [true, false]) {
      const one = await inShop();
      one.shopBook.takes = takes;
      for (const [kind, say] of said(one)) {
        const before = one.journal.length;
        expect(await say()).toEqual({ commandId: expect.any(String), session: null, kept: takes });
        expect(one.journal.slice(before).map(({ happened }) => happened.kind)).toEqual([kind]);
      }
      expect(one.cure.air()).toMatchObject({ now: { airC: 4 }, forecast: [{ airC: 20 }] });
    }
  });

  it('that the book has from before a restart are not done twice', async () => {
    const before = await inShop();
    for (const [, say] of said(before)) await say();
    const one = await inShop({ book: before.journal });
    const entries = one.journal.length;
    // Their ids are in the book: a page that got no answer sends them once more.
    for (const [, say] of said(one)) expect(await say()).toMatchObject({ kept: true });
    expect(one.journal).toHaveLength(entries);
  });
});
