import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { bench, FakeSource, foldedAgain } from './support/bench.ts';
import { killed, known, running, sessionOf } from './support/one-board.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const written = (): Promise<unknown> => vi.advanceTimersByTimeAsync(2000);
describe('a session that broke off in an earlier run', () => {
  it('is gone on with at once, though its device is not there: its alarms stand, told and in the book', async () => {
    const made = bench({ settings: known });
    made.program.goOnFrom([killed()]);
    await vi.advanceTimersByTimeAsync(0);
    const live = made.program.live();
    expect(live.alarms).toMatchObject([
      { kind: 'over-limit', state: 'unacknowledged', since: '2026-03-01T09:59:00.000Z', peakC: 199 },
    ]);
    expect(live.situation.irons).toMatchObject([{ hot: true, stageId: 'final', place: 'on-work' }]);
    expect(made.told.map((t) => t.kind)).toEqual(['situation', 'alarm']);
    expect(made.shelf.at(0)[0]?.begin).toMatchObject({ why: 'resumed', fromSession: 'killed' });

    const board = new FakeSource('A', made.clock);
    made.program.addSource(board);
    board.link('connected');
    expect(board.sent).toContain('alarm=3');
    made.heat(board, 150, 3);
    await written();
    expect(made.shelf.ids).toHaveLength(1);
    expect(foldedAgain(made.shelf, 0).replayed).toEqual(foldedAgain(made.shelf, 0).stored);
  });

  it('takes marks under its old id, which belong to what goes on with it', async () => {
    const made = bench({ settings: known });
    made.program.goOnFrom([killed()]);
    const outcome = await made.desk.mark('killed', { kind: 'place', place: 'on-rest' }, 'held');
    expect(outcome).toEqual({ commandId: 'held', session: sessionOf(made), kept: true });
    await expect(made.desk.mark('another', { kind: 'place', place: 'on-rest' }, 'x')).rejects.toThrow(
      'No session "another"',
    );
  });

  it('of which there are several for an iron: the newest counts, and none is gone on with twice', () => {
    const made = bench({ settings: known });
    const all = [killed({ stageId: 'tack' }), killed({ id: 'older' })];
    made.program.goOnFrom(all);
    made.program.goOnFrom(all);
    expect(made.program.live().situation.irons).toMatchObject([{ stageId: 'tack' }]);
    expect(made.shelf.ids).toHaveLength(1);
  });

  it('that left a cold iron without alarms waits for its device', async () => {
    const made = bench({ settings: known });
    made.program.goOnFrom([killed({ hot: false, alarms: [] })]);
    expect(made.program.live().situation.irons).toEqual([]);
    made.program.addSource(new FakeSource('A', made.clock));
    await vi.advanceTimersByTimeAsync(0);
    expect(made.shelf.at(0)[0]?.begin?.fromSession).toBe('killed');
  });

  it('of an iron that is not there any more is let be', () => {
    const made = bench();
    made.program.goOnFrom([killed()]);
    expect(made.program.live().situation.irons).toEqual([]);
  });

  it('is taken over by a watch that runs already, since the book could not be read before: nothing of either is lost', async () => {
    const one = running(150, { settings: known });
    await one.desk.mark(sessionOf(one), { kind: 'stage', stageId: 'tack' }, 'own');
    const own = sessionOf(one);
    one.program.goOnFrom([killed()]);
    one.heat(one.board, 150, 2);
    await written();
    expect(one.program.live().alarms).toMatchObject([{ kind: 'over-limit', peakC: 199 }]);
    // What was said in this run counts before what was left.
    expect(one.program.live().situation.irons).toMatchObject([{ stageId: 'tack', place: 'on-work' }]);
    expect(one.told.filter((t) => t.kind === 'alarm')).toHaveLength(1);
    expect(one.board.sent).toContain('alarm=3');
    expect(one.shelf.ids[0]).toBe(own);
    expect(one.shelf.at(0).at(-1)?.end?.why).toBe('interrupted');
    expect(one.shelf.at(1)[0]?.begin).toMatchObject({ why: 'resumed', fromSession: 'killed' });
    for (const place of [0, 1])
      expect(foldedAgain(one.shelf, place).replayed).toEqual(foldedAgain(one.shelf, place).stored);
  });
});
