import * as fc from 'fast-check';
import { alarmKinds } from '../../../shared/alarm/record.ts';
import { places } from '../../../shared/iron/place.ts';
import {
  emptySample,
  type ProbeId,
  type Sample,
  type WireFault,
} from '../../../shared/thermometer/sample.ts';
import { atSaids, type Mark, type WatchInput, type WatchSettings } from '../../../shared/watch/input.ts';
import { at } from '../../unit/watch/support/places.ts';
import { probeSettings, watchSettings } from '../../unit/watch/support/settings.ts';

/** Arbitrary courses of a watch: what comes in, when, and how far time is let go on between. */

const ONE = 'board/1';
const TWO = 'board/2';
const OTHER = 'other/1';
const probes: readonly ProbeId[] = [ONE, ONE, ONE, TWO, OTHER];

export const first: WatchSettings = {
  ...watchSettings([probeSettings(ONE), probeSettings(TWO)], { cementLimitC: 110 }),
  // The shortest that can be settled: courses are minutes long.
  unattended: { reminderMin: 1, alarmMin: 2 },
};
function probeIn(probe: ProbeId, iron: string, kind: 'check-pad' | 'loose'): WatchSettings['probes'][number] {
  return probeSettings(probe, { place: { probe, iron, toldAt: null, is: { kind } } });
}

const variants: readonly WatchSettings[] = [
  first,
  watchSettings([probeSettings(ONE)]),
  watchSettings([probeSettings(ONE), probeSettings(OTHER)]),
  watchSettings([probeSettings(ONE, { unit: 'degF' }), probeSettings(TWO, { mountingK: 8 })]),
  watchSettings(first.probes, { fabricLimitC: 140 }),
  {
    ...first,
    drift: { sinceAt: '2026-03-01T08:00:00Z', byK: -6, stretches: 3, sigmaK: 1.5, sigmaFrom: 'floor' },
  },
  watchSettings(first.probes, { stages: first.schedule.stages.slice(2) }),
  { ...first, iron: { ...first.iron, probes: [TWO] } },
  watchSettings([probeIn(ONE, 'iron', 'check-pad'), probeSettings(TWO)]),
  watchSettings([probeIn(ONE, 'iron', 'check-pad')]),
  watchSettings([probeIn(ONE, 'another', 'check-pad'), probeIn(TWO, 'iron', 'loose')]),
  watchSettings([]),
];

export type Course =
  /** Let time go on by so much without an input. */
  | { readonly do: 'advance'; readonly byMs: number }
  /** Give one input so much later; a negative wait is a clock that was read late. */
  | { readonly do: 'give'; readonly waitMs: number; readonly input: WatchInput }
  /** A run of samples. */
  | { readonly do: 'read'; readonly run: Run };

export interface Run {
  readonly probe: ProbeId;
  readonly count: number;
  readonly everyMs: number;
  readonly fromC: number;
  readonly kPerS: number;
  /** A step of the probe's numbers, K; 0: none. */
  readonly stepK: number;
  readonly deviceMs: number | null;
}

const faults = fc.subarray<WireFault>(
  ['open', 'short-to-ground', 'short-to-supply', 'cold-junction', 'not-a-number'],
  {
    maxLength: 2,
  },
);
const odd = fc.record({
  tC: fc.oneof(fc.constant(null), fc.double({ min: -400, max: 2000, noNaN: true }), fc.constant(-0)),
  emfUv: fc.option(fc.double({ min: -1e5, max: 1e5, noNaN: true })),
  coldJunctionC: fc.option(fc.double({ min: -80, max: 200, noNaN: true })),
  deviceMs: fc.option(fc.integer({ min: 0, max: 2 ** 32 - 1 })),
  button: fc.constantFrom<1 | 2 | null>(null, null, 1, 2),
  faults: fc.oneof(fc.constant<readonly WireFault[]>([]), faults),
});
const oddSample = fc.tuple(fc.constantFrom(...probes), odd).map(
  ([probe, more]): Sample => ({
    ...emptySample(probe),
    ...more,
  }),
);

const atMark: fc.Arbitrary<Extract<Mark, { kind: 'at' }>> = fc.record({
  kind: fc.constant('at' as const),
  said: fc.constantFrom(...atSaids),
  at: fc.oneof(
    fc.constant(null),
    fc
      .record({
        area: fc.constantFrom(null, 'end', 'middle', 'edge'),
        side: fc.constantFrom(1 as const, 2 as const),
        presumed: fc.boolean(),
        limitMs: fc.constantFrom(null, 4000),
      })
      .map(({ area, ...more }) => at(area, { ...more, bonded: area === 'edge' })),
  ),
});
const placeMark = fc.record({
  kind: fc.constant('place' as const),
  place: fc.constantFrom(...places),
});
/** Marks of where the iron is, which `undo` takes back. */
export const undoable: fc.Arbitrary<Mark> = fc.oneof(placeMark, atMark);
const mark: fc.Arbitrary<Mark> = fc.oneof(
  fc.record({
    kind: fc.constant('stage' as const),
    stageId: fc.constantFrom('tack', 'initial', 'intermediate', 'final', 'none', null),
  }),
  placeMark,
  fc.record({ kind: fc.constant('dial' as const), mark: fc.constantFrom(null, 3, 4.5, 'wool') }),
  fc.record({ kind: fc.constant('typed' as const), plateC: fc.integer({ min: 0, max: 400 }) }),
  fc.record({ kind: fc.constant('note' as const), text: fc.string() }),
  atMark,
  fc.constantFrom<Mark>({ kind: 'lap-done' }, { kind: 'undo' }),
);
const alarm = fc.record({
  // The kind that courses raise most is asked for most: any of the many would seldom be one that stands.
  kind: fc.oneof(fc.constantFrom(...alarmKinds), fc.constant('no-reading' as const)),
  probe: fc.constantFrom(ONE, ONE, TWO, null),
});
const device = fc.constantFrom('board', 'board', 'other');
const commandId = fc.uuid();
const pieceFacts: fc.Arbitrary<WatchInput> = fc
  .record({
    capC: fc.constantFrom(null, 60, 140),
    imbalance: fc.constantFrom('', 'Upper has had more than Lower.'),
  })
  .map((facts) => ({ kind: 'piece-facts', facts }));
const coatFacts: fc.Arbitrary<WatchInput> = fc
  .record({
    wet: fc.constantFrom('', 'Upper, edge: demo cement'),
    near: fc.constantFrom('', 'Upper, tape: demo cement'),
    limitC: fc.constantFrom(null, 120),
    fire: fc.constantFrom('', 'Upper, edge: demo cement'),
  })
  .map((facts) => ({ kind: 'coat-facts', facts }));
const input: fc.Arbitrary<WatchInput> = fc.oneof(
  { weight: 4, arbitrary: oddSample.map((sample) => ({ kind: 'sample' as const, sample })) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('mark' as const), commandId, mark }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('acknowledge' as const), commandId, alarm }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('silence' as const),
      commandId,
      alarm,
      forMs: fc.integer({ min: 1, max: 600_000 }),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('device' as const),
      device,
      link: fc.constantFrom('connected' as const, 'connected' as const, 'starting' as const, 'lost' as const),
      detail: fc.string(),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('rejected' as const), device, count: fc.nat() }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...variants).map((settings) => ({ kind: 'settings' as const, settings })),
  },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('keeping' as const), kept: fc.boolean(), detail: fc.string() }),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom<WatchInput>(
      { kind: 'time' },
      { kind: 'clock', change: 'suspend', byMs: 5000 },
      { kind: 'start', commandId: null, why: 'hot' },
      { kind: 'stop', commandId: 'c', why: 'by-hand' },
      { kind: 'presence' },
    ),
  },
  { weight: 1, arbitrary: pieceFacts },
  { weight: 1, arbitrary: coatFacts },
);

const run: fc.Arbitrary<Run> = fc.record({
  probe: fc.constantFrom(...probes),
  count: fc.integer({ min: 1, max: 250 }),
  everyMs: fc.constantFrom(50, 100, 250, 1000, 1600),
  fromC: fc.integer({ min: 15, max: 200 }),
  kPerS: fc.constantFrom(0, 0.05, -0.1, 0.8, -0.4, 2, -3),
  stepK: fc.constantFrom(0, 0.25, 1),
  deviceMs: fc.option(fc.integer({ min: 0, max: 2 ** 32 - 1 })),
});

/** A place that is marked, and how the plate reads while it is there: what courses of single inputs seldom come to. */
const ironed: fc.Arbitrary<readonly Course[]> = fc
  .record({ mark: atMark, commandId, pieceFacts, run, fromC: fc.integer({ min: 100, max: 180 }) })
  .map(({ mark, commandId, pieceFacts, run, fromC }) => [
    { do: 'give', waitMs: 0, input: pieceFacts },
    { do: 'give', waitMs: 0, input: { kind: 'mark', commandId, mark } },
    { do: 'read', run: { ...run, fromC, probe: ONE, kPerS: 0.05 } },
  ]);

export const courses: fc.Arbitrary<Course[]> = fc
  .array(
    fc.oneof(
      { weight: 3, arbitrary: run.map((run): Course[] => [{ do: 'read', run }]) },
      { weight: 1, arbitrary: ironed },
      {
        weight: 4,
        arbitrary: fc
          .record({ waitMs: fc.integer({ min: -2000, max: 4000 }), input })
          .map((given): Course[] => [{ do: 'give', ...given }]),
      },
      {
        weight: 1,
        arbitrary: fc.integer({ min: 0, max: 200_000 }).map((byMs): Course[] => [{ do: 'advance', byMs }]),
      },
    ),
    { minLength: 1, maxLength: 40 },
  )
  .map((steps) => steps.flat());

/** The samples of a run, each with the wait before it. */
export const samplesOf = (r: Run): readonly { readonly waitMs: number; readonly sample: Sample }[] =>
  Array.from({ length: r.count }, (_, i) => {
    const exactC = r.fromC + (r.kPerS * i * r.everyMs) / 1000;
    const tC = r.stepK === 0 ? exactC : Math.round(exactC / r.stepK) * r.stepK;
    const deviceMs = r.deviceMs === null ? null : (r.deviceMs + i * r.everyMs) % 2 ** 32;
    return { waitMs: r.everyMs, sample: { ...emptySample(r.probe), tC, deviceMs } };
  });
