import { describe, expect, it } from 'vitest';
import type { Doing } from '../../../../daemon/probe/simulated/worker/doing.ts';
import { doingAt, planWork, type WorkPlan } from '../../../../daemon/probe/simulated/worker/plan.ts';
import {
  type Mistakes,
  noMistakes,
  usualMistakes,
  type WorkIronId,
  workIrons,
} from '../../../../daemon/probe/simulated/worker/worker.ts';
import { workActSchema } from '../../../../shared/messages/piece.ts';
import { workerOf } from '../../../simulated-work/workers.ts';

const HOURS = 6;
const workers = [1, 2, 3].map((seed) => workerOf(seed, { mistakes: noMistakes, hours: HOURS }));
const plansOf = (mistakes: Mistakes): readonly WorkPlan[] =>
  workers.map((worker, seed) => planWork({ ...worker, mistakes }, seed));
const correct = plansOf(noMistakes);
const mistaken = plansOf(usualMistakes);

interface Span extends Doing {
  readonly iron: WorkIronId;
  readonly toS: number;
}
const spansOf = (plan: WorkPlan): readonly Span[] =>
  workIrons.flatMap((iron) =>
    plan.doings[iron].map((d, i) => ({ ...d, iron, toS: plan.doings[iron][i + 1]?.atS ?? plan.lengthS })),
  );
const spots = (plan: WorkPlan): readonly Span[] =>
  spansOf(plan).filter((s) => s.place === 'on-work' && s.still);

describe('simulated work', () => {
  it('is the same for the same worker and seed, and another for another seed', () => {
    const [worker] = workers;
    if (worker === undefined) return expect.unreachable();
    expect(planWork(worker, 0)).toEqual(correct[0]);
    expect(planWork(worker, 9)).not.toEqual(correct[0]);
    expect(JSON.parse(JSON.stringify(correct[0]))).toEqual(correct[0]);
  });

  it('has one iron in hand at most, whatever goes wrong', () => {
    let twice = 0;
    for (const plan of [...correct, ...mistaken])
      for (let tS = 0; tS < plan.lengthS; tS += 0.7) {
        const inHand = workIrons.filter((i) => (doingAt(plan, i, tS)?.place ?? 'on-rest') !== 'on-rest');
        if (inHand.length > 1) twice++;
      }
    expect(twice).toBe(0);
  });

  it('goes on in order of time, and is on an area of the piece whenever it is on the work', () => {
    for (const plan of [...correct, ...mistaken])
      for (const span of spansOf(plan)) {
        expect(span.toS).toBeGreaterThanOrEqual(Math.min(span.atS, plan.lengthS));
        const area = workers[0]?.pieces
          .find((p) => p.id === span.spot?.piece)
          ?.areas.find((a) => a.id === span.spot?.area && a.side === span.spot.side);
        expect(area !== undefined).toBe(span.place === 'on-work');
        if (area !== undefined) expect(area.kind === 'cloth').toBe(span.iron === 'big');
      }
  });

  it('works with both irons on both sides of each piece, at each stage', () => {
    for (const plan of correct) {
      const been = spansOf(plan).flatMap(({ spot, iron }) =>
        spot === null ? [] : [`${spot.piece} ${spot.side} ${iron}`],
      );
      expect(new Set(been).size).toBe(8);
      const stages = plan.said.flatMap(({ act }) => (act.kind === 'stage' ? [act.stageId] : []));
      expect(new Set(stages).size).toBe(5);
    }
  });

  it('says what the contract has, in order of time', () => {
    for (const plan of [...correct, ...mistaken]) {
      for (const [i, { act, atS }] of plan.said.entries()) {
        expect(atS).toBeGreaterThanOrEqual(plan.said[i - 1]?.atS ?? 0);
        if (act.kind !== 'stage') expect(workActSchema.safeParse(act).success).toBe(true);
      }
      const kinds = new Set(plan.said.map(({ act }) => act.kind));
      for (const kind of ['piece', 'area', 'turned', 'lap-done', 'in-hand', 'on-rest'] as const)
        expect(kinds).toContain(kind);
    }
  });
});

describe('correct work', () => {
  it('never rests on one spot: it hesitates for a second and a half at most', () => {
    for (const plan of correct) {
      expect(spots(plan).length).toBeGreaterThan(0);
      for (const { atS, toS } of spots(plan)) expect(toS - atS).toBeLessThanOrEqual(1.5 + 1e-6);
    }
  });

  it('says each time that the iron was parked, within four seconds', () => {
    for (const plan of correct) {
      const said = plan.said.filter(({ act }) => act.kind === 'on-rest');
      for (const { place, atS, toS, iron, dialC } of spansOf(plan)) {
        const before = doingAt(plan, iron, atS - 1e-6);
        if (place !== 'on-rest' || before?.place === 'on-rest' || before === null || toS > plan.lengthS - 5)
          continue;
        expect(dialC).not.toBeNull();
        expect(said.some((s) => s.iron === iron && s.atS >= atS && s.atS <= atS + 4)).toBe(true);
      }
    }
  });

  it('names the area that it is on', () => {
    for (const plan of correct)
      for (const { act, iron, atS } of plan.said) {
        if (act.kind !== 'area') continue;
        // It may have been lifted again by then, but goes on with that area.
        const near = plan.doings[iron].filter((d) => d.spot !== null && Math.abs(d.atS - atS) < 30);
        expect(near.map((d) => d.spot?.area)).toContain(act.area);
      }
  });

  it('leaves nobody away from a hot iron', () => {
    for (const plan of correct) expect(plan.person.map((p) => p.is)).not.toContain('away');
  });
});

describe('work with mistakes', () => {
  it('rests on one spot about as often as it is set, for as long as it is set', () => {
    const long = mistaken.flatMap(spots).filter(({ atS, toS }) => toS - atS > 1.6);
    const contactS = mistaken
      .flatMap(spansOf)
      .filter((s) => s.place === 'on-work')
      .reduce((sum, s) => sum + s.toS - s.atS, 0);
    const perHour = (3600 * long.length) / contactS;
    expect(perHour).toBeGreaterThan(2);
    expect(perHour).toBeLessThan(12);
    for (const { atS, toS, draws } of long) {
      expect(toS - atS).toBeGreaterThanOrEqual(5);
      expect(toS - atS).toBeLessThanOrEqual(40);
      expect(draws).toBeLessThan(0.5);
    }
  });

  it('forgets marks, undoes some wrong ones, and walks away', () => {
    const parked = (plan: WorkPlan): number => plan.said.filter(({ act }) => act.kind === 'on-rest').length;
    const parks = (plan: WorkPlan): number =>
      spansOf(plan).filter(
        (s) => s.place === 'on-rest' && doingAt(plan, s.iron, s.atS - 1e-6)?.place === 'lifted',
      ).length;
    const sum = (of: (plan: WorkPlan) => number): number =>
      mistaken.reduce((total, plan) => total + of(plan), 0);
    expect(sum(parked) / sum(parks)).toBeGreaterThan(0.75);
    expect(sum(parked) / sum(parks)).toBeLessThan(0.93);
    expect(mistaken.flatMap((p) => p.said).some(({ act }) => act.kind === 'undo')).toBe(true);
    expect(mistaken.flatMap((p) => p.person).some(({ is }) => is === 'away')).toBe(true);
  });
});
