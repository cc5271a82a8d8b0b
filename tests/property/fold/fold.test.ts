import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { restingGuardBandK } from '../../../shared/thermometer/trust.ts';
import type { FoundEntry } from '../../../shared/watch/finding.ts';
import type { Entry } from '../../../shared/watch/input.ts';
import { replay } from '../../../shared/watch/replay.ts';
import type { WatchState } from '../../../shared/watch/state.ts';
import { resume } from '../../../shared/watch/watch.ts';
import { carried } from '../../unit/watch/support/settings.ts';
import { courses, first } from './inputs.ts';
import { foundBy, type Lived, live } from './live.ts';

/** The fold over arbitrary courses: samples with faults, links, marks, commands, settings, at arbitrary times. */

const begin = carried(first);
const from = (): WatchState => resume(begin, 0, 0);
const throughJson = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

const holds = (check: (lived: Lived, again: () => fc.GeneratorValue) => void, numRuns = 60): void => {
  fc.assert(
    fc.property(courses, fc.gen(), (course, again) => check(live(course, from()), () => again)),
    { numRuns },
  );
};

function replayed(entries: readonly Entry[], untilMs: number): FoundEntry[] {
  const found: FoundEntry[] = [];
  for (const step of replay(entries, untilMs)) found.push(...step.found);
  return found;
}

const carriedEntry = (state: WatchState): Entry => ({
  seq: state.seq,
  tMs: state.tMs,
  input: { kind: 'carried', carried: { ...begin, state } },
});

describe('replay', () => {
  test('of the stored inputs gives exactly the live findings, ticks and all', () => {
    const kinds = new Set<string>();
    holds((lived) => {
      const stored = throughJson(lived.taken.map((t) => t.entry));
      const start: Entry = { seq: 0, tMs: 0, input: { kind: 'carried', carried: begin } };
      const found = foundBy(lived);
      expect(replayed([start, ...stored], lived.untilMs)).toEqual(found);
      for (const { finding: f } of found)
        kinds.add(f.kind === 'alarm' ? `${f.alarm.kind} ${f.change}` : f.kind);
    }, 150);
    // Courses that find nothing would prove nothing.
    for (const kind of [
      'quality',
      'phase',
      'heat',
      'refused',
      'over-limit raised',
      'over-limit cleared',
      'no-reading raised',
      'no-reading acknowledged',
      'heading-for-limit raised',
      'not-recording raised',
      'visit',
      'long-on-area raised',
      'over-cement-limit raised',
      'wrong-order raised',
      'imbalance raised',
      'unattended raised',
      'left-alone raised',
    ])
      expect(kinds).toContain(kind);
  });

  test('of a recording that began in mid-watch gives exactly the live findings from there on', () => {
    holds((lived, again) => {
      const at = again()(fc.nat, { max: lived.taken.length });
      const state = at === 0 ? from() : lived.taken[at - 1]?.state;
      if (state === undefined) return;
      const later = lived.taken.slice(at);
      const stored = throughJson([carriedEntry(state), ...later.map((t) => t.entry)]);
      // What was found at the ticks between this input and the next is found by the replay too.
      expect(replayed(stored, lived.untilMs)).toEqual([...later.flatMap((t) => t.found), ...lived.last]);
    });
  });

  test('notices where an input is missing that ticks can’t account for', () => {
    holds((lived, again) => {
      if (lived.taken.length < 2) return;
      const gone = again()(fc.nat, { max: lived.taken.length - 2 });
      const entries = lived.taken.map((t) => t.entry).toSpliced(gone, 1);
      const start: Entry = { seq: 0, tMs: 0, input: { kind: 'carried', carried: begin } };
      expect(() => replayed([start, ...entries], lived.untilMs)).toThrow(RangeError);
    }, 60);
  });

  test('that does not begin with what was carried in is refused', () => {
    expect(() => replayed([{ seq: 1, tMs: 0, input: { kind: 'time' } }], 0)).toThrow(RangeError);
  });
});

describe('folding in parts', () => {
  test('the state through JSON between any two steps changes neither findings nor state', () => {
    fc.assert(
      fc.property(courses, (course) => {
        const whole = live(course, from());
        const parts = live(course, from(), throughJson);
        expect(foundBy(parts)).toEqual(foundBy(whole));
        expect(parts.state).toEqual(whole.state);
      }),
      { numRuns: 40 },
    );
  });

  test('extra looks at the clock change nothing', () => {
    fc.assert(
      fc.property(courses, fc.array(fc.nat({ max: 4000 })), (course, waits) => {
        const whole = live(course, from());
        // Each wait is taken back by an input that comes as much earlier.
        const looked = course.flatMap((step, i) => {
          const byMs = Math.min(waits[i] ?? 0, step.do === 'give' ? Math.max(0, step.waitMs) : 0);
          if (step.do !== 'give' || byMs === 0) return [step];
          return [
            { do: 'advance' as const, byMs },
            { ...step, waitMs: step.waitMs - byMs },
          ];
        });
        const again = live(looked, from());
        expect(foundBy(again)).toEqual(foundBy(whole));
        expect(again.state).toEqual(whole.state);
      }),
      { numRuns: 60 },
    );
  });
});

describe('state', () => {
  test('survives JSON unchanged: no NaN, no infinity, no undefined, no negative zero', () => {
    holds((lived) => {
      for (const { state } of [...lived.taken.filter((_, i) => i % 17 === 0), lived])
        expect(throughJson(state)).toEqual(state);
    });
  });

  test('findings survive it too', () => {
    holds((lived) => {
      const found = foundBy(lived);
      expect(throughJson(found)).toEqual(found);
    });
  });
});

describe('order', () => {
  test('time never decreases, whatever the clock says; numbers only grow', () => {
    holds((lived) => {
      let [seq, tMs] = [0, 0];
      for (const { entry, found } of lived.taken) {
        for (const f of [...found, entry]) {
          expect(f.tMs).toBeGreaterThanOrEqual(tMs);
          expect(f.seq).toBeGreaterThanOrEqual(seq);
          [seq, tMs] = [f.seq, f.tMs];
        }
      }
    });
  });
});

describe('alarms, whatever happens', () => {
  test('each that was raised is acknowledged, or stands at the end', () => {
    holds((lived) => {
      const owed = new Set<string>();
      for (const { finding: f } of foundBy(lived)) {
        if (f.kind !== 'alarm') continue;
        const key = `${f.alarm.kind}:${f.alarm.probe ?? ''}`;
        if (f.change === 'raised' || f.change === 're-alarmed') owed.add(key);
        if (f.change === 'acknowledged') owed.delete(key);
      }
      const standing = Object.values(lived.state.alarms).filter((a) => a.state !== 'normal');
      for (const key of owed) expect(standing.map((a) => `${a.kind}:${a.probe ?? ''}`)).toContain(key);
    });
  });

  test('what is shown as a plate temperature is a number that can be one', () => {
    holds((lived) => {
      for (const { state } of lived.taken) {
        for (const reading of Object.values(state.readings)) {
          if (reading.quality !== 'ok') continue;
          expect(reading.plateC).toBeGreaterThanOrEqual(-273.15);
          expect(reading.plateC).toBeLessThanOrEqual(1372);
          expect(reading.atMs).toBeLessThanOrEqual(state.tMs);
        }
      }
    });
  });

  test('no value at or over the limit is hidden behind a doubt', () => {
    holds((lived) => {
      for (const { entry, state } of lived.taken) {
        if (entry.input.kind !== 'sample' || state.settings === null) continue;
        const { probe, tC, faults } = entry.input.sample;
        const own = state.settings.probes.find((p) => p.id === probe);
        const reading = state.readings[probe];
        if (tC === null || faults.length > 0 || own?.unit !== 'degC' || reading === undefined) continue;
        const { fabricLimitC } = state.settings.schedule;
        const guardBandK = restingGuardBandK({ probe: own, iron: state.settings.iron }, fabricLimitC);
        if (tC < fabricLimitC - guardBandK || tC > 1372) continue;
        expect(reading).toMatchObject({ quality: 'ok', plateC: tC });
      }
    });
  });
});
