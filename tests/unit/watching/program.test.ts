import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { bench, FakeSource, foldedAgain } from './support/bench.ts';
import { alarmsOf, killed, known, running, sessionOf } from './support/one-board.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const written = (): Promise<unknown> => vi.advanceTimersByTimeAsync(2000);
describe('a probe that is heard for the first time', () => {
  it('has an iron, which whoever listens hears of before its first reading', () => {
    const { program, told, settings } = running(22);
    expect(program.live().situation.irons).toMatchObject([{ id: 'iron-1', probes: ['A/1'], session: null }]);
    expect(told.map((t) => t.kind).slice(0, 2)).toEqual(['situation', 'readings']);
    expect(settings.current.probes.map((p) => p.id)).toEqual(['A/1']);
  });

  it('that sends no temperature at all has none', () => {
    const { program, clock } = bench();
    const board = new FakeSource('A', clock);
    program.addSource(board);
    board.say(0, { tC: null, airC: 20, rhPct: 50 });
    expect(program.live().situation.irons).toEqual([]);
  });

  it('tells of the air in lines of their own, too', () => {
    const { program, clock, journal } = bench();
    const board = new FakeSource('A', clock);
    program.addSource(board);
    board.say(0, { tC: null, rhPct: 50 });
    board.say(0, { tC: null, airC: 20 });
    expect(journal.map(({ happened }) => happened)).toMatchObject([{ kind: 'air', airC: 20, rhPct: 50 }]);
  });
});

describe('a session', () => {
  it('begins by itself when the plate gets hot, with what came before, and ends when it is cold', async () => {
    const one = running(22);
    expect(sessionOf(one)).toBe('');
    one.heat(one.board, 60, 4);
    expect(sessionOf(one)).not.toBe('');
    await written();
    expect(one.shelf.at(0)[0]?.begin).toMatchObject({ why: 'hot', firstMs: 100 });
    one.heat(one.board, 30, 10);
    one.heat(one.board, 25, 61);
    await written();
    expect(sessionOf(one)).toBe('');
    expect(one.shelf.at(0).at(-1)?.end?.why).toBe('cold');
    const { stored, replayed } = foldedAgain(one.shelf, 0);
    expect(stored.length).toBeGreaterThan(2);
    expect(replayed).toEqual(stored);
  });

  it('holds no more than two minutes of what came before it', async () => {
    const one = running(22);
    one.heat(one.board, 22, 300);
    one.heat(one.board, 60, 4);
    await written();
    const [begun] = one.shelf.at(0);
    const start = begun?.entries.find((e) => e.input.kind === 'start');
    const beforeMs = (start?.tMs ?? 0) - (begun?.begin?.firstMs ?? 0);
    expect(beforeMs).toBeGreaterThan(119_000);
    expect(beforeMs).toBeLessThan(121_000);
  });

  it('by hand, and another one after it, hold nothing twice', async () => {
    const one = running(22);
    await one.desk.startSession('iron-1', 'c1');
    one.heat(one.board, 22, 5);
    await one.desk.stopSession(sessionOf(one), 'c2');
    one.heat(one.board, 22, 5);
    await one.desk.startSession('iron-1', 'c3');
    one.heat(one.board, 22, 5);
    await written();
    const [first, second] = [one.shelf.seqsAt(0), one.shelf.seqsAt(1)];
    expect(second.length).toBeGreaterThan(90);
    expect(Math.min(...second)).toBeGreaterThan(Math.max(...first));
    expect(foldedAgain(one.shelf, 1).replayed).toEqual(foldedAgain(one.shelf, 1).stored);
  });

  it('begins for an alarm, though the last one was stopped by hand', async () => {
    const one = running(150);
    await one.desk.stopSession(sessionOf(one), 'stop');
    one.heat(one.board, 150, 2);
    expect(sessionOf(one)).toBe('');
    one.heat(one.board, 195, 5);
    one.heat(one.board, 195, 1);
    expect(alarmsOf(one)['over-limit']).toBe('unacknowledged');
    expect(sessionOf(one)).not.toBe('');
  });

  it('does not begin because nothing can be kept', () => {
    const one = running(22);
    one.program.setKeeping({ kept: false, detail: 'full' });
    one.heat(one.board, 22, 2);
    expect(alarmsOf(one)).toEqual({ 'not-recording': 'unacknowledged' });
    expect(sessionOf(one)).toBe('');
  });
});

describe('the handle', () => {
  it('is told how loud to be, that an alarm was seen, and again when its board was reset', async () => {
    const one = running(150);
    one.heat(one.board, 195, 20);
    one.heat(one.board, 195, 1);
    expect(one.board.sent).toContain('alarm=3');
    one.board.link('connected');
    expect(one.board.sent.at(-1)).toBe('alarm=3');
    await one.desk.acknowledge('iron-1', { kind: 'over-limit', probe: 'A/1' }, 'seen');
    expect(one.board.sent).toContain('ack=1');
    expect(one.board.sent.filter((line) => line.startsWith('alarm=')).at(-1)).not.toBe('alarm=3');
  });

  it('is told less where the iron is said to be on its rest', async () => {
    const one = running(150);
    one.heat(one.board, 195, 60);
    one.heat(one.board, 195, 1);
    expect(one.board.sent.at(-1)).toBe('alarm=3');
    await one.desk.mark(sessionOf(one), { kind: 'place', place: 'on-rest' }, 'rest');
    expect(one.board.sent.at(-1)).toBe('alarm=2');
  });
});

describe('an alarm that stands', () => {
  const toldOf = (one: ReturnType<typeof running>, kind: string) =>
    one.told.flatMap((change) => (change.kind === 'alarm' && change.alarm.kind === kind ? [change] : []));

  it('is told anew as the plate rises, once a second, until its peak is that of the plate', () => {
    const one = running(150);
    one.heat(one.board, 200, 10);
    const raised = toldOf(one, 'over-limit').length;
    expect(toldOf(one, 'over-limit')[0]).toMatchObject({ change: 'raised' });
    one.heat(one.board, 230, 10);
    const updates = toldOf(one, 'over-limit').slice(raised);
    expect(new Set(updates.map(({ change }) => change))).toEqual(new Set(['updated']));
    expect(updates.length).toBeGreaterThanOrEqual(9);
    expect(updates.length).toBeLessThanOrEqual(10);
    one.heat(one.board, 230, 2);
    const [live] = one.program.live().alarms.filter(({ kind }) => kind === 'over-limit');
    expect(live?.peakC).toBeGreaterThan(225);
    expect(toldOf(one, 'over-limit').at(-1)?.alarm).toEqual(live);
    // Nothing new, nothing told.
    const before = toldOf(one, 'over-limit').length;
    one.heat(one.board, 228, 5);
    expect(toldOf(one, 'over-limit')).toHaveLength(before);
  });

  it('is told at once with what it matters where the iron is now', async () => {
    const one = running(150);
    one.heat(one.board, 195, 10);
    expect(toldOf(one, 'heading-for-limit').at(-1)).toMatchObject({ alarm: { priority: 2 } });
    await one.desk.mark(sessionOf(one), { kind: 'place', place: 'on-rest' }, 'rest');
    expect(toldOf(one, 'heading-for-limit').at(-1)).toMatchObject({
      change: 'updated',
      alarm: { priority: 1, state: 'unacknowledged' },
    });
  });
});

const draft = (probes: string[]) => ({ name: 'Other', probes, scheduleId: 'shipped' });

describe('settings that change while irons are watched', () => {
  it('a probe that is put on an iron of its own is watched there at once, and recorded where it is hot', async () => {
    const one = running(150);
    one.board.link('lost');
    await one.desk.settings.putIron('other', draft(['A/1']));
    await written();
    const { irons } = one.program.live().situation;
    expect(irons).toMatchObject([{ id: 'other', probes: ['A/1'] }]);
    expect(irons[0]?.session).not.toBeNull();
    expect(one.shelf.at(0).at(-1)?.end?.why).toBe('by-hand');
    expect(one.program.live().probes).toMatchObject([{ id: 'A/1', iron: 'other' }]);
  });

  it('an iron does not go with an alarm that nobody has seen; once it was seen, that is told to be gone', async () => {
    const one = running(150);
    one.heat(one.board, 195, 60);
    one.heat(one.board, 195, 1);
    await expect(one.desk.settings.putIron('other', draft(['A/1']))).rejects.toThrow('has not been seen yet');
    expect(one.settings.current.irons.map((i) => i.id)).toEqual(['iron-1']);
    await one.desk.acknowledge('iron-1', { kind: 'over-limit', probe: 'A/1' }, 'seen');
    for (const { kind, probe, state } of one.program.live().alarms)
      if (state !== 'acknowledged') await one.desk.acknowledge('iron-1', { kind, probe }, `seen-${kind}`);
    one.told.length = 0;
    await one.desk.settings.putIron('other', draft(['A/1']));
    expect(one.told).toContainEqual(
      expect.objectContaining({
        kind: 'alarm',
        alarm: expect.objectContaining({ iron: 'iron-1', state: 'normal' }),
      }),
    );
  });

  it('reach the watch and its session', async () => {
    const one = running(150);
    const [schedule] = one.desk.settings.schedules();
    if (schedule === undefined) throw new Error('there is no schedule');
    const { id, version, madeAt: _, ...rest } = schedule;
    await one.desk.settings.putSchedule(id, { ...rest, name: 'Mine' }, version);
    expect(one.program.live().situation.irons[0]?.schedule).toMatchObject({ name: 'Mine', version: 2 });
    const inputs = one.shelf.at(0).flatMap((c) => c.entries.map((e) => e.input.kind));
    expect(inputs).toContain('settings');
  });
});

describe('commands', () => {
  it('wait until the sessions that broke off are gone on with', async () => {
    const begun = new Promise<void>((resolve) => {
      setTimeout(resolve, 800);
    });
    const made = bench({ settings: known, ready: () => begun });
    const mark = made.desk.mark('killed', { kind: 'note', text: 'held' }, 'held');
    await vi.advanceTimersByTimeAsync(500);
    made.program.goOnFrom([killed()]);
    await vi.advanceTimersByTimeAsync(500);
    expect(await mark).toMatchObject({ kept: true });
  });

  it('say that they were not kept where they were not', async () => {
    const one = running(150);
    await written();
    one.shelf.isFull = true;
    const outcome = await one.desk.mark(sessionOf(one), { kind: 'place', place: 'on-work' }, 'c');
    expect(outcome.kept).toBe(false);
    expect(one.program.live().situation.irons[0]?.place).toBe('on-work');
    one.shelf.isFull = false;
    await vi.advanceTimersByTimeAsync(3000);
    const kinds = one.shelf.at(0).flatMap((c) => c.entries.map((e) => e.input.kind));
    expect(kinds.filter((kind) => kind === 'mark')).toHaveLength(1);
  });

  it('that the watch refuses are refused with its reason, and may be sent again', async () => {
    const one = running(150);
    const alarm = { kind: 'over-limit', probe: 'A/1' } as const;
    await expect(one.desk.acknowledge('iron-1', alarm, 'c')).rejects.toThrow();
    one.heat(one.board, 195, 60);
    one.heat(one.board, 195, 1);
    expect(await one.desk.acknowledge('iron-1', alarm, 'c')).toMatchObject({ kept: true });
  });

  it('start nothing twice', async () => {
    const one = running(150);
    await expect(one.desk.startSession('iron-1', 'c')).rejects.toThrow('recorded already');
    await expect(one.desk.startSession('iron-9', 'd')).rejects.toThrow('No iron "iron-9"');
  });
});

describe('a choice of what to watch', () => {
  const found = [{ path: '/dev/ttyUSB0', title: 'a board', problem: '' }];
  const serial = { kind: 'serial', path: '/dev/ttyUSB0' } as const;

  it('is made once', async () => {
    const made = bench({ sourceFor: async () => new FakeSource('A', made.clock) });
    made.program.setChoice(found);
    await expect(made.desk.choose({ kind: 'serial', path: '/dev/other' })).rejects.toThrow(
      'not among the ports',
    );
    await made.desk.choose(serial);
    expect(made.program.live().situation).toMatchObject({ choice: null, devices: [{ id: 'A' }] });
    await expect(made.desk.choose(serial)).rejects.toThrow('chosen already');
    await expect(made.desk.choose({ kind: 'simulate' })).rejects.toThrow('chosen already');
  });

  it('that could not be carried out can be made again', async () => {
    const made = bench();
    made.program.setChoice(found);
    await expect(made.desk.choose(serial)).rejects.toThrow('no source');
    expect(made.program.live().situation.choice).toEqual(found);
  });
});

describe('stopping', () => {
  it('ends every session, and lets every device go', async () => {
    const one = running(150);
    const big = new FakeSource('B', one.clock);
    one.program.addSource(big);
    one.heat(big, 120, 1);
    await one.program.stop();
    expect(one.shelf.ids).toHaveLength(2);
    for (const place of [0, 1]) expect(one.shelf.at(place).at(-1)?.end?.why).toBe('shutdown');
    const before = one.told.length;
    one.heat(big, 120, 1);
    expect(one.told.length).toBe(before);
  });
});
