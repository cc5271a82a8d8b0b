import { describe, expect, it } from 'vitest';
import { noMistakes, usualMistakes, workIrons } from '../../../../daemon/probe/simulated/worker/worker.ts';
import { checkedLevels } from '../../../simulated-work/motion-check.ts';
import { workerOf } from '../../../simulated-work/workers.ts';
import { Tally } from '../../../soak/contact/score.ts';
import { SpotTally } from '../../../soak/contact/spots.ts';
import { followContact, type IronFound } from '../../../soak/contact/study.ts';

/** A slice of the study in `tests/soak/contact.test.ts`, which says what it comes to over many hours and irons. */
const worker = workerOf(3, { mistakes: noMistakes, hours: 2, motion: true });
const correct = followContact(worker, 3, false);
const spotty = followContact({ ...worker, mistakes: { ...noMistakes, spotsPerHour: 12 } }, 3, false);
const forgetful = followContact({ ...worker, mistakes: usualMistakes }, 3, false);

const scoreOf = (found: typeof correct, way: 'byMotion' | 'inHand' | 'bySureSlope') => {
  const tally = new Tally();
  for (const iron of workIrons) tally.add(found[iron][way]);
  return tally.score();
};
const spotsOf = (found: typeof correct, way: keyof IronFound & `spots${string}`, limitS: number) => {
  const tally = new SpotTally(limitS);
  for (const iron of workIrons) tally.add(found[iron][way]);
  return tally.score();
};

describe('by motion, with the check done', () => {
  it('contact is told with precision and recall over 0.95, within a few seconds', () => {
    for (const found of [correct, spotty, forgetful]) {
      const score = scoreOf(found, 'byMotion');
      expect(score.spells).toBeGreaterThan(5);
      expect(score.precision).toBeGreaterThan(0.95);
      expect(score.recall).toBeGreaterThan(0.95);
      expect(score.latencyS[1]).toBeLessThanOrEqual(3);
    }
  });

  it('so is the iron in hand, whatever is marked', () => {
    for (const found of [correct, forgetful]) {
      expect(scoreOf(found, 'inHand').precision).toBeGreaterThan(0.95);
      expect(scoreOf(found, 'inHand').recall).toBeGreaterThan(0.95);
    }
  });
});

describe('the still/moving check', () => {
  it('is passed by a usual hand, and refused to one so slow and soft that its motion hardly shows', () => {
    const soft = { strokeCm: 30, strokeS: 8, turnS: 0.8, glideG: 0.012 };
    for (const iron of workIrons) {
      expect(checkedLevels(worker, iron, 3)).not.toBeNull();
      expect(checkedLevels({ ...worker, hand: soft }, iron, 3)).toBeNull();
    }
  });
});

describe('rest on one spot, by motion and marks', () => {
  it('is found each time, within two seconds', () => {
    const score = spotsOf(spotty, 'spotsByMarks', 5);
    expect(score.rests).toBeGreaterThan(3);
    expect(score.found).toBe(score.rests);
    expect(score.lateS[1]).toBeLessThanOrEqual(2);
  });

  it('is never told in correct work', () => {
    expect(spotsOf(correct, 'spotsByMarks', 5)).toMatchObject({ falseMoving: 0, falseParked: 0 });
  });

  it('by motion alone can’t be told from an iron on its rest', () => {
    expect(spotsOf(correct, 'spotsByMotion', 5).falseParked).toBeGreaterThan(1);
  });
});

describe('by the heat that the work draws', () => {
  it('contact can’t be trusted, even where every rest was learned from the truth', () => {
    const { precision, recall } = scoreOf(correct, 'bySureSlope');
    expect(Math.min(precision, recall)).toBeLessThan(0.95);
  });
});
