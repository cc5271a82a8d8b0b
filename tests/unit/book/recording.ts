import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Commit, SessionHead } from '../../../daemon/book/book.ts';
import type { Fold } from '../../../daemon/book/read/fold.ts';
import type { AlarmRecord } from '../../../shared/alarm/record.ts';
import type { HeatSchedule } from '../../../shared/heat/schedule.ts';
import { unknownProbe } from '../../../shared/thermometer/probe.ts';
import type { Reading } from '../../../shared/thermometer/reading.ts';
import { emptySample, type ProbeId } from '../../../shared/thermometer/sample.ts';
import { USUAL_CONFIDENCE } from '../../../shared/thermometer/uncertainty.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Carried, Entry } from '../../../shared/watch/input.ts';

/** Recordings of an invented iron, for tests of the book. */

export const ORIGIN_UTC_MS = Date.UTC(2026, 2, 1, 8, 0, 0);
export const SET_ASIDE_UTC_MS = Date.UTC(2026, 2, 1, 10, 11, 12);
const PROBES: readonly ProbeId[] = ['demo-board/heel', 'demo-board/toe'];

const schedule: HeatSchedule = {
  id: 'demo',
  version: 1,
  madeAt: '2026-03-01T07:00:00.000Z',
  name: 'Demo schedule',
  fabric: 'Demo fabric',
  stages: [{ id: 'tack', name: 'Tack', lowC: 116, targetC: 121, highC: 126, standing: 'demo data' }],
  fabricLimitC: 190,
  cementLimitC: null,
  limitStanding: 'demo data',
  source: null,
};

/** A data folder that goes away with the test. */
export function dataFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'soleplate-book-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export const headOf = (id: string, over: Partial<SessionHead> = {}): SessionHead => ({
  id,
  ironId: 'iron-1',
  ironName: 'Big iron (demo data)',
  simulated: true,
  foldVersion: 1,
  programVersion: '0.1.0',
  why: 'hot',
  originUtcMs: ORIGIN_UTC_MS,
  zone: 'Europe/Berlin',
  firstSeq: 1,
  firstMs: 1000,
  fromSession: null,
  ...over,
});

export const carriedOf = (over: Partial<Carried> = {}): Carried => ({
  settings: {
    iron: {
      id: 'iron-1',
      name: 'Big iron (demo data)',
      probes: [...PROBES],
      scheduleId: schedule.id,
      confidence: USUAL_CONFIDENCE,
      simulated: true,
    },
    probes: PROBES.map((id) => ({
      id,
      label: 'Demo probe',
      ...unknownProbe,
      calibration: null,
    })),
    schedule,
  },
  alarms: [],
  stageId: null,
  place: 'unknown',
  hot: false,
  fromSession: null,
  state: null,
  ...over,
});

export const alarmOf = (over: Partial<AlarmRecord> = {}): AlarmRecord => ({
  kind: 'over-limit',
  probe: 'demo-board/heel',
  state: 'unacknowledged',
  raisedAtMs: 2000,
  pendingSinceMs: null,
  acknowledgedAtMs: null,
  reAlarmAtMs: null,
  silencedUntilMs: null,
  reAlarms: 0,
  peakC: 195.5,
  detail: '',
  ...over,
});

export const sampleAt = (seq: number, tMs: number, tC: number | null, probe = 'demo-board/heel'): Entry => ({
  seq,
  tMs,
  input: { kind: 'sample', sample: { ...emptySample(probe), tC, deviceMs: tMs + 40_000 } },
});

/**
 * A fold that knows little: a sample of 100 degC or more is found hot, one without a temperature is found open, a tick
 * is found when the session ends. Enough to see that what was stored is what is folded again.
 */
export const littleFold: Fold = {
  version: 1,
  *replay(entries, untilMs) {
    const readings: Record<ProbeId, Reading> = {};
    let last: Entry | null = null;
    for (const entry of entries) {
      last = entry;
      if (entry.input.kind === 'sample') {
        const { probe, tC } = entry.input.sample;
        readings[probe] =
          tC === null
            ? { probe, quality: 'open', atMs: entry.tMs }
            : { probe, quality: 'ok', atMs: entry.tMs, plateC: tC };
      }
      yield { entry, found: littleFindings(entry), state: { readings } };
    }
    if (last !== null && untilMs < last.tMs) throw new RangeError('time went back');
    yield { entry: null, found: [], state: { readings } };
  },
};

function littleFindings({ seq, tMs, input }: Entry): FoundEntry[] {
  if (input.kind !== 'sample') return [];
  const { probe, tC } = input.sample;
  if (tC === null) return [{ seq, tMs, finding: { kind: 'quality', probe, quality: 'open' } }];
  const alarm = alarmOf({ probe, peakC: tC, raisedAtMs: tMs });
  return tC >= 100 ? [{ seq, tMs, finding: { kind: 'alarm', change: 'raised', alarm } }] : [];
}

export interface RecordingOptions {
  readonly commits?: number;
  readonly samplesACommit?: number;
  readonly head?: Partial<SessionHead>;
  readonly carried?: Partial<Carried>;
  readonly ended?: boolean;
}

/** The commits of a session as `littleFold` folds it: two probes, ten samples a second each, a mark now and then. */
export function recording(id: string, options: RecordingOptions = {}): Commit[] {
  const { commits = 5, samplesACommit = 20, ended = true } = options;
  const head = headOf(id, options.head);
  let seq = head.firstSeq;
  let tMs = head.firstMs;
  let peakC: number | null = null;
  const begin: Entry = { seq, tMs, input: { kind: 'carried', carried: carriedOf(options.carried) } };
  return Array.from({ length: commits }, (_, index) => {
    const entries: Entry[] = index === 0 ? [begin] : [markAt(++seq, tMs, index)];
    for (let i = 0; i < samplesACommit; i++) {
      if (i % 2 === 0) tMs += 100;
      const tC = i === 5 && index % 2 === 1 ? null : 90 + ((seq * 7) % 23) / 2;
      entries.push(sampleAt(++seq, tMs, tC, PROBES[i % 2]));
      if (tC !== null) peakC = Math.max(tC, peakC ?? tC);
    }
    return {
      session: id,
      begin: index === 0 ? head : null,
      entries,
      found: entries.flatMap(littleFindings),
      untilSeq: seq,
      untilMs: tMs,
      peakC,
      end: ended && index === commits - 1 ? { why: 'cold', atUtc: '2026-03-01T08:00:06.000+00:00' } : null,
    };
  });
}

const markAt = (seq: number, tMs: number, index: number): Entry => ({
  seq,
  tMs,
  input: { kind: 'mark', commandId: `command-${index}`, mark: { kind: 'note', text: `lap ${index}` } },
});

export const entriesOf = (commits: readonly Commit[]): Entry[] => commits.flatMap((c) => c.entries);
export const foundOf = (commits: readonly Commit[]): FoundEntry[] => commits.flatMap((c) => c.found);
