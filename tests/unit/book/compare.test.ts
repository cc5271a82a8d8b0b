import { describe, expect, it } from 'vitest';
import { compareFindings } from '../../../daemon/book/read/compare.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import { alarmOf } from './recording.ts';

const found = (seq: number, peakC = 195.5, raisedAtMs = 2000): FoundEntry => ({
  seq,
  tMs: seq * 100,
  finding: { kind: 'alarm', change: 'raised', alarm: alarmOf({ peakC, raisedAtMs }) },
});

const quality = (q: 'open' | 'jump'): FoundEntry => ({
  seq: 1,
  tMs: 1,
  finding: { kind: 'quality', probe: 'p/1', quality: q },
});

describe('stored and replayed findings', () => {
  it('that are the same make no difference', () => {
    const list = [found(1), found(2)];
    expect(compareFindings(list, structuredClone(list), true)).toEqual([]);
    expect(compareFindings(list, structuredClone(list), false)).toEqual([]);
  });

  it('that are missing on one side are named, in order', () => {
    expect(compareFindings([found(1), found(3)], [found(3), found(2)], true)).toEqual([
      { seq: 1, subject: 'alarm:over-limit:raised:demo-board/heel', stored: found(1), replayed: null },
      { seq: 2, subject: 'alarm:over-limit:raised:demo-board/heel', stored: null, replayed: found(2) },
    ]);
  });

  it('that stand twice must come twice', () => {
    expect(compareFindings([found(1), found(1)], [found(1)], true)).toHaveLength(1);
    expect(compareFindings([found(1)], [found(1), found(1)], true)).toHaveLength(1);
  });

  it('of the same version must agree exactly', () => {
    expect(compareFindings([found(1, 195.5)], [found(1, 195.500001)], true)).toEqual([
      {
        seq: 1,
        subject: 'alarm:over-limit:raised:demo-board/heel',
        stored: found(1, 195.5),
        replayed: found(1, 195.500001),
      },
    ]);
  });

  it('of another version may differ by 0.01 degC, and in nothing else that both have', () => {
    expect(compareFindings([found(1, 195.5)], [found(1, 195.509)], false)).toEqual([]);
    expect(compareFindings([found(1, 195.5)], [found(1, 195.511)], false)).toHaveLength(1);
    expect(compareFindings([found(1, 195.5, 2000)], [found(1, 195.5, 2001)], false)).toHaveLength(1);
    expect(compareFindings([quality('open')], [quality('jump')], false)).toHaveLength(1);
  });

  it('of another version may lack what the other did not have yet', () => {
    const [older, newer] = [found(1), { ...found(1), added: 1 }];
    expect(compareFindings([older], [newer], false)).toEqual([]);
    expect(compareFindings([older], [newer], true)).toHaveLength(1);
  });

  it('are compared as JSON keeps them', () => {
    expect(compareFindings([found(1, 0)], [found(1, -0)], true)).toEqual([]);
  });
});
