import { describe, expect, it } from 'vitest';
import { evennessText } from '../../../dashboard/evenness/evenness-text.ts';
import {
  checkDraft,
  emptyDraft,
  inUnitNow,
  nextPlace,
} from '../../../dashboard/setup/iron/evenness/spot-draft.ts';
import type { EvennessShown } from '../../../shared/messages/evenness.ts';
import { formatTemperatureDifference } from '../../../shared/units/temperature.ts';
import { ironEvenness } from '../web/support/measured-samples.ts';

const shown: EvennessShown = {
  by: 'typed',
  hottest: 'toe',
  coldest: 'heel',
  spreadK: 6,
  offByK: 2.5,
  lead: 'probe',
  overLeadK: 4,
  count: 3,
};
const labels: Readonly<Record<string, string>> = { 'a/1': 'front probe', 'a/2': 'back probe' };
const text = (of: EvennessShown) =>
  evennessText(
    of,
    (id) => labels[id] ?? id,
    (k) => formatTemperatureDifference(k, 'C'),
  );

describe('how evenly a plate is hot, in words', () => {
  it('by typed spots and by probes', () => {
    expect(text(shown)).toBe('By typed spots: the toe 6 °C hotter than the heel (±3 °C).');
    expect(text({ ...shown, by: 'probes', hottest: 'a/2', coldest: 'a/1' })).toBe(
      'Over whole cycles: back probe 6 °C hotter than front probe (±3 °C).',
    );
    expect(text({ ...shown, hottest: 'probe' })).toContain('the probe’s place 6 °C hotter than the heel');
  });

  it('no hotter spot is named where the difference may be none', () => {
    expect(text({ ...shown, spreadK: 2, offByK: 4 })).toBe(
      'By typed spots: no hotter spot to be told, within ±4 °C.',
    );
  });
});

describe('a spot as it is typed', () => {
  const draft = { ...emptyDraft('F'), reading: '302', offBy: '3,6' };

  it('is sent in degC and K, and stays the same in another unit', () => {
    const checked = checkDraft(draft, 'toe');
    if (checked.kind !== 'spot') return expect.unreachable();
    expect(checked.spot.readC).toBeCloseTo(150, 9);
    expect(checked.spot.thermometerK).toBeCloseTo(2, 9);
    expect(inUnitNow(draft, 'C')).toMatchObject({ unit: 'C', reading: '150', offBy: '2' });
  });

  it.each([
    [{ reading: 'warm' }, 'reading'],
    [{ reading: '900' }, 'reading'],
    [{ offBy: '' }, 'offBy'],
    [{ offBy: '0' }, 'offBy'],
    [{ offBy: '40' }, 'offBy'],
  ] as const)('that is wrong in %o is said at its field', (more, at) => {
    expect(checkDraft({ ...draft, ...more }, 'toe')).toMatchObject({ kind: 'wrong', at });
  });

  it('is for the place beside the probe first, then for those that nothing was typed for', () => {
    expect(nextPlace({ spots: [] })).toBe('probe');
    expect(nextPlace(ironEvenness)).toBe('probe');
    const [toe] = ironEvenness.spots;
    if (toe === undefined) return expect.unreachable();
    expect(nextPlace({ spots: [toe, { ...toe, place: 'probe' }] })).toBe('heel');
  });
});
