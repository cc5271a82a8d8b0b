import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { withTypedPoint } from '../../../daemon/settings/dials.ts';
import type { IronLive, ProbeLive } from '../../../shared/messages/live.ts';
import { liveSchema } from '../../../shared/messages/live.ts';
import { type Bench, bench, FakeSource, foldedAgain } from './support/bench.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

interface Running extends Bench {
  readonly board: FakeSource;
}

function running(): Running {
  const made = bench();
  const board = new FakeSource('A', made.clock);
  made.program.addSource(board);
  board.link('connected');
  made.heat(board, 22, 3);
  return { ...made, board };
}

const ironOf = ({ program }: Bench, id = 'iron-1'): IronLive => {
  const iron = liveSchema.parse(program.live()).situation.irons.find((one) => one.id === id);
  if (iron === undefined) throw new Error(`there is no iron ${id}`);
  return iron;
};
const probeOf = ({ program }: Bench): ProbeLive => {
  const [probe] = program.live().probes;
  if (probe === undefined) throw new Error('there is no probe');
  return probe;
};

async function inPad(): Promise<Running> {
  const made = running();
  await made.desk.settings.putPlace('A/1', { kind: 'check-pad' });
  return made;
}

/** Parks an iron on a pad of 6 s. */
function park(made: Running, plateC: number, s: number): void {
  const fromC = made.program.live().probes[0]?.readC ?? 22;
  for (let i = 1; i <= s; i++) made.heat(made.board, plateC - (plateC - fromC) * Math.exp(-i / 6), 1);
}

describe('an iron with a check pad', () => {
  it('is shown as checked, with no plate temperature while the pad is bare', async () => {
    const made = await inPad();
    expect(ironOf(made)).toMatchObject({
      watched: 'checked',
      hot: true,
      session: null,
      check: { pad: 'bare', padC: null, last: null, missed: null },
    });
    expect(probeOf(made)).toMatchObject({
      seat: 'check-pad',
      plateC: null,
      standing: { kind: 'no-reading' },
    });
    expect(probeOf(made).readC).toBeCloseTo(22, 0);
  });

  it('is shown settling, settled, and by the age of its last check', async () => {
    const made = await inPad();
    park(made, 150, 5);
    expect(ironOf(made).check).toMatchObject({ pad: 'settling', last: null });
    expect(ironOf(made).check?.padC).toBeGreaterThan(80);
    park(made, 150, 60);
    const settled = ironOf(made).check;
    expect(settled).toMatchObject({ pad: 'settled', last: { standing: { kind: 'in-stage' } } });
    expect(settled?.last?.ageMs).toBeLessThan(2500);
    made.heat(made.board, 60, 30);
    made.wait(240);
    const later = ironOf(made).check;
    expect(later).toMatchObject({ pad: 'silent', padC: null });
    expect(later?.last?.ageMs).toBeGreaterThan(240_000);
    expect(later?.last?.plateC).toBeGreaterThan(148);
    expect(ironOf(made).session).not.toBeNull();
  });

  it('is recorded with its checks, and its session folds again exactly', async () => {
    const made = await inPad();
    park(made, 150, 60);
    made.heat(made.board, 40, 20);
    await vi.advanceTimersByTimeAsync(2000);
    const { stored, replayed } = foldedAgain(made.shelf, 0);
    expect(stored.filter(({ finding }) => finding.kind === 'check')).toHaveLength(2);
    expect(replayed).toEqual(stored);
    // The bare pad is no plate.
    const peaks = made.shelf.at(0).map((commit) => commit.peakC);
    expect(Math.max(...peaks.map((c) => c ?? 0))).toBeLessThan(151);
  });

  it('says what its chart has at the mark that was told, and nothing while it is monitored', async () => {
    const made = running();
    const point = { mark: 4, meanC: 121, peakC: 130, troughC: 112 };
    await made.settings.change((s) => withTypedPoint(s, 'iron-1', point, '2026-03-01T10:00:00.000Z'));
    const { session } = await made.desk.startSession('iron-1', 'c1');
    await made.desk.mark(session ?? '', { kind: 'dial', mark: 4 }, 'c2');
    expect(ironOf(made).chart).toBeNull();
    await made.desk.settings.putPlace('A/1', { kind: 'check-pad' });
    expect(ironOf(made).chart).toEqual({ mark: 4, meanC: 121, peakC: 130 });
    await made.desk.mark(session ?? '', { kind: 'dial', mark: 6 }, 'c3');
    expect(ironOf(made).chart).toBeNull();
  });
});

describe('a typed reading', () => {
  it('begins a session where none runs, is shown with its age, and is not doubled by a retry', async () => {
    const made = bench();
    await made.desk.settings.putIron('hand', { name: 'By hand', probes: [], scheduleId: 'shipped' });
    expect(ironOf(made, 'hand')).toMatchObject({ watched: 'typed', hot: true, typed: null, probes: [] });
    const first = await made.desk.addTypedReading('hand', 150, 'c1');
    const again = await made.desk.addTypedReading('hand', 150, 'c1');
    expect(again).toEqual(first);
    made.wait(60);
    expect(ironOf(made, 'hand')).toMatchObject({
      session: first.session,
      typed: { plateC: 150, standing: { kind: 'in-stage' } },
    });
    expect(ironOf(made, 'hand').typed?.ageMs).toBeGreaterThanOrEqual(60_000);
    await vi.advanceTimersByTimeAsync(2000);
    const { stored } = foldedAgain(made.shelf, 0);
    expect(stored.filter(({ finding }) => finding.kind === 'typed')).toHaveLength(1);
  });

  it('over the limit is an alarm at once, and keeps its iron from being taken away unseen', async () => {
    const made = bench();
    await made.desk.settings.putIron('hand', { name: 'By hand', probes: [], scheduleId: 'shipped' });
    await made.desk.addTypedReading('hand', 200, 'c1');
    made.wait(2);
    expect(made.program.live().alarms).toMatchObject([
      { iron: 'hand', kind: 'over-limit', probe: null, detail: 'typed', peakC: 200 },
    ]);
    await expect(made.desk.settings.removeIron('hand')).rejects.toThrow(/has not been seen yet/);
    await made.desk.acknowledge('hand', { kind: 'over-limit', probe: null }, 'c2');
    await made.desk.settings.removeIron('hand');
    expect(made.program.live().situation.irons).toEqual([]);
  });

  it('is refused of an iron that is not there', async () => {
    await expect(bench().desk.addTypedReading('none', 150, 'c')).rejects.toThrow(/No iron/);
  });
});

describe('a probe that was moved', () => {
  it('is shown as not told, and asks the page by that', async () => {
    const made = running();
    await made.desk.settings.putIron('other', { name: 'Other', probes: ['A/1'], scheduleId: 'shipped' });
    made.heat(made.board, 60, 5);
    expect(ironOf(made, 'other')).toMatchObject({ watched: 'not-told', hot: true });
    expect(probeOf(made)).toMatchObject({ seat: 'not-told', place: null, plateC: null });
    expect(probeOf(made).readC).toBeCloseTo(60, 0);
    await made.desk.settings.putPlace('A/1', { kind: 'fitted', spot: 'middle', by: 'clamped' });
    made.heat(made.board, 60, 1);
    expect(ironOf(made, 'other').watched).toBe('monitored');
    expect(probeOf(made)).toMatchObject({ seat: 'fitted', place: { spot: 'middle' } });
    expect(probeOf(made).plateC).toBeCloseTo(60, 0);
  });
});
