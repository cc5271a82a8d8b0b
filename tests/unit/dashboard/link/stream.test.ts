import { describe, expect, it } from 'vitest';
import { applyMessage, daemonUtcMs, emptyStream, linkView } from '../../../../dashboard/link/stream.ts';
import { DAEMON_LOST_AFTER_MS, type StreamMessage } from '../../../../shared/messages/stream.ts';
import { alarm, iron, live, probe, scenes } from '../../../fixtures/scenes.ts';

const stamp = (seq: number, epoch = 'run-1') => ({ epoch, seq });
const snapshot = (seq: number, of = scenes['in-stage'], epoch = 'run-1'): StreamMessage => ({
  ...stamp(seq, epoch),
  kind: 'snapshot',
  live: of,
});
const begun = applyMessage(emptyStream, snapshot(10), 1000);

const say = (seq: number, change: 'raised' | 'acknowledged' | 'cleared', a = alarm()): StreamMessage => ({
  ...stamp(seq),
  kind: 'alarm',
  change,
  alarm: a,
});

const mark = (
  seq: number,
  m: Extract<StreamMessage, { kind: 'mark' }>['mark'],
  of = 'big',
): StreamMessage => ({
  ...stamp(seq),
  kind: 'mark',
  iron: of,
  mark: m,
});

describe('applying messages of the stream', () => {
  it('begins with a snapshot', () => {
    expect(begun).toMatchObject({ epoch: 'run-1', seq: 10, heardAtMs: 1000, needsSnapshot: false });
    expect(begun.live?.probes).toEqual(scenes['in-stage'].probes);
  });

  it('takes the newest reading of a probe and leaves the others', () => {
    const two = applyMessage(emptyStream, snapshot(1, live([probe(250), probe(90, { id: 'b/2' })])), 0);
    const after = applyMessage(two, { ...stamp(2), kind: 'readings', probes: [probe(260)] }, 500);
    expect(after.live?.probes.map((p) => [p.id, p.standing.kind])).toEqual([
      ['b/2', 'cold'],
      ['bench-board/1', 'in-stage'],
    ]);
    expect(after.readAtMs).toEqual({ 'b/2': 0, 'bench-board/1': 500 });
  });

  it('ignores what it knows already, but hears that the daemon is there', () => {
    const again = applyMessage(begun, { ...stamp(10), kind: 'readings', probes: [probe('open')] }, 1700);
    expect(again.live).toBe(begun.live);
    expect(again.heardAtMs).toBe(1700);
  });

  it('asks for a snapshot where a message is of another run, or comes before any snapshot', () => {
    const beat: StreamMessage = { ...stamp(11, 'run-2'), kind: 'beat' };
    const foreign = applyMessage(begun, beat, 1200);
    expect(foreign.needsSnapshot).toBe(true);
    expect(linkView(foreign, true, 0, 1200)).toBe('lost');
    expect(applyMessage(emptyStream, beat, 0).needsSnapshot).toBe(true);
    expect(applyMessage(foreign, snapshot(3, scenes.warming, 'run-2'), 1300)).toMatchObject({
      epoch: 'run-2',
      seq: 3,
      needsSnapshot: false,
    });
  });

  it('raises, changes and clears an alarm, the unseen and the urgent first', () => {
    const kept = alarm({ kind: 'not-recording', priority: 2, probe: null, since: '2026-03-04T13:00:00Z' });
    const one = applyMessage(begun, say(11, 'raised', kept), 1100);
    const both = applyMessage(one, say(12, 'raised'), 1200);
    expect(both.live?.alarms.map((a) => a.kind)).toEqual(['over-limit', 'not-recording']);
    const seen = applyMessage(both, say(13, 'acknowledged', alarm({ state: 'acknowledged' })), 1300);
    expect(seen.live?.alarms.map((a) => a.kind)).toEqual(['not-recording', 'over-limit']);
    const gone = applyMessage(seen, say(14, 'cleared', alarm({ state: 'normal' })), 1400);
    expect(gone.live?.alarms.map((a) => a.kind)).toEqual(['not-recording']);
  });

  it('takes marks of stage and place to their iron, and lets notes pass', () => {
    const staged = applyMessage(begun, mark(11, { kind: 'stage', stageId: 'final' }), 1100);
    const placed = applyMessage(staged, mark(12, { kind: 'place', place: 'on-rest' }), 1200);
    const noted = applyMessage(placed, mark(13, { kind: 'note', text: 'turned the panel' }), 1300);
    const other = applyMessage(noted, mark(14, { kind: 'place', place: 'on-work' }, 'small'), 1400);
    expect(other.live?.situation.irons[0]).toMatchObject({ stageId: 'final', place: 'on-rest' });
  });

  it('forgets the probe of an iron that is gone', () => {
    const { situation } = scenes['in-stage'];
    const none = applyMessage(
      begun,
      { ...stamp(11), kind: 'situation', situation: { ...situation, irons: [] } },
      1100,
    );
    expect(none.live?.probes).toEqual([]);
    const kept = { ...situation, irons: [iron({ name: 'Renamed' })] };
    expect(
      applyMessage(begun, { ...stamp(11), kind: 'situation', situation: kept }, 1100).live?.probes,
    ).toHaveLength(1);
  });
});

describe('the link to the daemon', () => {
  it('is lost after two seconds without a message, and at once when the socket closes', () => {
    expect(DAEMON_LOST_AFTER_MS).toBeLessThanOrEqual(2000);
    expect(linkView(begun, true, 0, 1000 + DAEMON_LOST_AFTER_MS)).toBe('live');
    expect(linkView(begun, true, 0, 1001 + DAEMON_LOST_AFTER_MS)).toBe('lost');
    expect(linkView(begun, false, 0, 1001)).toBe('lost');
  });

  it('is being looked for at first, and lost where nothing answers', () => {
    expect(linkView(emptyStream, false, 0, DAEMON_LOST_AFTER_MS)).toBe('connecting');
    expect(linkView(emptyStream, false, 0, DAEMON_LOST_AFTER_MS + 1)).toBe('lost');
  });
});

const raised = (since: string): StreamMessage => ({
  ...stamp(11),
  kind: 'alarm',
  change: 'raised',
  alarm: alarm({ since }),
});

describe('the daemon’s clock', () => {
  const at = Date.parse(scenes['in-stage'].at);

  it('goes on by the page’s monotonic clock alone', () => {
    expect(daemonUtcMs(begun, 1000)).toBe(at);
    expect(daemonUtcMs(begun, 61_000)).toBe(at + 60_000);
    expect(daemonUtcMs(emptyStream, 61_000)).toBeNull();
  });

  it('moves up to an alarm that was raised while the tablet slept, and never back to an older one', () => {
    const later = applyMessage(begun, raised('2026-03-04T14:20:00Z'), 2000);
    expect(daemonUtcMs(later, 2000)).toBe(Date.parse('2026-03-04T14:20:00Z'));
    const older = applyMessage(begun, raised('2026-03-04T13:19:00Z'), 2000);
    expect(daemonUtcMs(older, 2000)).toBe(at + 1000);
  });
});
