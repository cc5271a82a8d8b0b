import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AirPoint } from '../../../shared/cure/air.ts';
import { type Cement, instructedS } from '../../../shared/cure/cement.ts';
import { type CoatClock, coatClock } from '../../../shared/cure/clock.ts';
import { airCourse } from '../../../shared/cure/course.ts';
import { cured, curingOf, reachedMs } from '../../../shared/cure/curing.ts';
import { saturationPa, vapourPa } from '../../../shared/cure/humid-air.ts';
import { type DryCheck, learn } from '../../../shared/cure/learn.ts';
import {
  airPoints,
  between,
  cements,
  checks,
  forecasts,
  HOUR_MS,
  NOW_MS,
  observations,
} from './arbitraries.ts';

const numRuns = 500;
const nothing = learn([]);

/** A coat as it stands at a moment. */
function clockOf(asked: {
  readonly cement: Cement;
  readonly fromUtcMs: number;
  readonly points: readonly AirPoint[];
  readonly forecast?: Parameters<typeof airCourse>[0]['forecast'];
  readonly checks?: readonly DryCheck[];
  readonly learned?: ReturnType<typeof learn>;
  readonly nowUtcMs?: number;
  readonly clockLost?: boolean;
}): CoatClock {
  const { cement, points, forecast = [], nowUtcMs = NOW_MS } = asked;
  return coatClock({
    checks: [],
    learned: nothing,
    clockLost: false,
    ...asked,
    nowUtcMs,
    curing: curingOf(cement, airCourse({ points, forecast, nowUtcMs })),
  });
}

const starts = fc.integer({ min: NOW_MS - 3 * 24 * HOUR_MS, max: NOW_MS + 24 * HOUR_MS });
const states = ['drying', 'may-be-ready', 'due', 'dry'];
const stageIndex = ({ stage, stages }: CoatClock): number => stages.findIndex(({ kind }) => kind === stage);

describe('a coat’s clock', () => {
  it('is exact in the instructions’ own air, wherever the course is cut', () => {
    const cuts = fc.array(fc.integer({ min: 60_000, max: 14 * 60_000 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(cements(), cuts, (cement, gaps) => {
        let atUtcMs = NOW_MS - HOUR_MS;
        const points: AirPoint[] = [];
        while (atUtcMs < NOW_MS + 5 * 24 * HOUR_MS) {
          points.push({ airC: cement.atC, rhPct: cement.atRhPct, atUtcMs, how: 'probe' });
          atUtcMs += gaps[points.length % gaps.length] ?? 60_000;
        }
        const { stages } = clockOf({ cement, fromUtcMs: NOW_MS, points });
        for (const [i, { likelyMs }] of stages.entries()) {
          const stage = cement.stages[i];
          if (stage === undefined) return expect.unreachable();
          // To the millisecond that a moment is told in.
          expect(Math.abs((likelyMs ?? 0) - NOW_MS - instructedS(stage) * 1000)).toBeLessThanOrEqual(0.51);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('has its times in order, all of them numbers after its start, and is the same after JSON', () => {
    fc.assert(
      fc.property(
        cements(),
        starts,
        airPoints,
        forecasts,
        checks,
        observations,
        fc.boolean(),
        (cement, fromUtcMs, points, forecast, taps, seen, clockLost) => {
          const learned = learn(seen);
          const clock = clockOf({ cement, fromUtcMs, points, forecast, checks: taps, learned, clockLost });
          let before = fromUtcMs;
          for (const { earliestMs, likelyMs, latestMs } of clock.stages) {
            const told = [earliestMs, likelyMs, latestMs].filter((ms) => ms !== null);
            // What can't be seen comes after what can.
            expect([earliestMs, likelyMs, latestMs].slice(0, told.length)).toEqual(told);
            for (const ms of told) {
              expect(Number.isInteger(ms)).toBe(true);
              expect(ms).toBeGreaterThanOrEqual(fromUtcMs);
            }
            expect(told).toEqual([...told].sort((a, b) => a - b));
            if (earliestMs !== null) expect(earliestMs).toBeGreaterThanOrEqual(before);
            before = earliestMs ?? before;
          }
          expect(clock.why.length > 0).toBe(clock.state !== 'dry');
          expect(JSON.parse(JSON.stringify(clock))).toEqual(clock);
          expect(JSON.parse(JSON.stringify(learned))).toEqual(learned);
        },
      ),
      { numRuns },
    );
  });

  it('goes forward only, as time goes on and nobody says anything', () => {
    const later = fc.array(fc.integer({ min: 0, max: 20 * 24 * HOUR_MS }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(
        cements(),
        starts,
        airPoints,
        forecasts,
        checks,
        later,
        (cement, fromUtcMs, points, forecast, taps, afters) => {
          const said = taps.filter(({ atUtcMs }) => atUtcMs <= NOW_MS);
          let [come, wet] = [Number.NEGATIVE_INFINITY, true];
          for (const afterMs of [...afters].sort((a, b) => a - b)) {
            const nowUtcMs = NOW_MS + HOUR_MS + afterMs;
            const clock = clockOf({ cement, fromUtcMs, points, forecast, checks: said, nowUtcMs });
            // A later stage may be ready, or an earlier one overdue.
            const now = states.length * stageIndex(clock) + states.indexOf(clock.state);
            expect(now).toBeGreaterThanOrEqual(come);
            if (!wet) expect(clock.wet).toBe(false);
            [come, wet] = [now, clock.wet];
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('is asked about at no stage that was said dry, and at none while a later one may be ready', () => {
    fc.assert(
      fc.property(cements(), starts, airPoints, checks, (cement, fromUtcMs, points, taps) => {
        const clock = clockOf({ cement, fromUtcMs, points, checks: taps });
        const asked = clock.stages[stageIndex(clock)];
        expect(asked === undefined).toBe(clock.stages.every(({ saidDryMs }) => saidDryMs !== null));
        if (asked === undefined) return;
        expect(asked.saidDryMs).toBeNull();
        for (const { saidDryMs, likelyMs } of clock.stages.slice(stageIndex(clock) + 1))
          expect(saidDryMs === null && (likelyMs ?? Infinity) <= NOW_MS && !clock.wet).toBe(false);
      }),
      { numRuns },
    );
  });

  it('isn’t ready before the moment at which it was found tacky', () => {
    fc.assert(
      fc.property(cements(), starts, airPoints, checks, (cement, fromUtcMs, points, taps) => {
        const clock = clockOf({ cement, fromUtcMs, points, checks: taps });
        for (const { earliestMs, saidTackyMs } of clock.stages)
          if (saidTackyMs !== null && earliestMs !== null)
            expect(earliestMs).toBeGreaterThanOrEqual(saidTackyMs);
      }),
      { numRuns },
    );
  });
});

describe('the air', () => {
  it('that is told once more, the same, while it is believed, changes nothing', () => {
    fc.assert(
      fc.property(
        cements(),
        airPoints,
        fc.integer({ min: 0, max: 29 }),
        between(0, 1),
        (cement, points, i, part) => {
          const told = points.filter(({ how }) => how === 'probe').sort((a, b) => a.atUtcMs - b.atUtcMs);
          const point = told[i % Math.max(1, told.length)];
          const next = told[(i % Math.max(1, told.length)) + 1];
          if (point === undefined || next === undefined) return;
          // Between two that are near enough for the first to be believed until the second.
          const near = { ...next, atUtcMs: point.atUtcMs + 14 * 60_000 };
          const again = { ...point, atUtcMs: Math.round(point.atUtcMs + part * 13 * 60_000) };
          const [once, twice] = [
            [point, near],
            [point, again, near],
          ].map((course) => clockOf({ cement, fromUtcMs: point.atUtcMs, points: course }));
          for (const [k, stage] of (once?.stages ?? []).entries()) {
            const other = twice?.stages[k];
            // A sum in other portions may round to the other millisecond.
            for (const key of ['earliestMs', 'likelyMs', 'latestMs'] as const)
              expect(Math.abs((stage[key] ?? 0) - (other?.[key] ?? 0))).toBeLessThanOrEqual(1);
          }
        },
      ),
      { numRuns },
    );
  });

  it('in which it is saturated: a water-borne coat never dries', () => {
    fc.assert(
      fc.property(cements(['water-borne']), between(-30, 60), (cement, airC) => {
        const points = Array.from({ length: 200 }, (_, i) => ({
          airC,
          rhPct: 100,
          atUtcMs: NOW_MS - i * 10 * 60_000,
          how: 'probe' as const,
        }));
        const fromUtcMs = NOW_MS - 30 * HOUR_MS;
        const clock = clockOf({ cement, fromUtcMs, points });
        expect(clock).toMatchObject({ stands: true, wet: true, state: 'drying' });
        for (const { likelyMs, latestMs } of clock.stages) expect([likelyMs, latestMs]).toEqual([null, null]);
        const curing = curingOf(cement, airCourse({ points, forecast: [], nowUtcMs: NOW_MS }));
        expect(cured(curing, fromUtcMs, NOW_MS)).toEqual({ leastS: 0, likelyS: 0, mostS: 0 });
      }),
      { numRuns: 100 },
    );
  });

  it('that a heater warms makes no coat take longer', () => {
    fc.assert(
      fc.property(
        cements(['water-borne', 'solvent-borne', 'two-part']),
        between(-20, 40),
        between(5, 99),
        between(0, 20),
        (cement, airC, rhPct, heatedK) => {
          const heatedPct = (vapourPa({ airC, rhPct }) / saturationPa(airC + heatedK)) * 100;
          const cold = { airC, rhPct, atUtcMs: NOW_MS - HOUR_MS, how: 'probe' as const };
          const [without, withIt] = [
            [cold, { ...cold, atUtcMs: NOW_MS }],
            [cold, { ...cold, airC: airC + heatedK, rhPct: heatedPct, atUtcMs: NOW_MS }],
          ].map((points) => clockOf({ cement, fromUtcMs: NOW_MS - HOUR_MS, points }).stages);
          for (const [i, { likelyMs }] of (withIt ?? []).entries())
            expect(likelyMs ?? Infinity).toBeLessThanOrEqual((without?.[i]?.likelyMs ?? Infinity) + 1);
        },
      ),
      { numRuns },
    );
  });

  it('adds up: how far it comes is the sum over its parts, and reached when it is', () => {
    fc.assert(
      fc.property(cements(), airPoints, starts, between(0, 1), (cement, points, fromMs, part) => {
        const curing = curingOf(cement, airCourse({ points, forecast: [], nowUtcMs: NOW_MS }));
        const toMs = fromMs + 3 * 24 * HOUR_MS;
        const middleMs = Math.round(fromMs + part * (toMs - fromMs));
        const whole = cured(curing, fromMs, toMs).likelyS;
        const parts = cured(curing, fromMs, middleMs).likelyS + cured(curing, middleMs, toMs).likelyS;
        expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * Math.max(1, whole) + 1e-3);
        const ms = reachedMs(curing, fromMs, whole * part, 'likely');
        if (ms === null) return;
        const then = cured(curing, fromMs, ms).likelyS;
        const next = cured(curing, fromMs, ms + 1).likelyS - then;
        expect(Math.abs(then - whole * part)).toBeLessThanOrEqual(next + 1e-6 * Math.max(1, whole));
      }),
      { numRuns },
    );
  });
});
