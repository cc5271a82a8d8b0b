import { describe, expect, test } from 'vitest';
import { Live } from './support/live.ts';
import { carried, LIMIT_C, PROBE, watchSettings } from './support/settings.ts';

const hot = (): Live => new Live(carried(watchSettings())).read(2, 20).ramp(150, 2).read(20, 150).afresh();
const press = (live: Live, button: 1 | 2 = 1): Live => live.sample({ tC: null, button });

describe('the button or pedal at the handle', () => {
  test('silences all that sounds of this iron for a minute, and marks nothing', () => {
    const live = hot()
      .give({ kind: 'keeping', kept: false, detail: 'full' })
      .read(2, LIMIT_C + 1);
    const { work } = live.state;
    press(live.afresh());
    expect(live.changes.toSorted()).toEqual(['not-recording silenced', 'over-limit silenced']);
    expect(live.state.work).toEqual(work);
    expect(live.alarm('over-limit')?.silencedUntilMs).toBe(live.tMs + 60_000);
    expect(live.alarm('not-recording', null)?.silencedUntilMs).toBe(live.tMs + 60_000);
    expect(live.alarm('over-limit')?.state).toBe('unacknowledged');
  });

  test('a press that comes with a temperature does the same', () => {
    const live = hot()
      .read(2, LIMIT_C + 1)
      .afresh()
      .sample({ tC: LIMIT_C + 1, button: 1 });
    expect(live.changes).toEqual(['over-limit silenced']);
  });

  test('a double press holds a first one: it silences too', () => {
    expect(
      press(
        hot()
          .read(2, LIMIT_C + 1)
          .afresh(),
        2,
      ).changes,
    ).toEqual(['over-limit silenced']);
  });

  test('what is raised by the very sample that brings the press still sounds', () => {
    const live = hot().give({ kind: 'keeping', kept: false, detail: 'full' }).afresh();
    live.read(0.5, LIMIT_C + 1);
    live.tMs += 100;
    live.sample({ tC: LIMIT_C + 1, button: 1 });
    expect(live.changes).toEqual(['not-recording silenced', 'over-limit raised']);
    expect(live.alarm('over-limit')?.silencedUntilMs).toBeNull();
  });

  test('pressed again while it is silent, the silence is not drawn out', () => {
    const live = press(hot().read(2, LIMIT_C + 1));
    const until = live.alarm('over-limit')?.silencedUntilMs;
    press(live.read(30, LIMIT_C + 1).afresh());
    expect(live.changes).toEqual([]);
    expect(live.alarm('over-limit')?.silencedUntilMs).toBe(until);
  });

  test('does nothing while nothing sounds: none, acknowledged, or gone', () => {
    expect(press(hot()).found).toEqual([]);
    expect(
      press(
        hot()
          .read(2, LIMIT_C + 1)
          .acknowledge('over-limit', PROBE)
          .afresh(),
      ).found,
    ).toEqual([]);
    const gone = hot()
      .read(2, LIMIT_C + 1)
      .read(20, 150)
      .afresh();
    expect(gone.alarm('over-limit')?.state).toBe('returned-unacknowledged');
    expect(press(gone).found).toEqual([]);
  });

  test('a press at a probe that isn’t on this iron does nothing', () => {
    const live = hot()
      .read(2, LIMIT_C + 1)
      .afresh()
      .sample({ tC: null, button: 1 }, 'board/other');
    expect(live.found).toEqual([]);
  });
});
