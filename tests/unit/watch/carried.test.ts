import { describe, expect, test } from 'vitest';
import { resume } from '../../../shared/watch/watch.ts';
import { Live } from './support/live.ts';
import { carried, LIMIT_C, PROBE, watchSettings } from './support/settings.ts';

const settings = watchSettings();
const before = (): Live => new Live(carried(settings)).read(1, 20).ramp(150, 2).read(5, 150);
const restart = (live: Live, tMs = 0, more: object = {}): Live =>
  new Live(
    carried(settings, {
      alarms: Object.values(live.state.alarms).filter((a) => a.state !== 'normal'),
      stageId: live.state.work.stageId,
      dial: live.state.work.dial?.mark ?? null,
      place: live.state.work.place,
      hot: true,
      fromSession: 'before',
      ...more,
    }),
    tMs,
    null,
  );

describe('after a restart', () => {
  test('a standing alarm still stands, and only a fresh reading clears it', () => {
    const again = restart(before().read(2, LIMIT_C + 1));
    again.wait(60);
    expect(again.alarm('over-limit')?.state).toBe('unacknowledged');
    again.read(6, 150);
    expect(again.alarm('over-limit')?.state).toBe('returned-unacknowledged');
  });

  test('it is not raised a second time for the same cause', () => {
    const again = restart(before().read(2, LIMIT_C + 1)).read(30, LIMIT_C + 1);
    expect(again.changes.filter((c) => c === 'over-limit raised')).toEqual([]);
  });

  test('one that was silenced sounds again; one that was seen is presented when it is due', () => {
    const silenced = restart(
      before()
        .read(2, LIMIT_C + 1)
        .silence('over-limit', PROBE),
    );
    expect(silenced.alarm('over-limit')?.silencedUntilMs).toBeNull();
    const acked = restart(
      before()
        .read(2, LIMIT_C + 1)
        .acknowledge('over-limit', PROBE),
    ).read(119, LIMIT_C + 1);
    expect(acked.alarm('over-limit')?.state).toBe('acknowledged');
    acked.read(2, LIMIT_C + 1);
    expect(acked.alarm('over-limit')?.state).toBe('unacknowledged');
  });

  test('a plate that was hot is treated as hot: without a reading there is an alarm', () => {
    expect(restart(before()).wait(4).changes).toEqual(['no-reading raised']);
    expect(restart(before(), 0, { hot: false }).wait(4).changes).toEqual([]);
  });

  test('and its session ends once it has been measured cold', () => {
    const again = restart(before()).read(62, 30);
    expect(again.found.filter((f) => f.finding.kind === 'heat').map((f) => f.finding)).toEqual([
      { kind: 'heat', change: 'cold' },
    ]);
  });

  test('an alarm of the band stands until the band has been judged again', () => {
    const live = new Live(carried(settings)).stage('initial').read(1, 20).ramp(115, 1).swing(101, 4);
    expect(live.alarm('below-band', null)?.state).toBe('unacknowledged');
    const again = restart(live).ramp(115, 1).swing(101, 1);
    expect(again.alarm('below-band', null)?.state).toBe('unacknowledged');
    again.swing(101, 4).ramp(140, 0.8).swing(121, 4);
    expect(again.alarm('below-band', null)?.state).toBe('returned-unacknowledged');
    expect(again.changes.filter((c) => c.startsWith('below'))).toEqual(['below-band cleared']);
  });

  test('the work in hand goes on, recorded or not', () => {
    const live = before().stage('final').place('on-rest').dial(4.5);
    expect(restart(live).state.work).toMatchObject({
      stageId: 'final',
      place: 'on-rest',
      at: null,
      dial: { mark: 4.5, toldMs: restart(live).state.tMs },
      recording: true,
    });
    expect(restart(live, 0, { fromSession: null }).state.work.recording).toBe(false);
  });

  test('alarms of a probe that is no longer on the iron are over', () => {
    const live = before().read(2, LIMIT_C + 1);
    const alarms = Object.values(live.state.alarms).map((a) => ({ ...a, probe: 'board/gone' }));
    const again = restart(live, 0, { alarms }).wait(10);
    expect(again.alarm('over-limit', 'board/gone')?.state).toBe('returned-unacknowledged');
  });
});

describe('recording that begins in mid-watch', () => {
  test('takes the whole state, unless another version folded it', () => {
    const { state } = before();
    const whole = carried(settings, { state, hot: true });
    expect(resume(whole, state.seq, state.tMs)).toBe(state);
    expect(resume(whole, state.seq, state.tMs, false).thermometers[PROBE]).toMatchObject({
      heat: 'hot',
      lastOk: null,
    });
  });
});
