import type { SessionSummary, SuspectItem, TraceRead, Verification } from '../../../../daemon/book/book.ts';
import type { Cement } from '../../../../shared/cure/cement.ts';
import type { HeatSchedule } from '../../../../shared/heat/schedule.ts';
import type { Iron } from '../../../../shared/iron/iron.ts';
import type { ProbeCalibrations } from '../../../../shared/messages/calibration.ts';
import type { IronDial } from '../../../../shared/messages/dial.ts';
import type { IronEvenness } from '../../../../shared/messages/evenness.ts';
import type { ProbeLag } from '../../../../shared/messages/lag.ts';
import type { AlarmLive, ProbeLive, Situation } from '../../../../shared/messages/live.ts';
import type { ProbeMotion } from '../../../../shared/messages/motion.ts';
import type { PieceHeat } from '../../../../shared/messages/piece.ts';
import type { Piece } from '../../../../shared/piece/piece.ts';
import { startingPiece } from '../../../../shared/piece/starting.ts';
import type { ProbeSettings } from '../../../../shared/thermometer/probe.ts';
import { unknownProbe } from '../../../../shared/thermometer/probe.ts';
import { USUAL_CONFIDENCE } from '../../../../shared/thermometer/uncertainty.ts';
import type { FoundEntry } from '../../../../shared/watch/finding.ts';

/** Invented values for tests of the web side. */

export const schedule: HeatSchedule = {
  id: 'trial',
  version: 3,
  madeAt: '2026-03-01T08:00:00Z',
  name: 'Trial schedule',
  fabric: 'test cloth',
  stages: [{ id: 'tack', name: 'Tack', lowC: 110, targetC: 121, highC: 132, standing: 'test value' }],
  fabricLimitC: 190.5,
  cementLimitC: null,
  limitStanding: 'test value',
  source: null,
};

export const iron: Iron = {
  id: 'small',
  name: 'Small iron',
  probes: ['/dev/ttyT0/1'],
  scheduleId: 'trial',
  confidence: USUAL_CONFIDENCE,
  simulated: true,
};

export const probe: ProbeSettings = {
  id: '/dev/ttyT0/1',
  label: 'Sole plate',
  ...unknownProbe,
};

export const probeLive = (plateC: number, id = probe.id): ProbeLive => ({
  id,
  label: 'Sole plate',
  iron: iron.id,
  simulated: true,
  quality: 'ok',
  seat: 'fitted',
  place: null,
  readC: plateC,
  plateC,
  standing: { kind: 'in-stage', stages: ['Tack'] },
  ageMs: 12,
  trend: 'steady',
  slopeKPerS: 0,
  guardBandK: 2.2,
  overK: 0,
  measured: false,
  hot: plateC >= 43,
});

export const alarmLive = (over: Partial<AlarmLive> = {}): AlarmLive => ({
  iron: iron.id,
  kind: 'over-limit',
  probe: probe.id,
  priority: 3,
  state: 'unacknowledged',
  since: '2026-03-01T09:00:00.000Z',
  peakC: 193.4,
  detail: '',
  silencedUntil: null,
  ...over,
});

export const situation = (over: Partial<Situation> = {}): Situation => ({
  irons: [
    {
      id: iron.id,
      name: iron.name,
      simulated: true,
      probes: iron.probes,
      phase: 'regulating',
      hot: true,
      watched: 'monitored',
      check: null,
      typed: null,
      chart: null,
      place: 'unknown',
      at: null,
      stageId: 'tack',
      dial: null,
      evenness: null,
      session: '018f0000-0000-7000-8000-000000000001',
      schedule,
    },
  ],
  devices: [],
  keeping: { kept: true, detail: '' },
  hearing: { armedPages: 1, unheard: false },
  work: { inHand: null, recent: [], heatRevision: 0, coatRevision: 0, ready: true },
  choice: null,
  viewOnly: false,
  settingsRevision: 0,
  simulated: true,
  ...over,
});

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

/** Demo data. */
export const piece: Piece = {
  ...startingPiece('Left flap', 'spruce', ['Upper', 'Lower']),
  id: 'left-flap',
  version: 2,
  madeAt: '2026-03-01T08:00:00Z',
};

export const pieceHeat: PieceHeat = {
  piece,
  revision: 7,
  areas: {},
  sides: piece.sides.map(() => ({ reached: null, laps: 0, tight: null, capC: null })),
  balance: { kind: 'not-compared', why: 'no-heat' },
  overruled: null,
  next: null,
  visits: [],
  unassigned: [],
  suspects: [],
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

const point = {
  kind: 'contact',
  readingC: 150,
  readingSpreadK: 0.1,
  readings: 200,
  resolutionK: 0.25,
  referenceC: 154,
  referenceUK: 1.3,
  pressureHpa: null,
  altitudeM: null,
  instrument: 'test thermometer',
  takenAt: '2026-03-01T08:00:00.000Z',
} as const;

export const calibrations: ProbeCalibrations = {
  probe: probe.id,
  versions: [
    {
      calibration: {
        id: 'cal-1',
        version: 1,
        probe: probe.id,
        iron: iron.id,
        by: 'A. Tester',
        mounting: 'fitted',
        points: [point],
        dueUtcMs: null,
        madeAt: '2026-03-01T08:00:00.000Z',
        correction: {
          method: 'offset',
          t0C: 150,
          b1K: 4,
          b2: 0,
          u1K: 1.3,
          u2: 0,
          r: 0,
          sK: null,
          fromC: 150,
          toC: 150,
        },
      },
      residualsK: [0],
      along: [{ readC: 140, bandK: 2.8 }],
    },
  ],
  due: false,
  budget: {
    parts: [{ name: 'calibration', uK: 1.3, standing: 'measured', note: 'calibrated' }],
    uK: 1.3,
    confidence: 0.95,
    guardBandK: 2.1,
    overK: 0,
    allowanceOnly: false,
  },
  procedure: {
    mounting: 'fitted',
    kinds: ['contact'],
    points: [point],
    waiting: {
      kind: 'contact',
      progress: 0.5,
      steady: false,
      meanC: 150,
      spreadK: 0.1,
      driftKPerMin: 0.2,
      readings: 100,
      resolutionK: 0.25,
    },
    outcome: { kind: 'refused', seen: 'Seen.', action: 'Do.' },
    trouble: '',
  },
};

export const probeMotion: ProbeMotion = {
  probe: probe.id,
  check: { stillG: 0.02, movingG: 0.08, checkedAt: '2026-03-01T08:00:00.000Z' },
  onLine: true,
  trial: { asks: 'nothing', leftS: 0, refused: 'not-still', trouble: '' },
};

export const probeLag: ProbeLag = {
  probe: probe.id,
  lag: { tauS: 2.1, standardS: 0.05, measuredAt: '2026-03-01T08:00:00.000Z' },
  allowanceS: 5,
  procedure: {
    mounting: 'fitted',
    kinds: ['clip'],
    step: {
      kind: 'clip',
      state: 'found',
      readC: 150,
      progress: 1,
      spreadK: 0.1,
      sinceS: 20,
      found: { tauS: 2.1, standardS: 0.05, startC: 22, endC: 150, readings: 200 },
      refused: null,
    },
    trouble: '',
  },
};

/** Of an iron that nothing has been measured of yet. */
export const ironDial: IronDial = {
  iron: iron.id,
  simulated: true,
  chart: { points: [], earlier: [] },
  since: [],
  last: null,
  load: null,
  warmUp: null,
  drift: null,
  uncertaintyK: 2.2,
  unevennessK: 0,
  advice: [{ stageId: 'tack', stage: 'Tack', targetC: 121, advice: { kind: 'few-marks', charted: 0 } }],
  highest: null,
  drawing: { fabricLimitC: 190.6, mean: [], hottest: [], stretches: [] },
};

/** Of a plate with one spot typed, and none beside the probe yet. */
export const ironEvenness: IronEvenness = {
  iron: iron.id,
  simulated: true,
  spots: [
    {
      place: 'toe',
      readC: 154,
      thermometerK: 1.5,
      probeC: 150,
      slopeKPerS: 0.1,
      madeWith: { probe: probe.id, calibration: null },
      at: '2026-03-01T09:00:00.000Z',
      overProbeK: null,
    },
  ],
  looks: [],
  typed: null,
  probes: null,
  limitsOverK: 0,
  adviceOverK: 0,
};

export const cement: Cement = {
  id: 'trial-cement',
  version: 1,
  madeAt: '2026-03-01T08:00:00Z',
  name: 'Trial cement',
  kind: 'solvent-borne',
  stages: [{ kind: 'set-to-touch', fromS: 600, toS: 900 }],
  atC: 23,
  atRhPct: 50,
  airLimits: { lowC: 10, highC: null, lowRhPct: null, highRhPct: 75 },
  cementLimitC: null,
  energyKJPerMol: null,
  flammable: true,
  batch: '',
  expiresOn: null,
  source: null,
  standing: 'test value',
  archived: false,
};
