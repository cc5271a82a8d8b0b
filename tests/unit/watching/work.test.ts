import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { PieceDesk } from '../../../daemon/watching/shop/piece-desk.ts';
import type { WorkAct } from '../../../shared/messages/piece.ts';
import { startingPiece } from '../../../shared/piece/starting.ts';
import { type Bench, bench, FakeSource, foldedAgain } from './support/bench.ts';

/** Two irons with motion, and a demo flap with two sides. */
async function atBench(sides: readonly string[] = ['Upper', 'Lower']) {
  const one = bench();
  const big = new FakeSource('A', one.clock);
  const small = new FakeSource('B', one.clock);
  for (const source of [big, small]) {
    one.program.addSource(source);
    source.link('connected');
    one.heat(source, 20, 1);
    one.heat(source, 121, 20);
  }
  const pieces = new PieceDesk({
    program: one.program,
    reader: { items: async () => [] },
    book: { addNote: async (note) => note },
    once: (id, run) => one.desk.log.once(id, run),
  });
  await pieces.putPiece('flap', startingPiece('Demo flap', 'spruce', sides), 0);
  let count = 0;
  const act = async (said: WorkAct, iron?: string) => {
    count += 1;
    const outcome = await pieces.act({ act: said, ...(iron === undefined ? {} : { iron }) }, `c${count}`);
    await setImmediate();
    return outcome;
  };
  const state = (iron: string) => one.program.watches.of(iron)?.state ?? expect.unreachable();
  const area = (name: string, side = 1) =>
    pieces.pieces()[0]?.areas.find((a) => a.name === name && a.side === side)?.id ?? expect.unreachable();
  return { ...one, big, small, pieces, act, state, area };
}

const heatAll = (one: Bench, sources: readonly FakeSource[], toC: number, s: number): void => {
  for (const source of sources) one.heat(source, toC, s);
};

describe('two irons', () => {
  it('one is in hand, the other on its rest, and the work goes over by one press', async () => {
    const one = await atBench();
    await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
    await one.act({ kind: 'area', area: one.area('First end') });
    expect(one.program.live().situation.work.inHand).toBe('iron-1');
    await one.act({ kind: 'in-hand' }, 'iron-2');
    expect(one.program.live().situation.work.inHand).toBe('iron-2');
    expect(one.state('iron-1').work.place).toBe('on-rest');
    expect(one.state('iron-2').work).toMatchObject({
      place: 'on-work',
      at: { pieceName: 'Demo flap', side: 1, areaName: null, presumed: false },
    });
  });

  it('one that is cold and was never in use is left alone', async () => {
    const one = await atBench();
    const third = new FakeSource('C', one.clock);
    one.program.addSource(third);
    third.link('connected');
    one.heat(third, 20, 5);
    await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
    await one.act({ kind: 'in-hand' }, 'iron-2');
    expect(one.program.watches.of('iron-3')?.session).toBeNull();
    expect(one.state('iron-3').work.place).toBe('unknown');
  });

  it('without any in hand has to be said which', async () => {
    const one = await atBench();
    await expect(one.act({ kind: 'piece', piece: 'flap' })).rejects.toThrow('No iron is in hand');
  });

  it('the limits of both are watched, wherever they are', async () => {
    const one = await atBench();
    await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
    one.heat(one.small, 195, 60);
    one.heat(one.small, 195, 2);
    const alarms = one.program.live().alarms.filter((a) => a.kind === 'over-limit');
    expect(alarms.map((a) => a.iron)).toEqual(['iron-2']);
  });

  it('one that moves while the other stands was taken up', async () => {
    const one = await atBench();
    const motion = { stillG: 0.01, movingG: 0.03, checkedAt: '2026-03-01T09:00:00Z' };
    for (const { id, label, thermocouple, unit } of one.desk.settings.probes())
      await one.desk.settings.putProbe(id, { label, thermocouple, unit, motion });
    await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
    await one.act({ kind: 'area', area: one.area('Middle') });
    one.program.run();
    for (let i = 0; i < 50; i++) {
      one.clock.advanceTo(one.clock.nowMs() + 100);
      one.big.say(121 + 0.1 * (i % 3), { motionG: 0.004 });
      one.small.say(121 + 0.1 * (i % 3), { motionG: 0.09 });
    }
    await expect.poll(() => one.program.live().situation.work.inHand).toBe('iron-2');
    expect(one.state('iron-1').work.place).toBe('on-rest');
    await one.program.stop();
  });
});

describe('the button', () => {
  it('is next, twice it is undo, and without a piece it marks nothing', async () => {
    const one = await atBench();
    one.big.say(121, { button: 1 });
    await setImmediate();
    expect(one.state('iron-1').work.at).toBeNull();
    await one.act({ kind: 'stage', stageId: 'initial' }, 'iron-1');
    await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
    one.big.say(121.1, { button: 1 });
    await expect.poll(() => one.state('iron-1').work.at?.area).not.toBeNull();
    expect(one.state('iron-1').work.at?.presumed).toBe(true);
    one.big.say(121.2, { button: 2 });
    await expect.poll(() => one.state('iron-1').work.at?.area).toBeNull();
  });

  it('silences first while an alarm sounds, and marks nothing then', async () => {
    const one = await atBench();
    await one.act({ kind: 'stage', stageId: 'final' }, 'iron-1');
    await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
    one.heat(one.big, 195, 60);
    one.heat(one.big, 195, 2);
    one.big.say(195, { button: 1 });
    await setImmediate();
    expect(one.state('iron-1').work.at?.area).toBeNull();
    expect(one.state('iron-1').alarms['over-limit:A/1']?.silencedUntilMs).not.toBeNull();
  });
});

describe('the order', () => {
  const final = async (one: Awaited<ReturnType<typeof atBench>>) => {
    await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
    await one.act({ kind: 'area', area: one.area('Middle') });
    one.heat(one.big, 150, 20);
    one.heat(one.big, 150, 4);
  };
  const state = (one: Awaited<ReturnType<typeof atBench>>) =>
    one.state('iron-1').alarms['wrong-order']?.state;

  it('is warned of on the first side before the other has had its initial shrink', async () => {
    const one = await atBench();
    await final(one);
    expect(state(one)).toBe('unacknowledged');
  });

  it('overruled by a named person is no warning any more, and stands on the record', async () => {
    const one = await atBench();
    await final(one);
    await one.pieces.note('flap', { kind: 'overruled', by: 'A. Tester', why: 'only a patch' }, 'n1');
    await setImmediate();
    one.heat(one.big, 150, 7);
    expect(state(one)).toBe('returned-unacknowledged');
    expect((await one.pieces.heat('flap')).overruled).toMatchObject({ by: 'A. Tester', why: 'only a patch' });
  });

  it('holds for no piece with one side', async () => {
    const one = await atBench(['Outside']);
    await final(one);
    expect(state(one)).toBeUndefined();
  });
});

it('a visit is put right by a named person, and the original stays beside it', async () => {
  const one = await atBench();
  await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
  await one.act({ kind: 'area', area: one.area('First end') });
  one.heat(one.big, 121, 8);
  await one.act({ kind: 'on-rest' });
  const before = await one.pieces.heat('flap');
  const visit = before.visits.find((v) => v.place?.area === one.area('First end')) ?? expect.unreachable();
  expect(before.areas[one.area('First end')]).toMatchObject({ laps: 1, reached: { id: 'tack' } });
  const to = { side: 1, area: one.area('Last end') } as const;
  const note = { kind: 'corrected', session: visit.session, visit: visit.n, to, by: 'A. Tester' } as const;
  await one.pieces.note('flap', note, 'n1');
  await one.pieces.note('flap', note, 'n1');
  const after = await one.pieces.heat('flap');
  expect(after.areas[one.area('First end')]).toMatchObject({ laps: 0, reached: null });
  expect(after.areas[one.area('Last end')]).toMatchObject({ laps: 1, reached: { id: 'tack' } });
  expect(after.visits.find((v) => v.n === visit.n)).toMatchObject({
    place: { area: one.area('First end') },
    corrected: { place: to, by: 'A. Tester' },
  });
  await expect(one.pieces.note('flap', { ...note, visit: 99 }, 'n2')).rejects.toThrow(
    'no such stay of the iron',
  );
});

it('a touch on a page is a sign for every hot iron', async () => {
  const one = await atBench();
  heatAll(one, [one.big, one.small], 121, 30);
  const before = ['iron-1', 'iron-2'].map((id) => one.state(id).attended.seenMs);
  one.desk.presence();
  const after = ['iron-1', 'iron-2'].map((id) => one.state(id).attended.seenMs);
  expect(after.every((ms, i) => ms > (before[i] ?? 0))).toBe(true);
});

it('what was recorded replays exactly, whatever came from the bench in between', async () => {
  const one = await atBench();
  await one.act({ kind: 'stage', stageId: 'initial' }, 'iron-1');
  await one.act({ kind: 'piece', piece: 'flap' }, 'iron-1');
  for (let i = 0; i < 6; i++) {
    await one.act({ kind: 'next' });
    one.heat(one.big, 121, 5);
  }
  await one.act({ kind: 'lap-done' });
  await one.act({ kind: 'turned' });
  one.heat(one.big, 150, 20);
  await one.act({ kind: 'undo' });
  await one.act({ kind: 'on-rest' });
  await one.program.stop();
  const { stored, replayed } = foldedAgain(one.shelf, 0);
  expect(stored.some(({ finding }) => finding.kind === 'visit')).toBe(true);
  expect(replayed).toEqual(stored);
});
