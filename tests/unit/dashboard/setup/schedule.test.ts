import { describe, expect, it } from 'vitest';
import { readFigure, readTemperature } from '../../../../dashboard/setup/fields/number.ts';
import { checkForm } from '../../../../dashboard/setup/schedule/check.ts';
import {
  formInUnit,
  formOf,
  type ScheduleForm,
  valuesOf,
  withNewStage,
  withoutStage,
  withStage,
  withStageMoved,
} from '../../../../dashboard/setup/schedule/form.ts';
import { differences, merge, placeKey, taking, textAt } from '../../../../dashboard/setup/schedule/merge.ts';
import {
  firstShrink,
  noShrink,
  withNewPoint,
  withPoint,
} from '../../../../dashboard/setup/schedule/shrink-form.ts';
import type { HeatSchedule } from '../../../../shared/heat/schedule.ts';
import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import { handbookShrink } from '../../../../shared/heat/work/shrink.ts';

const shipped = formOf(shippedSchedule, 'F');
const f = (text: string) => readTemperature(text, 'F');
const keys = (places: Parameters<typeof placeKey>[0][]): string[] => places.map(placeKey);
const changed = (before: ScheduleForm, after: ScheduleForm): string[] =>
  keys([...differences(before, after)]);

describe('the form of a schedule', () => {
  it('gives back exactly the values it was made from, whichever units it was looked at in', () => {
    const there = formInUnit(formInUnit(shipped, 'C'), 'F');
    expect(there).toEqual(shipped);
    expect(checkForm(formInUnit(shipped, 'C')).values).toEqual(valuesOf(shippedSchedule));
  });

  it('an empty cement limit is unset, manual and page together are a source', () => {
    expect(checkForm(shipped).values?.cementLimitC).toBeNull();
    const filled = { ...shipped, cementLimit: f('325'), manual: ' Manual ', page: '4' };
    expect(checkForm(filled).values).toMatchObject({ source: { manual: 'Manual', page: '4' } });
    expect(checkForm(filled).values?.cementLimitC).toBeCloseTo(162.78, 2);
  });

  it('stages are added with the band before, moved within the list, and removed', () => {
    const more = withNewStage(shipped, 'extra');
    expect(more.stages.at(-1)).toMatchObject({ id: 'extra', name: '', low: shipped.stages.at(-1)?.low });
    const first = withStageMoved(shipped, 'initial', -1);
    expect(first.stages.map((one) => one.id).slice(0, 2)).toEqual(['initial', 'tack']);
    expect(withStageMoved(first, 'initial', -1)).toEqual(first);
    expect(withoutStage(shipped, 'tape').stages).toHaveLength(4);
  });

  it.each<[string, ScheduleForm, string, RegExp]>([
    ['no name', { ...shipped, name: '  ' }, 'name', /name/],
    ['a long name', { ...shipped, name: 'x'.repeat(81) }, 'name', /At most 80 characters; this has 81/],
    ['a limit that is no number', { ...shipped, fabricLimit: f('hot') }, 'fabricLimit', /number in °F/],
    ['an empty limit', { ...shipped, fabricLimit: f('') }, 'fabricLimit', /number in °F/],
    ['a limit too hot', { ...shipped, fabricLimit: f('900') }, 'fabricLimit', /At most 752 °F/],
    ['a page without a manual', { ...shipped, page: '4' }, 'manual', /manual too/],
    ['a manual without a page', { ...shipped, manual: 'M' }, 'page', /page too/],
    [
      'low over high',
      withStage(shipped, 'tack', { low: f('270') }),
      'tack.low',
      /under high, which is 265 °F/,
    ],
    ['a target outside', withStage(shipped, 'tack', { target: f('200') }), 'tack.target', /235 °F to 265 °F/],
    [
      'a target over the limit',
      { ...shipped, fabricLimit: f('340') },
      'final.target',
      /not be over the fabric limit, which is 340 °F/,
    ],
  ])('%s is said beside the field', (_, form, key, sentence) => {
    const { values, errors } = checkForm(form);
    expect(values).toBeNull();
    expect(errors.get(key)).toMatch(sentence);
  });
});

describe('what a schedule may say and need not', () => {
  const told: HeatSchedule = {
    ...shippedSchedule,
    stages: shippedSchedule.stages.map((one) => (one.id === 'tack' ? { ...one, restLimitS: 7.5 } : one)),
    // Demo data.
    shrink: {
      points: [
        { plateC: 120, percent: 4 },
        { plateC: 150, percent: 8 },
        { plateC: 175, percent: 9.5 },
      ],
      standing: 'demo manual, page 12',
    },
  };
  const form = formOf(told, 'F');

  it('stays as it is when something else is changed, put back, or looked at in other units', () => {
    const { values } = checkForm({ ...formInUnit(formInUnit(form, 'C'), 'F'), fabric: 'another' });
    expect(values).toEqual({ ...valuesOf(told), fabric: 'another' });
    expect(valuesOf(told)).toMatchObject({ shrink: told.shrink, stages: told.stages });
    expect(Object.keys(checkForm(shipped).values ?? {})).not.toContain('shrink');
  });

  it('is merged like the rest, the shrink table as one place', () => {
    const mine = withStage(form, 'tack', { restLimit: readFigure('9', 's') });
    const theirs = { ...form, shrink: withPoint(form.shrink, 1, { percent: readFigure('8,5 %', '%') }) };
    expect(changed(form, mine)).toEqual(['tack.restLimit']);
    expect(changed(form, theirs)).toEqual(['shrink']);
    const merged = merge(form, mine, theirs);
    expect(merged.both).toEqual([]);
    const { values } = checkForm(merged.form);
    expect(values?.stages[0]).toMatchObject({ id: 'tack', restLimitS: 9 });
    expect(values?.shrink?.points[1]).toEqual({ plateC: 150, percent: 8.5 });
    expect(taking(mine, theirs, { field: 'shrink' }).shrink).toEqual(theirs.shrink);
    expect(textAt(form, { field: 'shrink' })).toBe(
      '248 °F: 4 %, 302 °F: 8 %, 347 °F: 9.5 %; demo manual, page 12',
    );
  });

  it('an empty rest limit is as usual, no points are the handbook’s', () => {
    const emptied = { ...withStage(form, 'tack', { restLimit: readFigure(' ', 's') }), shrink: noShrink };
    expect(checkForm(emptied).values).toEqual(valuesOf(shippedSchedule));
    expect(checkForm({ ...form, shrink: firstShrink('F') }).values?.shrink).toEqual(handbookShrink);
  });

  it.each<[string, ScheduleForm, string, RegExp]>([
    [
      'a rest limit too short',
      withStage(form, 'tack', { restLimit: readFigure('0', 's') }),
      'tack.restLimit',
      /from 0.5 s to 120 s/,
    ],
    [
      'a rest limit that is no number',
      withStage(form, 'tack', { restLimit: readFigure('long', 's') }),
      'tack.restLimit',
      /from 0.5 s to 120 s/,
    ],
    [
      'a temperature that does not rise',
      { ...form, shrink: withPoint(form.shrink, 1, { plate: f('248') }) },
      'shrink.1.plate',
      /must rise.*over 248 °F/,
    ],
    [
      'a shrinkage that falls',
      { ...form, shrink: withPoint(form.shrink, 2, { percent: readFigure('7', '%') }) },
      'shrink.2.percent',
      /must not fall.*8 % or more/,
    ],
    [
      'more than all of it',
      { ...form, shrink: withPoint(form.shrink, 2, { percent: readFigure('101', '%') }) },
      'shrink.2.percent',
      /from 0 % to 100 %/,
    ],
    ['a new point that is empty', { ...form, shrink: withNewPoint(form.shrink) }, 'shrink.3.plate', /number/],
  ])('%s is said beside the field', (_, wrong, key, sentence) => {
    const { values, errors } = checkForm(wrong);
    expect(values).toBeNull();
    expect(errors.get(key)).toMatch(sentence);
  });
});

describe('two people who change one schedule', () => {
  const mine = { ...shipped, fabricLimit: f('370') };

  it('changes in different places are put together', () => {
    const theirs = withStage({ ...shipped, manual: 'Manual', page: '4' }, 'final', { name: 'last shrink' });
    const merged = merge(shipped, mine, theirs);
    expect(merged.form).toEqual({ ...theirs, fabricLimit: mine.fabricLimit });
    expect(keys([...merged.theirs])).toEqual(['manual', 'page', 'final.name']);
    expect(merged.both).toEqual([]);
  });

  it('where both changed one place, mine stands until I take the other’s', () => {
    const theirs = { ...shipped, fabricLimit: f('360') };
    const merged = merge(shipped, mine, theirs);
    expect(merged.form.fabricLimit).toEqual(mine.fabricLimit);
    expect(keys([...merged.both])).toEqual(['fabricLimit']);
    const taken = taking(mine, theirs, { field: 'fabricLimit' });
    expect(merge(shipped, taken, theirs)).toMatchObject({ both: [], form: { fabricLimit: f('360') } });
  });

  it('alike changes are no conflict', () => {
    expect(merge(shipped, mine, { ...shipped, fabricLimit: f('370,0') }).both).toEqual([]);
  });

  it('stages that either added stay, those that one took out go, unless the other changed them', () => {
    const added = withNewStage(withStage(shipped, 'tack', { name: 'tacking' }), 'mine');
    const theirs = withoutStage(withoutStage(withNewStage(shipped, 'theirs'), 'tape'), 'tack');
    const ids = merge(shipped, added, theirs).form.stages.map((one) => one.id);
    expect(ids.toSorted()).toEqual(['final', 'initial', 'intermediate', 'mine', 'tack', 'theirs']);
  });

  it('a typed number that is none yet counts as changed', () => {
    expect(changed(shipped, { ...shipped, cementLimit: f('32x') })).toEqual(['cementLimit']);
    expect(changed(shipped, { ...shipped, fabricLimit: f('375.0') })).toEqual([]);
  });
});
