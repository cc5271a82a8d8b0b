import type { ProbeCalibrations } from '../../../../shared/messages/calibration.ts';
import type { IronDial } from '../../../../shared/messages/dial.ts';
import type { IronEvenness } from '../../../../shared/messages/evenness.ts';
import type { ProbeLag } from '../../../../shared/messages/lag.ts';
import type { ProbeMotion } from '../../../../shared/messages/motion.ts';
import { iron, probe } from './samples.ts';

/** Invented measurements of probes and irons. */

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
