import { expect, test } from 'vitest';
import { startingPiece } from '../../../../shared/piece/starting.ts';
import { visitTo } from '../../heat/work/demo.ts';
import { bench, FakeSource } from '../support/bench.ts';

test('an imbalance of a piece that two irons work on is told once, by the one in hand', async () => {
  const b = bench();
  for (const id of ['small', 'big']) {
    const source = new FakeSource(id, b.clock);
    b.program.addSource(source);
    source.link('connected');
    b.heat(source, 25, 1);
  }
  const [one, other] = b.program.watches.all;
  if (one === undefined || other === undefined) throw new Error('two irons are watched');
  const piece = await b.desk.pieces.putPiece(
    'flap',
    startingPiece('Left flap', 'spruce', ['Upper', 'Lower']),
    0,
  );
  for (const { iron } of [one, other])
    await b.desk.pieces.act({ iron: iron.id, act: { kind: 'piece', piece: 'flap' } }, `take-${iron.id}`);
  for (const [n, area] of piece.areas.entries())
    for (let lap = 0; lap < (area.side === 1 ? 3 : 1); lap += 1) {
      const fromUtcMs = 1_000_000 * (1 + lap) + n * 20_000;
      b.program.bench.shop.take({
        kind: 'visit',
        visit: visitTo(piece, area, { fromUtcMs, n: 10 * n + lap }),
      });
    }
  await Promise.resolve();
  const told = () => [one, other].map(({ state }) => state.work.facts.imbalance !== '');
  expect(told()).toEqual([false, true]);
  await b.desk.pieces.act({ iron: one.iron.id, act: { kind: 'in-hand' } }, 'change');
  await Promise.resolve();
  expect(told()).toEqual([true, false]);
  await b.program.stop();
});
