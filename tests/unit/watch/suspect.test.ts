import { describe, expect, it } from 'vitest';
import { normalAlarm } from '../../../shared/alarm/machine.ts';
import type { AlarmChange, AlarmRecord } from '../../../shared/alarm/record.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import { type CrossingSource, suspectCrossings } from '../../../shared/watch/suspect.ts';

const alarm = (over: Partial<AlarmRecord> = {}): AlarmRecord => ({
  ...normalAlarm({ kind: 'over-limit', probe: 'board/1' }),
  state: 'unacknowledged',
  raisedAtMs: 0,
  ...over,
});
const at = (tMs: number, change: AlarmChange, over: Partial<AlarmRecord> = {}): FoundEntry => ({
  seq: tMs / 100,
  tMs,
  finding: { kind: 'alarm', change, alarm: alarm(over) },
});
const source = (over: Partial<CrossingSource>): CrossingSource => ({
  firstSeq: 1,
  firstMs: 0,
  carried: [],
  found: [],
  places: [{ fromMs: 0, place: 'on-work', at: null }],
  ...over,
});
const crossing = [at(5000, 'raised', { peakC: 191 }), at(9000, 'cleared', { peakC: 197.5 })];

describe('crossings of the fabric limit', () => {
  it('last from raised to cleared, with the highest reading meanwhile', () => {
    expect(suspectCrossings(source({ found: crossing }))).toEqual([
      {
        seq: 50,
        fromMs: 5000,
        toMs: 9000,
        peakC: 197.5,
        probes: ['board/1'],
        limit: 'fabric',
        place: 'on-work',
        at: null,
      },
    ]);
  });

  it('open nothing where the iron was on its rest throughout', () => {
    expect(
      suspectCrossings(source({ found: crossing, places: [{ fromMs: 0, place: 'on-rest', at: null }] })),
    ).toEqual([]);
  });

  it.each([
    ['taken to the work while over', [0, 'on-rest'], [7000, 'on-work'], 'on-work'],
    ['taken to the work as it is back', [0, 'on-rest'], [9000, 'on-work'], 'on-work'],
    ['put on its rest while over', [0, 'on-work'], [6000, 'on-rest'], 'on-work'],
    ['never said, then on its rest', [0, 'unknown'], [6000, 'on-rest'], 'unknown'],
    ['taken to the work afterwards', [0, 'on-rest'], [9001, 'on-work'], null],
    ['on its rest before', [0, 'on-work'], [5000, 'on-rest'], null],
  ] as const)('%s', (_what, [first, was], [second, is], place) => {
    const places = [
      { fromMs: first, place: was, at: null },
      { fromMs: second, place: is, at: null },
    ];
    expect(suspectCrossings(source({ found: crossing, places })).map((one) => one.place)).toEqual(
      place === null ? [] : [place],
    );
  });

  it('of another alarm, or without its begin, are none', () => {
    const other = [at(1000, 'raised', { kind: 'heading-for-limit' }), at(2000, 'cleared')];
    expect(suspectCrossings(source({ found: other }))).toEqual([]);
  });

  it('whose end the session does not hold stay open, with what is known of their peak', () => {
    const found = [at(5000, 'raised', { peakC: 191 }), at(8000, 'acknowledged', { peakC: 199 })];
    expect(suspectCrossings(source({ found }))).toMatchObject([{ toMs: null, peakC: 199 }]);
  });

  it('that were carried in begin with the session; what had gone already does not', () => {
    const carried = [alarm({ peakC: 192 }), alarm({ probe: 'board/2', state: 'returned-unacknowledged' })];
    const found = [at(3000, 'cleared', { peakC: 192 })];
    expect(suspectCrossings(source({ carried, found, firstSeq: 7, firstMs: 1000 }))).toEqual([
      {
        seq: 7,
        fromMs: 1000,
        toMs: 3000,
        peakC: 192,
        probes: ['board/1'],
        limit: 'fabric',
        place: 'on-work',
        at: null,
      },
    ]);
  });

  it('that several probes see at the same time are one; one after the other, two', () => {
    const probe = 'board/2';
    const there = { limit: 'fabric', place: 'on-work', at: null };
    const found = [
      at(5000, 'raised', { peakC: 191 }),
      at(6000, 'raised', { probe, peakC: 195 }),
      at(9000, 'cleared', { peakC: 193 }),
      at(9500, 'cleared', { probe, peakC: 196 }),
      at(20_000, 'raised', { probe, peakC: null }),
      at(21_000, 'cleared', { probe, peakC: null }),
    ];
    expect(suspectCrossings(source({ found }))).toEqual([
      { seq: 50, fromMs: 5000, toMs: 9500, peakC: 196, probes: ['board/1', probe], ...there },
      { seq: 200, fromMs: 20_000, toMs: 21_000, peakC: null, probes: [probe], ...there },
    ]);
  });
});
