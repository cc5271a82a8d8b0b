import { describe, expect, it } from 'vitest';
import { byUse, lastUsed, readUsed } from '../../../../dashboard/coats/by-use.ts';
import {
  headline,
  ironTime,
  listText,
  lookOf,
  putOnText,
  stageText,
  tackyText,
  wetAreas,
  wetText,
  whyText,
} from '../../../../dashboard/coats/coat-text.ts';
import { clockWording } from '../../../../dashboard/parts/clock-time.ts';
import { shippedCements } from '../../../../shared/cure/shipped.ts';
import {
  cementList,
  coat,
  dryAll,
  drying,
  due,
  fourCoats,
  generic,
  inMin,
  mayBeReady,
  NOW_MS,
  solvent,
  stage,
  standsStill,
} from '../../../fixtures/coats.ts';
import { leftAileron } from '../../../fixtures/pieces.ts';

const at = clockWording('UTC');

describe('the line at the top of the bench', () => {
  it('names what may be ready, and what comes next with its range', () => {
    expect(headline(fourCoats, NOW_MS)).toEqual({
      now: 'May be ready, test it: Right flap, outer face, trailing edge (set to touch); Left aileron, upper side, rib tape 3 (ready for the iron).',
      next: 'Next: Left aileron, upper side, leading edge, ready for the iron in 20 to 45 min, likely 30.',
    });
  });

  it('says where nothing is to be tested, where the air lets nothing dry, and where all is done', () => {
    expect(headline([], NOW_MS)).toEqual({ now: 'No coat is drying.', next: '' });
    expect(headline([standsStill], NOW_MS)).toEqual({
      now: 'Nothing to test now.',
      next: 'Not drying in this air: Left aileron, lower side.',
    });
    expect(headline([dryAll], NOW_MS).now).toBe('Every coat is dry at every stage, you said.');
    expect(headline([dryAll, drying], NOW_MS).now).toBe('Nothing to test now.');
  });

  it('stays short, and counts no single one away', () => {
    expect(listText(['a', 'b', 'c', 'd'])).toBe('a; b; c; d');
    expect(listText(['a', 'b', 'c', 'd', 'e'])).toBe('a; b; c; 2 more');
  });
});

describe('a coat in words', () => {
  it('does not dry in this air only while it would dry otherwise', () => {
    expect(lookOf(standsStill)).toBe('stands');
    expect(lookOf(coat({ stands: true, state: 'due' }))).toBe('due');
    expect(lookOf(drying)).toBe('drying');
  });

  it('says why its range is wide, in two reasons at most', () => {
    expect(whyText(drying)).toBe(
      'So wide because the air was typed, not measured all along; little is known yet of how it dries here.',
    );
    expect(whyText(dryAll)).toBe('');
  });

  it('says what was put on and when, and no age where the daemon’s clock isn’t known', () => {
    expect(putOnText(drying, NOW_MS, at)).toBe('Generic water-borne, put on 13:08 (12 min ago)');
    expect(putOnText(drying, null, at)).toBe('Generic water-borne, put on 13:08');
    expect(putOnText(coat({ startedAt: inMin(-0.9) }), NOW_MS, at)).toBe(
      'Generic water-borne, put on 13:19 (just now)',
    );
    expect(putOnText(coat({ startedAt: inMin(-1) }), NOW_MS, at)).toMatch(/\(1 min ago\)$/);
  });

  it('has each stage with what was said of it', () => {
    const [touch, iron] = mayBeReady.stages;
    expect(touch && stageText(touch, NOW_MS, at)).toBe('dry, said 12:44');
    expect(iron && stageText(iron, NOW_MS, at)).toBe('any time now, in 14 min at the latest');
    expect(iron && tackyText(iron, NOW_MS, at)).toBe('still tacky, said 13:11');
    expect(touch && tackyText(touch, NOW_MS, at)).toBe('');
  });
});

describe('wet places on a piece', () => {
  it('are its areas, all of a side where the coat is on the whole of it, and no dry ones', () => {
    const wet = wetAreas([...fourCoats, dryAll], leftAileron);
    expect(wet.get('1-edge-r0c0')).toBe(drying);
    expect(wet.get('1-tape-r1c9')).toBe(mayBeReady);
    expect(wet.get('2-cloth-r1c7')).toBe(standsStill);
    expect(wet.has('1-edge-r1c19')).toBe(false);
    expect([...wet.values()]).not.toContain(due);
    expect(wet.size).toBe(2 + leftAileron.areas.filter(({ side }) => side === 2).length);
  });

  it('go by the coat that keeps an iron off for longest', () => {
    const soon = coat({ id: 'soon', stages: [stage('ready-for-iron', [1, 2, 3])] });
    const never = coat({ id: 'never', stages: [stage('ready-for-iron', null)] });
    for (const coats of [
      [soon, drying],
      [drying, soon],
    ])
      expect(wetAreas(coats, leftAileron).get('1-edge-r0c0')).toBe(drying);
    expect(wetAreas([never, drying], leftAileron).get('1-edge-r0c0')).toBe(never);
  });

  it('say when an iron may likely go over them, by the stage that decides that', () => {
    expect(ironTime(drying, NOW_MS, at)).toBe('13:50');
    expect(wetText(drying, NOW_MS, at)).toBe('wet cement, ready for the iron about 13:50');
    expect(wetText(standsStill, NOW_MS, at)).toBe('wet cement, not ready for the iron in this air');
    const overlay = coat({ stages: [stage('set-to-touch', [1, 2, 3]), stage('cured', [60, 70, 80])] });
    expect(wetText(overlay, NOW_MS, at)).toBe('wet cement, cured about 14:30');
  });

  it('tell no time for an iron where the instructions give none, and keep it off for longest', () => {
    const touchOnly = coat({ stages: [stage('set-to-touch', [1, 2, 3])] });
    expect(ironTime(touchOnly, NOW_MS, at)).toBe('');
    expect(wetText(touchOnly, NOW_MS, at)).toMatch(/^wet cement until you say .* give no time for an iron$/);
    expect(wetAreas([drying, touchOnly], leftAileron).get('1-edge-r0c0')).toBe(touchOnly);
  });
});

describe('cements to choose from', () => {
  const { cements } = cementList;
  const ids = (used: Readonly<Record<string, number>>, coats = fourCoats) =>
    byUse(cements, coats, used).map(({ id }) => id);

  it('begin with the one used last, as coats and this browser know it; one that was put away is not there', () => {
    expect(ids({})).toEqual([generic.id, solvent.id]);
    expect(ids({ [solvent.id]: NOW_MS })).toEqual([solvent.id, generic.id]);
    expect(ids({}, [])).toEqual([generic.id, solvent.id]);
    expect(ids({ [generic.id]: Date.parse(inMin(-300)) }, [mayBeReady])).toEqual([solvent.id, generic.id]);
  });

  it('stand as they were entered where none was used yet: of the examples the water-borne one first', () => {
    expect(byUse(shippedCements, [], {}).map(({ id }) => id)).toEqual(shippedCements.map(({ id }) => id));
    expect(byUse(shippedCements, [], {})[0]?.kind).toBe('water-borne');
  });

  it('are none used last where none was ever used', () => {
    expect(lastUsed(cements, [], {})).toBeNull();
    expect(lastUsed(cements, [mayBeReady], {})).toBe(solvent);
    expect(lastUsed([], [], { gone: 1 })).toBeNull();
  });

  it('are remembered as they were kept, and not at all where that can’t be read', () => {
    expect(readUsed('{"a":5}')).toEqual({ a: 5 });
    for (const text of [null, '', '{', '[]', '{"a":"b"}']) expect(readUsed(text)).toEqual({});
  });
});
