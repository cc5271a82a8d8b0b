import { describe, expect, it } from 'vitest';
import {
  type IronView,
  ironViews,
  keepUnchanged,
  type Lead,
  leadingIron,
  plateView,
} from '../../../../dashboard/iron/plate.ts';
import { applyMessage, emptyStream, type StreamState } from '../../../../dashboard/link/stream.ts';
import type { Live } from '../../../../shared/messages/live.ts';
import { DAEMON_LOST_AFTER_MS } from '../../../../shared/messages/stream.ts';
import { faults } from '../../../../shared/thermometer/reading.ts';
import { alarm, iron, live, probe, SMALL, scenes } from '../../../fixtures/scenes.ts';

const told = (of: Live): StreamState =>
  applyMessage(emptyStream, { epoch: 'run-1', seq: 1, kind: 'snapshot', live: of }, 0);

describe('what may be shown of a plate', () => {
  it('is a number only where it is valid, fresh and the daemon is heard', () => {
    expect(plateView(probe(252), 0, true).kind).toBe('number');
    expect(plateView(probe(252), 0, false)).toEqual({ kind: 'lost' });
    expect(plateView(null, 0, true)).toEqual({ kind: 'fault', fault: 'silent', lastMs: null });
    for (const fault of faults)
      expect(plateView(probe(fault), 0, true)).toMatchObject({ kind: 'fault', fault });
  });

  it('is no number once it is two seconds old, by the age told and the time since', () => {
    const fresh = probe(252, { ageMs: 500 });
    const last = DAEMON_LOST_AFTER_MS - 500;
    expect(plateView(fresh, last, true).kind).toBe('number');
    expect(plateView(fresh, last + 1, true)).toMatchObject({ kind: 'fault', fault: 'silent' });
  });

  it('is no number where the daemon says ok without one', () => {
    expect(plateView(probe(252, { plateC: null }), 0, true).kind).toBe('fault');
    expect(plateView(probe(252, { ageMs: null }), 0, true).kind).toBe('fault');
  });
});

const hot = (of: Live, isLive = true): boolean | undefined => ironViews(told(of), isLive, 0)[0]?.hot;

describe('an iron', () => {
  it('shows its hottest probe first, and one without a reading last', () => {
    const [big] = ironViews(told(scenes['two-irons']), true, 0);
    expect(big?.plates.map((p) => p.id)).toEqual(['bench-board/1', 'bench-board/3']);
  });

  it('is hot until it is measured otherwise', () => {
    expect(hot(live([probe(252)]))).toBe(true);
    const cold = live([probe(96)], [], { irons: [iron({ hot: false })] });
    expect(hot(cold)).toBe(false);
    expect(hot(cold, false)).toBe(true);
    expect(hot(live([probe('open', { hot: false })], [], { irons: [iron({ hot: false })] }))).toBe(true);
  });
});

const two = (
  bigF: Parameters<typeof probe>[0],
  smallF: Parameters<typeof probe>[0],
  seen = false,
): readonly IronView[] =>
  ironViews(
    told(
      live(
        [probe(bigF), probe(smallF, { id: SMALL, iron: 'small' })],
        seen ? [alarm({ kind: 'no-reading', state: 'acknowledged' })] : [],
        { irons: [iron(), iron({ id: 'small', name: 'Small iron', probes: [SMALL] })] },
      ),
    ),
    true,
    0,
  );

/** What is shown large after each of these, a second apart but where a time is given. */
function leaders(...seen: readonly (readonly IronView[] | number)[]): readonly (string | undefined)[] {
  let lead: Lead | null = null;
  let atMs = 0;
  return seen.flatMap((one) => {
    if (typeof one === 'number') {
      atMs += one;
      return [];
    }
    lead = leadingIron(lead, one, (atMs += 1000));
    return [lead?.view.iron.id];
  });
}

describe('the iron that is shown large', () => {
  it('is the hottest', () => {
    expect(leaders(two(250, 300))).toEqual(['small']);
    expect(leaders(two(300, 250))).toEqual(['big']);
    expect(leadingIron(null, [], 0)).toBeNull();
  });

  it('does not change back and forth between two that are about alike, or whose thermostats take turns', () => {
    expect(leaders(two(300, 250), 60_000, two(300, 305), 60_000, two(300, 308))).toEqual([
      'big',
      'big',
      'big',
    ]);
    const turns = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? two(300, 340) : two(340, 300)));
    expect(new Set(leaders(two(300, 250), ...turns.flatMap((one) => [19_000, one])))).toEqual(
      new Set(['big']),
    );
  });

  it('changes to one that has been hotter for half a minute, is far hotter, or over its limit', () => {
    const hotter = two(300, 312);
    expect(leaders(two(300, 250), hotter, 27_000, hotter, 1000, hotter)).toEqual([
      'big',
      'big',
      'big',
      'small',
    ]);
    expect(leaders(two(300, 250), hotter, 20_000, two(300, 300), hotter, 20_000, hotter).at(-1)).toBe('big');
    expect(leaders(two(300, 250), two(300, 360))).toEqual(['big', 'small']);
    expect(leaders(two(350, 250), two(350, 362))).toEqual(['big', 'big']);
    expect(leaders(two(362, 250), two(362, 378))).toEqual(['big', 'small']);
  });

  it('stays when its reading is lost, until somebody has acknowledged that', () => {
    expect(leaders(two(300, 250), two('open', 305))).toEqual(['big', 'big']);
    expect(leaders(two(300, 250), two('open', 305, true))).toEqual(['big', 'small']);
  });
});

it('of several irons only the one that was read is another object', () => {
  const state = told(scenes['two-irons']);
  const before = ironViews(state, true, 0);
  const [big, small] = before;
  const readings = { epoch: 'run-1', seq: 2, kind: 'readings' as const };
  const read = applyMessage(state, { ...readings, probes: [probe(281, { id: SMALL, iron: 'small' })] }, 100);
  const after = keepUnchanged(before, ironViews(read, true, 100));
  expect(after[0]).toBe(big);
  expect(after[1]).not.toBe(small);
  expect(after).toEqual(ironViews(read, true, 100));
});

it('a fault that goes on, or a daemon that is lost, is not taken for what was before', () => {
  const state = told(live([probe('open')]));
  const before = ironViews(state, true, 0);
  expect(keepUnchanged(before, ironViews(state, true, 1000))).toEqual(ironViews(state, true, 1000));
  expect(keepUnchanged(before, ironViews(state, false, 0))).toEqual(ironViews(state, false, 0));
});
