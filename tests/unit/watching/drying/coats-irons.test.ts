import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { cement } from '../../web/support/shop-samples.ts';
import { FakeSource } from '../support/bench.ts';
import { inShop, solventBorne, waterBorne } from './support/in-shop.ts';

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
