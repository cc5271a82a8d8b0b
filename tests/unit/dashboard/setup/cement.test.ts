import { describe, expect, it, test } from 'vitest';
import { isExpired } from '../../../../dashboard/cure/cements.ts';
import { calendarDay, isoDay } from '../../../../dashboard/parts/day.ts';
import { checkForm } from '../../../../dashboard/setup/cement/check.ts';
import { factsOf, learnedText } from '../../../../dashboard/setup/cement/facts-text.ts';
import {
  type CementForm,
  emptyForm,
  formInUnit,
  formOf,
  readDay,
  valuesOf,
} from '../../../../dashboard/setup/cement/form.ts';
import { differences, merge, placeTexts } from '../../../../dashboard/setup/cement/merge.ts';
import {
  countedIn,
  dryingTimeText,
  plainUnit,
  readTime,
  type StageTime,
} from '../../../../dashboard/setup/cement/times.ts';
import { readFigure, readTemperature } from '../../../../dashboard/setup/fields/number.ts';
import type { Cement, DryingStageKind } from '../../../../shared/cure/cement.ts';
import { demoCements, edgeCement, oldGlue, ribCement, ribLearned } from '../../../fixtures/cements.ts';

const rib = formOf(ribCement, 'F');
const f = (text: string) => readTemperature(text, 'F');
const percent = (text: string) => readFigure(text, '%');
const time = (from: string, to: string, unit: StageTime['in']): StageTime => ({
  from: readTime(from, unit),
  to: readTime(to, unit),
  in: unit,
});
const withTime = (form: CementForm, kind: DryingStageKind, stage: StageTime): CementForm => ({
  ...form,
  times: { ...form.times, [kind]: stage },
});
const errors = (form: CementForm) => Object.fromEntries(checkForm(form).errors);

describe('drying times', () => {
  test.each([
    [30 * 60, 45 * 60, '30 to 45 min'],
    [5400, 5400, '1.5 h'],
    [86_400, 86_400, '1 day'],
    [172_800, 259_200, '2 to 3 days'],
    [2700, 3600, '45 to 60 min'],
    [45, 45, '0.75 min'],
  ])('%d to %d s are told as %s', (fromS, toS, text) => {
    expect(dryingTimeText({ fromS, toS })).toBe(text);
  });

  it('are read with a decimal comma or point, and with their sign behind them', () => {
    expect(readTime('1,5', 'h').value).toBe(5400);
    expect(readTime('1.5 h', 'h').value).toBe(5400);
    expect(readTime('2 days', 'd').value).toBe(172_800);
    expect(readTime('30 to 45', 'min').value).toBeNull();
  });

  it('keep their texts when they are counted in another unit', () => {
    expect(countedIn(time('30', '', 'min'), 'h')).toEqual(time('30', '', 'h'));
    expect(plainUnit(100)).toBe('min');
  });
});

describe('the form of a cement', () => {
  test.each(demoCements.map((cement) => [cement.name, cement] as const))(
    '%s: gives back exactly its values, whichever units it was looked at in',
    (_, cement: Cement) => {
      const form = formOf(cement, 'F');
      expect(checkForm(form).values).toEqual(valuesOf(cement));
      expect(checkForm(formInUnit(form, 'C')).values).toEqual(valuesOf(cement));
      expect(formInUnit(formInUnit(form, 'C'), 'F')).toEqual(form);
    },
  );

  it('a stage that is left empty is not given, and one time is a range of no width', () => {
    const form = withTime(rib, 'ready-for-overlay', time('2', '', 'h'));
    expect(checkForm(form).values?.stages[2]).toEqual({
      kind: 'ready-for-overlay',
      fromS: 7200,
      toS: 7200,
    });
    const less = withTime(rib, 'cured', time('', '', 'd'));
    expect(checkForm(less).values?.stages.map(({ kind }) => kind)).toEqual([
      'set-to-touch',
      'ready-for-iron',
    ]);
  });

  it('an empty limit is not told, document and page together are a source', () => {
    const form = { ...rib, low: f(''), cementLimit: f(' '), manual: ' Sheet ', page: '4' };
    expect(checkForm(form).values).toMatchObject({
      airLimits: { lowC: null, highRhPct: 80 },
      cementLimitC: null,
      source: { manual: 'Sheet', page: '4' },
    });
    expect(checkForm({ ...rib, manual: '', page: '' }).values?.source).toBeNull();
  });

  it('the kind settles whether the vapour burns; where it does not, it is asked', () => {
    expect(checkForm({ ...rib, kind: 'solvent-borne' }).values?.flammable).toBe(true);
    expect(checkForm(formOf(edgeCement, 'F')).values?.flammable).toBe(true);
    const two = { ...rib, kind: 'two-part' } as const;
    expect(errors(two)).toEqual({ burns: 'Say whether its vapour burns.' });
    expect(checkForm({ ...two, burns: true }).values?.flammable).toBe(true);
  });

  it('the energy counts for kinds that go by it only', () => {
    const form = { ...formOf(edgeCement, 'F'), energy: readFigure('36,5 kJ/mol', 'kJ/mol') };
    expect(checkForm(form).values?.energyKJPerMol).toBe(36.5);
    expect(checkForm({ ...form, kind: 'water-borne' }).values?.energyKJPerMol).toBeNull();
    expect(errors({ ...form, energy: readFigure('3', 'kJ/mol') })['energy']).toMatch(/5 kJ\/mol to 200/);
  });
});

describe('what is wrong in a form is said beside its field', () => {
  it('an empty form says what is needed, and nothing else', () => {
    expect(Object.keys(errors(emptyForm('F'))).toSorted()).toEqual([
      'at',
      'atRh',
      'kind',
      'name',
      'set-to-touch.from',
    ]);
  });

  it.each([
    ['no number', time('soon', '', 'min'), 'ready-for-iron.from', /30 or 1,5/],
    ['the second time alone', time('', '2', 'h'), 'ready-for-iron.from', /one time alone/],
    ['a second time that is shorter', time('2', '1', 'h'), 'ready-for-iron.to', /not be shorter/],
    [
      'earlier than the stage before',
      time('20', '', 'min'),
      'ready-for-iron.from',
      /set to touch.*30 to 45 min/,
    ],
    ['a range that ends too early', time('40', '42', 'min'), 'ready-for-iron.from', /set to touch/],
  ])('%s', (_, stage, key, sentence) => {
    expect(errors(withTime(rib, 'ready-for-iron', stage))).toEqual({
      [key]: expect.stringMatching(sentence),
    });
  });

  it.each([
    ['humidity over 100', { atRh: percent('101') }, 'atRh', /0 % to 100 %/],
    ['saturated air for a water-borne one', { atRh: percent('100') }, 'atRh', /nothing dries/],
    [
      'dry air for one that cures by moisture',
      { kind: 'moisture-curing', burns: true, atRh: percent('0') },
      'atRh',
      /doesn’t cure/,
    ],
    ['an absurd temperature', { at: f('700') }, 'at', /from -22 to 140 °F/],
    ['no temperature', { at: f('warm') }, 'at', /Write a number in °F/],
    [
      'limits the wrong way round',
      { low: f('95'), high: f('60') },
      'low',
      /under the highest, which is 60 °F/,
    ],
    ['humidities the wrong way round', { lowRh: percent('80') }, 'lowRh', /which is 80 %/],
    ['a cement limit that no plate has', { cementLimit: f('900') }, 'cementLimit', /to 752 °F/],
    ['a day that there is not', { expires: '2027-02-30' }, 'expires', /2027-03-31/],
    ['a page without its document', { manual: '' }, 'manual', /Enter the document/],
    ['a name that is too long', { name: 'x'.repeat(81) }, 'name', /At most 80/],
  ] as const)('%s', (_, change, key, sentence) => {
    expect(errors({ ...rib, ...change })).toEqual({ [key]: expect.stringMatching(sentence) });
  });

  it('more than sixty days', () => {
    expect(errors(withTime(rib, 'cured', time('61', '', 'd')))).toEqual({
      'cured.from': 'Write a time such as 30 or 1,5; at most 60 days.',
    });
  });

  it('days are read with what people write between, and kept as they are', () => {
    expect(['2027-3-1', ' 2027/03/01 ', '2027.03.01'].map(readDay)).toEqual(Array(3).fill('2027-03-01'));
    expect(['1.3.2027', '2027-13-01', '2027', ''].map(readDay)).toEqual([null, null, null, null]);
  });
});

describe('two people change one cement', () => {
  const mine = { ...withTime(rib, 'cured', time('3', '4', 'd')), name: 'Mine', batch: 'D-200' };
  const theirs = { ...rib, name: 'Theirs', at: f('75'), archived: true };

  it('both changes are joined, mine where both changed the same, and each is told', () => {
    const { form, theirs: told, both } = merge(rib, mine, theirs);
    expect(form).toEqual({ ...mine, at: theirs.at, archived: true });
    expect(told).toEqual(['at', 'archived']);
    expect(both).toEqual(['name']);
    expect(placeTexts.taking(form, theirs, 'name').name).toBe('Theirs');
  });

  it('another unit of the same time, or another text of the same number, is no change', () => {
    const other = { ...withTime(rib, 'ready-for-iron', time('90', '', 'min')), atRh: percent('50,0') };
    expect(differences(rib, other)).toEqual([]);
  });

  it('places are told by name, with their units', () => {
    const tell = (place: Parameters<typeof placeTexts.key>[0]) =>
      `${placeTexts.name(place, mine)}: ${placeTexts.shown(mine, place)}`;
    expect(
      ['cured', 'ready-for-overlay', 'at', 'atRh', 'kind', 'archived', 'burns', 'energy'].map((one) =>
        tell(one as 'at'),
      ),
    ).toEqual([
      'cured: 3 to 4 days',
      'ready for an overlay: nothing',
      'Temperature: 73 °F',
      'Relative humidity: 50 %',
      'By what it dries: water-borne',
      'Put away: no',
      'Does its vapour burn?: nothing',
      'Energy: nothing',
    ]);
  });
});

describe('what is told of a cement', () => {
  const text = (cement: Cement, name: string) =>
    factsOf(cement, 'F').find((fact) => fact.name === name)?.text;

  it('its own limits, and general practice where it has none', () => {
    expect(text(ribCement, 'Air')).toBe('55 °F to 95 °F, humidity at most 80 %, by its instructions');
    expect(text(ribCement, 'Air, else')).toBeUndefined();
    const half = { ...ribCement, airLimits: { ...ribCement.airLimits, highC: null, highRhPct: null } };
    expect(text(half, 'Air')).toBe('at least 55 °F, by its instructions');
    expect(text(half, 'Air, else')).toMatch(/^at most 90 °F, humidity at most 85 %, by general/);
    expect(text(oldGlue, 'Air')).toMatch(
      /^45 °F to 90 °F, humidity at most 85 %, by general coating practice/,
    );
  });

  it('whether its vapour burns: by its kind, or only by what was entered', () => {
    expect(text(ribCement, 'Kind')).toBe('water-borne, its vapour doesn’t burn');
    expect(text(edgeCement, 'Kind')).toBe('solvent-borne, its vapour burns');
    expect(text(oldGlue, 'Kind')).toMatch(/by what was entered$/);
  });

  it('is past its day from the day after on', () => {
    expect(isExpired(ribCement, '2026-02-28')).toBe(false);
    expect(isExpired(ribCement, '2026-03-01')).toBe(true);
    expect(isExpired(ribCement, null)).toBe(false);
    expect(isExpired(edgeCement, '2036-03-01')).toBe(false);
    expect(isoDay(new Date(2026, 1, 3, 23, 59).getTime())).toBe('2026-02-03');
    expect(calendarDay('2026-02-28')).toMatch(/28/);
  });

  it('what was learned, to two figures', () => {
    expect(learnedText(ribLearned)).toBe(
      'Dries here in 0.8 of the instructions’ time (5 observations). Four times in five it lies between 0.66 and 0.98.',
    );
    expect(learnedText({ factor: 1.26, low: 0.9, high: 1.7, observations: 1 })).toMatch(
      /in 1.3 .*\(1 observation\)/,
    );
    expect(learnedText({ factor: 1.004, low: 0.9, high: 1.1, observations: 5 })).toBe(
      'Dries here in the time of the instructions (5 observations). Four times in five it takes between 0.9 and 1.1 of that.',
    );
    expect(learnedText(undefined)).toMatch(/Nothing learned/);
  });
});
