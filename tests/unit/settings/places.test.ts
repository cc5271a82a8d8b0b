import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../daemon/refusal.ts';
import { withIron, withNewProbe, withoutIron } from '../../../daemon/settings/change.ts';
import { withPlace } from '../../../daemon/settings/places.ts';
import { firstSettings, type Settings, watchSettings } from '../../../daemon/settings/settings.ts';
import { type Seat, seatOf, watchedHow } from '../../../shared/thermometer/place.ts';

/** Two irons with a probe each, as they come by themselves. */
const seen = (): Settings => withNewProbe(withNewProbe(firstSettings, 'A/1', false), 'A/2', false);
const TOLD_AT = '2026-03-01T09:00:00.000Z';

/** How a probe serves the iron that it sits on. */
function seat(settings: Settings, probe: string): Seat | null {
  const iron = settings.irons.find((i) => i.probes.includes(probe));
  if (iron === undefined) return null;
  const watched = watchSettings(settings, iron, () => ({})).probes.find((p) => p.id === probe);
  return watched === undefined ? null : seatOf(watched, iron.id);
}

const moved = (settings: Settings, probe: string, to: string): Settings => {
  const before = settings.irons.find((i) => i.id === to);
  const probes = [...(before?.probes ?? []), probe];
  return withIron(settings, to, { name: before?.name ?? 'X', probes, scheduleId: 'shipped' }).settings;
};

function refusal(change: () => unknown): Refusal {
  try {
    change();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('it was not refused');
}

describe('where a probe is', () => {
  it('is on the plate of the iron that a new one gets, without a question', () => {
    expect(seat(seen(), 'A/1')).toBe('fitted');
  });

  it('has to be told once it was moved to another iron, of an old or a new one', () => {
    const both = moved(seen(), 'A/2', 'iron-1');
    expect(seat(both, 'A/2')).toBe('not-told');
    expect(seat(both, 'A/1')).toBe('fitted');
    expect(seat(moved(both, 'A/2', 'own'), 'A/2')).toBe('not-told');
  });

  it('is known again where it is put back', () => {
    const { settings } = withPlace(seen(), 'A/2', { kind: 'check-pad' }, TOLD_AT);
    const there = moved(settings, 'A/2', 'iron-1');
    expect(seat(there, 'A/2')).toBe('not-told');
    expect(seat(moved(there, 'A/2', 'iron-2'), 'A/2')).toBe('check-pad');
    expect(seat(moved(moved(seen(), 'A/2', 'iron-1'), 'A/2', 'iron-2'), 'A/2')).toBe('fitted');
  });

  it('is what was said last, with when', () => {
    const first = withPlace(moved(seen(), 'A/2', 'iron-1'), 'A/2', { kind: 'loose' }, TOLD_AT);
    const fitted = { kind: 'fitted', spot: 'heel', by: 'sprung' } as const;
    const { settings, place } = withPlace(first.settings, 'A/2', fitted, '2026-03-02T09:00:00.000Z');
    expect(place).toEqual({ probe: 'A/2', iron: 'iron-1', toldAt: '2026-03-02T09:00:00.000Z', is: fitted });
    expect(settings.places.filter((p) => p.probe === 'A/2')).toEqual([place]);
    expect(seat(settings, 'A/2')).toBe('fitted');
  });

  it('is refused of a probe that is not known, or that sits nowhere', () => {
    const is = { kind: 'check-pad' } as const;
    expect(refusal(() => withPlace(seen(), 'B/1', is, TOLD_AT)).because).toBe('unknown');
    const bare = { ...seen(), irons: [] };
    expect(refusal(() => withPlace(bare, 'A/1', is, TOLD_AT))).toMatchObject({ because: 'conflict' });
  });
});

describe('an iron without a probe', () => {
  const byHand = (): Settings =>
    withIron(seen(), 'hand', { name: 'By hand', probes: [], scheduleId: 'shipped' }).settings;

  it('is read by hand, is a real one, and stays when others lose their probes', () => {
    const after = moved(byHand(), 'A/2', 'iron-1');
    expect(after.irons.map((i) => i.id)).toEqual(['iron-1', 'hand']);
    expect(after.irons.at(-1)?.simulated).toBe(false);
    expect(watchedHow([], 'hand')).toBe('typed');
  });

  it('may get one, and then asks for its place', () => {
    const after = moved(byHand(), 'A/2', 'hand');
    expect(seat(after, 'A/2')).toBe('not-told');
    expect(after.irons.map((i) => i.id)).toEqual(['iron-1', 'hand']);
  });

  it('can be taken away; one with a probe can not', () => {
    expect(withoutIron(byHand(), 'hand').settings.irons.map((i) => i.id)).toEqual(['iron-1', 'iron-2']);
    expect(refusal(() => withoutIron(byHand(), 'iron-1'))).toMatchObject({ because: 'conflict' });
    expect(refusal(() => withoutIron(byHand(), 'none'))).toMatchObject({ because: 'unknown' });
  });
});
