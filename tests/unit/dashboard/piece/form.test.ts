import { describe, expect, it } from 'vitest';
import {
  draftOf,
  errorsOf,
  formOf,
  isRight,
  newForm,
  oppositeName,
  readSizeCm,
  startingForm,
  withSides,
} from '../../../../dashboard/piece/edit/form.ts';
import { checkPiece } from '../../../../shared/piece/check.ts';
import { pieceDraftSchema } from '../../../../shared/piece/piece.ts';
import { leftAileron, wingPanel } from '../../../fixtures/pieces.ts';

describe('a new piece', () => {
  it('lacks nothing but a name', () => {
    const form = startingForm();
    expect(isRight(errorsOf(form))).toBe(false);
    const named = { ...form, name: ' Left flap ' };
    expect(isRight(errorsOf(named))).toBe(true);
    const draft = pieceDraftSchema.parse(draftOf(named));
    expect(draft).toMatchObject({ name: 'Left flap', sides: ['Upper side', 'Lower side'], lengthCm: null });
    expect(checkPiece(draft)).toEqual([]);
  });

  it('has a second side laid out as the first, and loses it with its areas', () => {
    const one = withSides(formOf(leftAileron), 1);
    expect(one.map.areas.every((area) => area.side === 1)).toBe(true);
    const two = withSides(one, 2);
    expect(two.map.areas).toHaveLength(2 * one.map.areas.length);
    expect(checkPiece(draftOf(two))).toEqual([]);
    expect(withSides(two, 2)).toBe(two);
  });
});

describe('the fields of a piece', () => {
  it('give back the piece that they were filled from', () => {
    for (const piece of [leftAileron, wingPanel]) {
      const { id: _id, version: _version, madeAt: _madeAt, ...draft } = piece;
      expect(draftOf(formOf(piece))).toEqual(draft);
    }
  });

  it('read a length in centimetres or inches, and say what is none', () => {
    expect(readSizeCm('')).toBeNull();
    expect(readSizeCm('180')).toBe(180);
    expect(readSizeCm('180,5 cm')).toBe(180.5);
    // The inch is 2.54 cm exactly (international yard and pound agreement, 1959).
    expect(readSizeCm('100 in')).toBeCloseTo(254, 9);
    expect(readSizeCm('10″')).toBeCloseTo(25.4, 9);
    for (const text of ['0', '2001', 'long', '-3', 'in', '1 2']) expect(readSizeCm(text)).toBeNaN();
    expect(errorsOf({ ...formOf(leftAileron), length: 'long' }).length).not.toBe('');
  });

  it('name what is missing or too long', () => {
    const form = { ...formOf(leftAileron), name: ' ', frame: 'x'.repeat(61), sides: ['', 'lower'] };
    const errors = errorsOf(form);
    expect([errors.name, errors.frame, errors.sides[0]].every((error) => error !== '')).toBe(true);
    expect(errors.sides[1]).toBe('');
  });
});

describe('a copy', () => {
  it('is a piece of its own, and not put away', () => {
    const copy = newForm({ ...leftAileron, archived: true });
    expect(copy).toMatchObject({ basedOn: 0, archived: false });
    expect(copy.id).not.toBe(leftAileron.id);
  });

  it('for the opposite hand is called by the other hand', () => {
    expect(oppositeName('Left aileron')).toBe('Right aileron');
    expect(oppositeName('Wing panel, right, outer bay')).toBe('Wing panel, left, outer bay');
    expect(oppositeName('Brightwork')).toBe('Brightwork (copy)');
    expect(oppositeName('x'.repeat(60))).toHaveLength(60);
  });
});
