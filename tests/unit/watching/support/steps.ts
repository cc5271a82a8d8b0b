import type { Beginning } from '../../../../daemon/watching/recorder.ts';
import type { WatchStep } from '../../../../daemon/watching/watcher.ts';
import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import { unknownProbe } from '../../../../shared/thermometer/probe.ts';
import { emptySample } from '../../../../shared/thermometer/sample.ts';
import { USUAL_CONFIDENCE } from '../../../../shared/thermometer/uncertainty.ts';
import type { Carried, WatchSettings } from '../../../../shared/watch/input.ts';
import { initialWatch, type WatchState } from '../../../../shared/watch/state.ts';

/** Steps of a watch as a recorder sees them, made without a fold: what counts here is their order. */

const PROBE = 'board/1';

const ironSettings: WatchSettings = {
  iron: {
    id: 'iron-1',
    name: 'Iron 1',
    probes: [PROBE],
    scheduleId: 'shipped',
    confidence: USUAL_CONFIDENCE,
    simulated: false,
  },
  probes: [{ id: PROBE, label: 'probe 1', ...unknownProbe, calibration: null }],
  schedule: shippedSchedule,
};

const carriedInto = (state: WatchState | null, fromSession: string | null = null): Carried => ({
  settings: ironSettings,
  alarms: [],
  stageId: null,
  place: 'unknown',
  hot: false,
  fromSession,
  state,
});

export const stateAt = (seq: number): WatchState => initialWatch(seq, seq * 10);

/** A sample that gave `plateC`, with a finding at every third. */
export function sampleStep(seq: number, plateC = 100 + seq): WatchStep {
  const tMs = seq * 10;
  const reading = { probe: PROBE, quality: 'ok' as const, atMs: tMs, plateC };
  return {
    entry: { seq, tMs, input: { kind: 'sample', sample: { ...emptySample(PROBE), tC: plateC } } },
    found: seq % 3 === 0 ? [{ seq, tMs, finding: { kind: 'quality', probe: PROBE, quality: 'ok' } }] : [],
    before: stateAt(seq - 1),
    after: { ...stateAt(seq), readings: { [PROBE]: reading } },
  };
}

/** Time that went on without anything coming in or being found. */
export const tickStep = (seq: number): WatchStep => ({
  entry: null,
  found: [],
  before: stateAt(seq - 1),
  after: stateAt(seq),
});

export const beginningAt = (id: string, from: WatchState, fromSession: string | null = null): Beginning => ({
  head: {
    id,
    ironId: 'iron-1',
    ironName: 'Iron 1',
    simulated: false,
    foldVersion: 1,
    programVersion: '0.0.0',
    why: fromSession === null ? 'hot' : 'resumed',
    originUtcMs: 0,
    zone: 'UTC',
    firstSeq: from.seq,
    firstMs: from.tMs,
    fromSession,
  },
  carried: carriedInto(from, fromSession),
  from,
});
