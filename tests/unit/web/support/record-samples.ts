import type { SessionSummary, SuspectItem, TraceRead, Verification } from '../../../../daemon/book/book.ts';
import type { FoundEntry } from '../../../../shared/watch/finding.ts';
import { iron, probe, schedule } from './samples.ts';

/** Invented sessions, and what is made of them. */

export const summary: SessionSummary = {
  id: '018f0000-0000-7000-8000-000000000001',
  ironId: iron.id,
  ironName: iron.name,
  simulated: true,
  foldVersion: 1,
  programVersion: '0.1.0',
  why: 'hot',
  originUtcMs: Date.UTC(2026, 2, 1, 9),
  zone: 'Europe/Berlin',
  firstSeq: 40,
  firstMs: 10_000,
  fromSession: null,
  startedAtUtc: '2026-03-01T09:00:10.000Z',
  endedAtUtc: null,
  endWhy: null,
  untilMs: 70_000,
  samples: 600,
  findings: 6,
  peakC: 193.4,
  seal: 'ab'.repeat(32),
};

const alarmFound: FoundEntry = {
  seq: 52,
  tMs: 30_000,
  finding: {
    kind: 'alarm',
    change: 'raised',
    alarm: {
      kind: 'over-limit',
      probe: probe.id,
      state: 'unacknowledged',
      raisedAtMs: 9000,
      pendingSinceMs: null,
      acknowledgedAtMs: null,
      reAlarmAtMs: null,
      silencedUntilMs: null,
      reAlarms: 0,
      peakC: 193.4,
      detail: '',
    },
  },
};

export const found: readonly FoundEntry[] = [
  { seq: 41, tMs: 10_250, finding: { kind: 'heat', change: 'hot' } },
  { seq: 41, tMs: 10_250, finding: { kind: 'phase', phase: 'warming' } },
  { seq: 42, tMs: 10_500, finding: { kind: 'quality', probe: probe.id, quality: 'open' } },
  alarmFound,
  {
    seq: 60,
    tMs: 60_000,
    finding: {
      kind: 'cycle',
      cycle: { fromMs: 20_000, toMs: 60_000, peakC: 130, troughC: 112, meanC: 121 },
    },
  },
  { seq: 61, tMs: 61_000, finding: { kind: 'refused', commandId: 'c1', reason: 'no such alarm' } },
];

export const trace: TraceRead = {
  fromMs: 0,
  toMs: 60_000,
  untilMs: 60_000,
  readUntilMs: 60_000,
  complete: true,
  broken: null,
  probes: [{ id: probe.id, tMs: [0, 500], minC: [120.5, null], maxC: [193.4, null], fault: [null, 'open'] }],
  settings: [
    {
      fromMs: 0,
      schedule,
      probes: [{ id: probe.id, label: probe.label, seat: 'fitted', guardBandK: 2.2, calibration: null }],
    },
  ],
  work: [{ fromMs: 0, stageId: 'tack', place: 'on-work' }],
  notes: [{ atMs: 4000, text: 'left end' }],
  found: found.filter(({ finding }) => finding.kind !== 'cycle'),
  foundLeftOut: 0,
  cycles: 1,
};

export const item: SuspectItem = {
  id: `${summary.id}-52`,
  session: summary,
  crossing: {
    seq: 52,
    fromMs: 30_000,
    toMs: 41_000,
    peakC: 193.4,
    probes: [probe.id],
    limit: 'fabric',
    at: null,
    place: 'on-work',
  },
  guardBandK: 3.7,
  limitC: 190.5,
  stage: 'Tack',
  closing: null,
};

export const verification: Verification = {
  id: summary.id,
  firstBadCommit: { index: 4, fromMs: 20_000, toMs: 21_000, what: 'its link does not fit' },
  foldVersion: 1,
  sameFoldVersion: true,
  differences: [{ seq: 52, subject: 'alarm', stored: alarmFound, replayed: null }],
  findings: 6,
  samples: 600,
};
