import { describe, expect, it } from 'vitest';
import {
  beginProcedure,
  dropPoint,
  goesOnWith,
  heardIn,
  keepPoint,
  outcomeOf,
  type Procedure,
  waitAt,
} from '../../../shared/calibration/procedure.ts';
import { isRefusal } from '../../../shared/calibration/refusals.ts';
import { WINDOW_S } from '../../../shared/calibration/steadiness.ts';

const madeWith = { thermocouple: 'K', unit: 'degC', iron: 'iron-1' } as const;
const takenAt = '2026-03-01T10:00:00Z';

function sound(answer: Procedure | object): Procedure {
  if (isRefusal(answer)) throw new Error(answer.reason);
  return answer as Procedure;
}

const held = (procedure: Procedure, readC: number, fromMs = 0): Procedure => {
  let now = procedure;
  for (let s = 0; s <= WINDOW_S + 1; s += 1) now = heardIn(now, fromMs + s * 1000, readC);
  return now;
};

const AFTER_MS = (WINDOW_S + 1) * 1000;
const contact = (plateC: number, nowMs = AFTER_MS) => ({
  facts: { kind: 'contact', plateC, stated: { k: 1, as: 'limits' } } as const,
  instrument: 'a',
  takenAt,
  nowMs,
});

describe('a procedure', () => {
  it('goes from begin to a correction, and survives JSON at each step', () => {
    let now = beginProcedure('fitted', madeWith);
    const step = (next: Procedure): void => {
      expect(JSON.parse(JSON.stringify(next))).toEqual(next);
      now = next;
    };
    step(sound(waitAt(now, 'contact')));
    step(held(now, 150));
    step(sound(keepPoint(now, contact(153))));
    expect(now).toMatchObject({ waiting: null, points: [{ readingC: 150, referenceC: 153 }] });
    expect(outcomeOf(now)).toMatchObject({ method: 'offset', b1K: 3 });
    expect(dropPoint(now, 1)).toBeNull();
    step(dropPoint(now, 0) ?? expect.unreachable());
    expect(outcomeOf(now)).toEqual({ reason: 'no-points' });
  });

  it('takes no reading between points, and none into a point that came before the waiting', () => {
    const idle = beginProcedure('loose', madeWith);
    expect(heardIn(idle, 0, 20)).toBe(idle);
    const again = sound(waitAt(held(sound(waitAt(idle, 'ice')), 0), 'ice'));
    expect(keepPoint(again, { ...contact(0), facts: { kind: 'ice' } })).toMatchObject({
      reason: 'few-readings',
      readings: 0,
    });
  });

  it('names a point by the place that it would have had', () => {
    const one = sound(
      keepPoint(held(sound(waitAt(beginProcedure('fitted', madeWith), 'contact')), 150), contact(153)),
    );
    const two = held(sound(waitAt(one, 'contact')), 100);
    expect(keepPoint(two, contact(180))).toMatchObject({ reason: 'correction-too-large', point: 1 });
    expect(keepPoint(two, contact(103, AFTER_MS + 60_000))).toMatchObject({
      reason: 'few-readings',
      point: 1,
    });
  });

  it('of a loose probe doesn’t mind which iron it hangs beside; of a fitted one it does', () => {
    const elsewhere = { ...madeWith, iron: 'iron-2' };
    expect(goesOnWith(beginProcedure('loose', madeWith), elsewhere)).toBe(true);
    expect(goesOnWith(beginProcedure('fitted', madeWith), elsewhere)).toBe(false);
    expect(goesOnWith(beginProcedure('loose', madeWith), { ...madeWith, unit: 'degF' })).toBe(false);
  });
});
