import { describe, expect, it } from 'vitest';
import {
  noneChosen,
  placesOf,
  placesText,
  toggleArea,
  toggleSide,
} from '../../../../dashboard/coats/places.ts';
import { leftAileron, rightFlap } from '../../../fixtures/pieces.ts';

const area = (id: string) => {
  const found = leftAileron.areas.find((one) => one.id === id);
  if (found === undefined) throw new RangeError(id);
  return found;
};
const leading = area('1-edge-r0c0');
const root = area('1-edge-r1c0');
const lower = area('2-edge-r0c0');

describe('where cement was put on', () => {
  it('is as many areas as were tapped; a second tap takes one out', () => {
    const chosen = [root, leading, lower, lower].reduce(toggleArea, noneChosen);
    const places = placesOf(leftAileron, chosen);
    expect(places).toEqual([
      { side: 1, area: leading.id },
      { side: 1, area: root.id },
    ]);
    expect(placesText(leftAileron, places)).toBe('Left aileron, upper side: leading edge; root edge');
  });

  it('is the whole of a side, or areas of it, never both', () => {
    const areas = [leading, lower].reduce(toggleArea, noneChosen);
    const whole = toggleSide(areas, 1, leftAileron);
    expect(placesOf(leftAileron, whole)).toEqual([
      { side: 1, area: null },
      { side: 2, area: lower.id },
    ]);
    expect(placesText(leftAileron, placesOf(leftAileron, whole))).toBe(
      'Left aileron, upper side: the whole side and Left aileron, lower side: leading edge',
    );
    expect(placesOf(leftAileron, toggleArea(whole, root))).toEqual([
      { side: 1, area: root.id },
      { side: 2, area: lower.id },
    ]);
    expect(placesOf(leftAileron, toggleSide(toggleSide(noneChosen, 2, leftAileron), 2, leftAileron))).toEqual(
      [],
    );
  });

  it('is nothing that the piece’s map has not', () => {
    const chosen = toggleSide(toggleArea(noneChosen, { id: '1-edge-r9c9', side: 1 }), 2, leftAileron);
    expect(placesOf(rightFlap, chosen)).toEqual([]);
  });
});
