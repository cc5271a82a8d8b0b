import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { firstSettings } from '../../../../daemon/settings/settings.ts';
import type { CoatAct, CoatAnswer } from '../../../../shared/messages/cure.ts';
import { startingPiece } from '../../../../shared/piece/starting.ts';
import type { ShopEntry } from '../../../../shared/shop/entry.ts';
import { cement } from '../../web/support/samples.ts';
import { bench, FakeSource } from '../support/bench.ts';

const [waterBorne, solventBorne] = ['example-water-borne', 'example-solvent-borne'];

/** So that no two shops name their commands alike. */
let shops = 0;

/** An iron, a demo flap with two sides, and air as the instructions have it. */
async function inShop({ hot = true, book = [] as readonly ShopEntry[] | null, aheadMs = 0 } = {}) {
  const settings = {
    ...firstSettings,
    cements: [...firstSettings.cements, cement],
    pieces: [
      {
        ...startingPiece('Demo flap', 'spruce', ['Upper', 'Lower']),
        id: 'flap',
        version: 1,
        madeAt: '2026-03-01T08:00:00Z',
      },
    ],
  };
  const one = bench({ settings });
  one.wall.aheadMs = aheadMs;
  if (book !== null) one.program.drying.keeper.takeBook(book);
  const iron = new FakeSource('A', one.clock);
  one.program.addSource(iron);
  iron.link('connected');
  one.heat(iron, 20, 1);
  if (hot) one.heat(iron, 121, 20);
  const { cure } = one.desk;
  shops += 1;
  const shop = shops;
  let count = 0;
  const act = async (said: CoatAct, commandId = `${shop} c${(count += 1)}`) => {
    const outcome = await cure.act(said, commandId);
    await setImmediate();
    return outcome;
  };
  await cure.sayAir({ airC: 23, rhPct: 50 }, 'air');
  const areas = settings.pieces[0]?.areas ?? [];
  const area = (name: string, side = 1): string =>
    areas.find((a) => a.name === name && a.side === side)?.id ?? expect.unreachable();
  const put = async (
    of: string,
    name: string | null = null,
    more: Partial<CoatAct & { agoS: number }> = {},
  ) => {
    const places = [{ side: 1 as const, area: name === null ? null : area(name) }];
    await act({ kind: 'start', cement: of, piece: 'flap', places, agoS: 0, ...more } as CoatAct);
    return (
      one.journal.flatMap((e) => (e.happened.kind === 'coats' ? e.happened.places : [])).at(-1)?.coat ?? ''
    );
  };
  const coat = (id: string): CoatAnswer =>
    cure.coats().coats.find((c) => c.id === id) ?? expect.unreachable(`no coat ${id}`);
  const alarm = (kind: string) =>
    Object.values(one.program.watches.all[0]?.state.alarms ?? {}).find((a) => a.kind === kind);
  const work = async (name: string, side: 1 | 2 = 1) => {
    await one.desk.pieces.act({ act: { kind: 'piece', piece: 'flap', side } }, `p${(count += 1)}`);
    await one.desk.pieces.act({ act: { kind: 'area', area: area(name, side) } }, `a${(count += 1)}`);
    await setImmediate();
  };
  return { ...one, iron, cure, act, put, coat, area, alarm, work };
}

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

describe('the wall clock', () => {
  const HOUR_MS = 3_600_000;

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

describe('a clock that is set right soon after the machine was started', () => {
  const HOUR_MS = 3_600_000;

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

describe('the limit of a cement', () => {
  it('holds where a coat of it is, dry or not, whatever the heat schedule says', async () => {
    const one = await inShop();
    const limited = { ...cement, id: 'limited', cementLimitC: 110 };
    const { id: _, version: _v, madeAt: _m, ...draft } = limited;
    await one.cure.putCement('limited', draft, 0);
    const id = await one.put('limited', 'First end');
    await one.act({ kind: 'end', coat: id, why: 'done' });
    await one.work('Middle');
    one.heat(one.iron, 121, 5);
    expect(one.alarm('over-cement-limit')).toBeUndefined();
    await one.work('First end');
    one.heat(one.iron, 121, 3);
    expect(one.alarm('over-cement-limit')?.state).toBe('unacknowledged');
  });
});

describe('wet cement', () => {
  it('on a tape sounds for the whole side only once that was gone over for a while', async () => {
    const one = await inShop();
    await one.put(waterBorne, 'First end');
    await one.desk.pieces.act({ act: { kind: 'piece', piece: 'flap', side: 1 } }, 'piece');
    await one.desk.pieces.act({ act: { kind: 'on-work' } }, 'on');
    await setImmediate();
    one.heat(one.iron, 121, 10);
    expect(one.alarm('wet-cement')?.state ?? 'normal').toBe('normal');
    one.heat(one.iron, 121, 15);
    expect(one.alarm('wet-cement')?.state).toBe('unacknowledged');
  });

  it('sounds for the place that is ironed, and not for another on the same side', async () => {
    const one = await inShop();
    await one.put(waterBorne, 'First end');
    await one.work('Middle');
    one.heat(one.iron, 121, 5);
    expect(one.alarm('wet-cement')?.state ?? 'normal').toBe('normal');
    await one.work('First end');
    one.heat(one.iron, 121, 3);
    expect(one.alarm('wet-cement')).toMatchObject({
      state: 'unacknowledged',
      detail: 'Example: water-borne fabric cement on Demo flap, Upper, First end',
    });
    await one.work('First end', 2);
    one.heat(one.iron, 121, 5);
    expect(one.alarm('wet-cement')?.state).toBe('returned-unacknowledged');
  });

  it('is none any more once somebody has said that it is ready for an iron', async () => {
    const one = await inShop();
    const id = await one.put(waterBorne, 'First end');
    await one.work('First end');
    one.heat(one.iron, 121, 3);
    await one.act({ kind: 'check', coat: id, stage: 'ready-for-iron', found: 'dry' });
    one.heat(one.iron, 121, 5);
    expect(one.alarm('wet-cement')?.state).toBe('returned-unacknowledged');
  });
});

describe('vapour that burns', () => {
  it('is asked about once, and called out where nobody answers; the answer stands for that coat and expires', async () => {
    const one = await inShop();
    const id = await one.put(solventBorne, 'First end');
    expect(one.cure.coats().fire).toEqual([id]);
    one.heat(one.iron, 121, 19);
    expect(one.alarm('fire-hazard')?.state ?? 'normal').toBe('normal');
    one.heat(one.iron, 121, 3);
    expect(one.alarm('fire-hazard')?.state).toBe('unacknowledged');
    await one.act({ kind: 'fire-answer', coat: id, answer: 'elsewhere' });
    one.heat(one.iron, 121, 1);
    expect(one.cure.coats().fire).toEqual([]);
    expect(one.alarm('fire-hazard')?.state).toBe('returned-unacknowledged');
    expect(one.coat(id).fire).toMatchObject({ answer: 'elsewhere' });
    const second = await one.put(solventBorne, 'Middle');
    expect(one.cure.coats().fire).toEqual([second]);
    await one.act({ kind: 'end', coat: second, why: 'mistake' });
    await one.cure.sayAir({ airC: -20, rhPct: 50 }, 'cold');
    one.wait(4 * 3600 + 1);
    expect(one.cure.coats().fire).toEqual([id]);
  });

  it('is asked again when an iron that was said to be off grows hot', async () => {
    const one = await inShop();
    const id = await one.put(solventBorne);
    await one.act({ kind: 'fire-answer', coat: id, answer: 'iron-off' });
    one.heat(one.iron, 40, 120);
    expect(one.cure.coats().fire).toEqual([]);
    one.heat(one.iron, 121, 60);
    one.wait(1);
    expect(one.cure.coats().fire).toEqual([id]);
  });

  it('is asked again when an iron that was said to be off goes on with its cycles', async () => {
    const one = await inShop();
    const id = await one.put(solventBorne);
    await one.act({ kind: 'fire-answer', coat: id, answer: 'stopped' });
    for (let i = 0; i < 4; i += 1) {
      one.heat(one.iron, 135, 20);
      one.heat(one.iron, 112, 40);
    }
    one.wait(1);
    expect(one.cure.coats().fire).toEqual([id]);
  });

  it('goes on being called out by one iron, whichever is taken in hand', async () => {
    const one = await inShop();
    const other = new FakeSource('B', one.clock);
    one.program.addSource(other);
    other.link('connected');
    one.heat(other, 20, 1);
    one.heat(other, 121, 20);
    await one.put(solventBorne);
    const raised = (): number =>
      one.told.filter((t) => t.kind === 'alarm' && t.alarm.kind === 'fire-hazard' && t.change === 'raised')
        .length;
    for (let i = 0; i < 6; i += 1) {
      const iron = one.program.watches.all[i % 2]?.iron.id ?? '';
      await one.desk.pieces.act({ iron, act: { kind: 'in-hand' } }, `swap ${i}`);
      one.heat(one.iron, 121, 5);
      one.heat(other, 121, 5);
      one.wait(1);
    }
    expect(raised()).toBe(1);
    expect(one.program.live().alarms.find(({ kind }) => kind === 'fire-hazard')?.state).toBe(
      'unacknowledged',
    );
  });

  it('is asked about by no water-borne coat, and beside no cold iron', async () => {
    const one = await inShop();
    await one.put(waterBorne);
    expect(one.cure.coats().fire).toEqual([]);
    const cold = await inShop({ hot: false });
    await cold.put(solventBorne);
    expect(cold.cure.coats().fire).toEqual([]);
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
    await one.act({ kind: 'end', coat: 'g', why: 'done' });
    expect(one.cure.coats().amiss).toEqual([]);
  });
});
