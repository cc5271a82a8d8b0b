import { expect, test } from 'vitest';
import { shippedSchedule } from '../../../shared/heat/shipped.ts';
import type { PieceHeat, WorkAct } from '../../../shared/messages/piece.ts';
import type { SideId } from '../../../shared/piece/piece.ts';
import { startingPiece } from '../../../shared/piece/starting.ts';
import { dataFolder } from '../book/recording.ts';
import { fileStore } from '../book/stores.ts';
import { type Bench, bench, FakeSource } from './support/bench.ts';

/** A whole piece of the invented Halvorsen Two-Seater, from tack to final shrink, as the program proposes it. */

const PIECE = 'left-flap';
const STAGES = ['tack', 'initial', 'intermediate', 'final'] as const;
/** More than any way of going over two sides in four stages takes. */
const MOST_STEPS = 200;

interface Ironing {
  readonly b: Bench;
  readonly source: FakeSource;
  readonly iron: string;
}

let commands = 0;
const act = ({ b }: Ironing, said: WorkAct): Promise<unknown> => {
  commands += 1;
  return b.desk.pieces.act({ act: said }, `act-${commands}`);
};

/** Goes over what is proposed, turning over where that is proposed, until nothing is; how often it was turned. */
async function follow(ironing: Ironing, plateC: number): Promise<number> {
  const { b, source } = ironing;
  let turns = 0;
  for (let steps = 0; steps < MOST_STEPS; steps += 1) {
    const { next } = await b.desk.pieces.heat(PIECE);
    if (next === null) return turns;
    if (next.side !== upOf(ironing)) {
      await act(ironing, { kind: 'off-work' });
      b.heat(source, plateC, 5);
      await act(ironing, { kind: 'turned' });
      turns += 1;
    }
    await act(ironing, { kind: 'next' });
    b.heat(source, plateC, 12);
  }
  throw new Error('there was always one more area proposed');
}

const upOf = ({ b, iron }: Ironing): SideId | undefined => b.program.watches.of(iron)?.state.work.at?.side;

/** One light lap over the side that is up, as a whole. */
async function lap(ironing: Ironing, plateC: number): Promise<void> {
  const { b, source } = ironing;
  await act(ironing, { kind: 'off-work' });
  await act(ironing, { kind: 'turned' });
  await act(ironing, { kind: 'on-work' });
  b.heat(source, plateC, 40);
  await act(ironing, { kind: 'lap-done' });
}

const had = ({ areas, sides, balance, visits, unassigned }: PieceHeat) => ({
  areas,
  sides,
  balance,
  visits,
  unassigned,
});

test('a piece with two sides, from tack to final shrink by "next", and read back after a restart', async () => {
  const store = fileStore(dataFolder());
  await store.book.open();
  const b = bench({ store });
  const source = new FakeSource('board', b.clock, true);
  b.program.addSource(source);
  source.link('connected');
  b.heat(source, 25, 1);
  b.heat(source, 118, 60);
  const [watch] = b.program.watches.all;
  if (watch === undefined) throw new Error('no iron is watched');
  const ironing: Ironing = { b, source, iron: watch.iron.id };
  await b.desk.pieces.putPiece(PIECE, startingPiece('Left flap', 'spruce', ['Upper', 'Lower']), 0);

  await act(ironing, { kind: 'piece', piece: PIECE });
  let turns = 0;
  for (const id of STAGES) {
    const stage = shippedSchedule.stages.find((one) => one.id === id);
    if (stage === undefined) throw new Error(`no stage ${id}`);
    await act(ironing, { kind: 'on-rest' });
    await b.desk.mark(watch.session ?? '', { kind: 'stage', stageId: id }, `stage-${id}`);
    b.heat(source, stage.targetC, 60);
    turns += await follow(ironing, stage.targetC);
    const { next, areas } = await b.desk.pieces.heat(PIECE);
    expect(next).toBeNull();
    expect(Object.values(areas).every(({ reached }) => reached !== null)).toBe(true);
  }
  expect(turns).toBeGreaterThanOrEqual(3);
  const finalC = shippedSchedule.stages.find(({ id }) => id === 'final')?.targetC ?? 0;
  await lap(ironing, finalC);
  await lap(ironing, finalC);
  await act(ironing, { kind: 'on-rest' });
  b.heat(source, finalC, 2);

  const heat = await b.desk.pieces.heat(PIECE);
  const cloth = heat.piece.areas.filter(({ kind }) => kind === 'cloth');
  expect(cloth.map(({ id }) => heat.areas[id]?.reached?.id)).toEqual(cloth.map(() => 'final'));
  expect(cloth.map(({ id }) => heat.areas[id]?.lapsAtStage)).toEqual(cloth.map(() => 2));
  expect(heat.sides.map(({ capC }) => capC)).toEqual([null, null]);
  expect(heat.balance).toEqual({ kind: 'even' });
  expect(heat.visits.filter(({ lapDone }) => lapDone)).toHaveLength(2);
  const alarms = b.told.flatMap((change) => (change.kind === 'alarm' ? [change.alarm.kind] : []));
  expect(alarms).not.toContain('wrong-order');
  expect(alarms).not.toContain('imbalance');

  await b.program.stop();
  const sessions = await store.reader.sessions();
  expect(sessions.length).toBeGreaterThan(0);
  for (const { id } of sessions) {
    const verified = await store.reader.verify(id);
    expect(verified).toMatchObject({ firstBadCommit: null, sameFoldVersion: true, differences: [] });
    expect(verified?.findings).toBeGreaterThan(20);
  }

  const again = bench({ store, settings: b.settings.current });
  const board = new FakeSource('board', again.clock, true);
  again.program.addSource(board);
  again.program.bench.shop.take({ kind: 'book', ...(await store.reader.shop()) });
  expect(had(await again.desk.pieces.heat(PIECE))).toEqual(had(heat));
  await again.program.stop();
  await store.book.close();
}, 90_000);
