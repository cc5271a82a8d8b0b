import { describe, expect, it } from 'vitest';
import { SteppedClock } from '../../../daemon/clock.ts';
import { simulatedSource } from '../../../daemon/probe/simulated/source.ts';
import { Refusal } from '../../../daemon/refusal.ts';
import { withIron, withNewProbe, withProbe, withSchedule } from '../../../daemon/settings/change.ts';
import {
  currentSchedules,
  firstSettings,
  type Settings,
  watchSettings,
} from '../../../daemon/settings/settings.ts';
import { shippedSchedule } from '../../../shared/heat/shipped.ts';

const MADE_AT = '2026-03-01T10:00:00Z';

function refusal(act: () => unknown): Refusal {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('it was not refused');
}

/** Two boards that have been seen, each with its probe on an iron of its own. */
const seen = (): Settings => withNewProbe(withNewProbe(firstSettings, 'A/1', false), 'B/1', false);

const { id: _, version: __, madeAt: ___, ...draft } = shippedSchedule;

describe('a probe that is met', () => {
  it('gets an iron of its own, on the first schedule', () => {
    const settings = seen();
    expect(settings.probes.map((p) => p.id)).toEqual(['A/1', 'B/1']);
    expect(settings.irons).toEqual([
      {
        id: 'iron-1',
        name: 'Iron 1',
        probes: ['A/1'],
        scheduleId: 'shipped',
        confidence: 0.95,
        simulated: false,
      },
      {
        id: 'iron-2',
        name: 'Iron 2',
        probes: ['B/1'],
        scheduleId: 'shipped',
        confidence: 0.95,
        simulated: false,
      },
    ]);
  });

  it('is called by its own name, also where its device is a path', () => {
    expect(withNewProbe(firstSettings, '/dev/ttyUSB0/tip', false).probes[0]?.label).toBe('probe tip');
  });

  it('keeps what was settled about it, where it had been taken off its iron', () => {
    const labelled = withProbe(seen(), 'A/1', {
      label: 'tip',
      thermocouple: 'J',
      unit: 'degF',
      mountingK: 1,
    }).settings;
    // The iron keeps to the other probe only: the first one sits nowhere.
    const bare = withIron(labelled, 'iron-1', {
      name: 'Small',
      probes: ['B/1'],
      scheduleId: 'shipped',
    }).settings;
    expect(bare.irons.flatMap((i) => i.probes)).toEqual(['B/1']);
    const again = withNewProbe(bare, 'A/1', false);
    expect(again.probes).toHaveLength(2);
    expect(again.probes.find((p) => p.id === 'A/1')).toMatchObject({ label: 'tip', thermocouple: 'J' });
    expect(again.irons.map((i) => i.probes)).toEqual([['B/1'], ['A/1']]);
  });
});

describe('an iron', () => {
  it('that takes a probe takes it off the iron it sat on, and one left without probes goes', () => {
    const { settings, iron } = withIron(seen(), 'iron-1', {
      name: 'Big',
      probes: ['A/1', 'B/1'],
      scheduleId: 'shipped',
    });
    expect(iron).toMatchObject({ id: 'iron-1', name: 'Big', simulated: false });
    expect(settings.irons).toEqual([iron]);
  });

  it('keeps its place in the list', () => {
    const { settings } = withIron(seen(), 'iron-1', { name: 'Big', probes: ['A/1'], scheduleId: 'shipped' });
    expect(settings.irons.map((i) => i.id)).toEqual(['iron-1', 'iron-2']);
  });

  it('can be a new one', () => {
    const { settings } = withIron(seen(), 'edge', { name: 'Edge', probes: ['B/1'], scheduleId: 'shipped' });
    expect(settings.irons.map((i) => i.id)).toEqual(['iron-1', 'edge']);
  });

  it.each([
    {
      draft: { name: 'X', probes: ['A/1'], scheduleId: 'no' },
      where: 'scheduleId',
      says: 'no heat schedule "no"',
    },
    {
      draft: { name: 'X', probes: ['A/1', 'C/1'], scheduleId: 'shipped' },
      where: 'probes.1',
      says: 'no probe "C/1"',
    },
    {
      draft: { name: 'X', probes: ['A/1', 'A/1'], scheduleId: 'shipped' },
      where: 'probes.1',
      says: 'named twice',
    },
  ])('$where is refused by its own name: $says', ({ draft: iron, where, says }) => {
    const refused = refusal(() => withIron(seen(), 'iron-1', iron));
    expect(refused).toMatchObject({ because: 'invalid', where });
    expect(refused.message).toContain(says);
  });
});

/** The same with the simulated iron beside them. */
const both = (): Settings => withNewProbe(seen(), 'simulated/1', true);

describe('what is simulated', () => {
  it('is the device that the simulated source has', () => {
    expect(simulatedSource({ clock: new SteppedClock() }).device.id).toBe('simulated');
  });

  it('is labelled on its iron', () => {
    expect(both().irons.map((i) => i.simulated)).toEqual([false, false, true]);
    const alone = withIron(both(), 'demo', { name: 'Demo', probes: ['simulated/1'], scheduleId: 'shipped' });
    expect(alone.iron.simulated).toBe(true);
  });

  it.each([
    { what: 'on a real iron', id: 'iron-1', probes: ['simulated/1'] },
    { what: 'beside a real probe', id: 'new', probes: ['A/1', 'simulated/1'] },
    { what: 'and replaced by a real probe', id: 'iron-3', probes: ['A/1'] },
  ])('is refused $what: it could pass for real', ({ id, probes }) => {
    const refused = refusal(() => withIron(both(), id, { name: 'X', probes, scheduleId: 'shipped' }));
    expect(refused).toMatchObject({ because: 'invalid', where: 'probes' });
  });
});

const head = (basedOn: number, id = 'shipped') => ({ id, basedOn, madeAt: MADE_AT });

describe('a heat schedule', () => {
  it('is changed by a version more; the ones before stay', () => {
    const { settings, schedule } = withSchedule(firstSettings, { ...draft, fabricLimitC: 180 }, head(1));
    expect(schedule).toMatchObject({ id: 'shipped', version: 2, fabricLimitC: 180, madeAt: MADE_AT });
    expect(settings.schedules.map((s) => s.version)).toEqual([1, 2]);
    expect(currentSchedules(settings)).toEqual([schedule]);
  });

  it('is new where it is based on nothing', () => {
    const { settings, schedule } = withSchedule(firstSettings, draft, head(0, 'mine'));
    expect(schedule.version).toBe(1);
    expect(currentSchedules(settings).map((s) => s.id)).toEqual(['shipped', 'mine']);
  });

  it('is refused where somebody changed it in the meantime, with both versions', () => {
    const { settings } = withSchedule(firstSettings, draft, head(1));
    const refused = refusal(() => withSchedule(settings, draft, head(1)));
    expect(refused).toMatchObject({ because: 'conflict', where: 'basedOn' });
    expect(refused.message).toContain('newest version is 2, yours was made from 1');
  });

  it('is refused as unknown where it is based on a version that never was', () => {
    expect(refusal(() => withSchedule(firstSettings, draft, head(1, 'none'))).because).toBe('unknown');
  });

  it('in its newest version is what the watch of an iron works by', () => {
    const { settings } = withSchedule(seen(), { ...draft, fabricLimitC: 180 }, head(1));
    const [iron] = settings.irons;
    if (iron === undefined) throw new Error('there is no iron');
    expect(watchSettings(settings, iron, () => ({}))).toMatchObject({
      iron: { id: 'iron-1' },
      probes: [{ id: 'A/1' }],
      schedule: { version: 2, fabricLimitC: 180 },
    });
  });
});

describe('a probe that no device has sent a line of', () => {
  it('can not be settled', () => {
    const probe = { label: 'tip', thermocouple: 'K', unit: 'degC' } as const;
    const refused = refusal(() => withProbe(firstSettings, 'A/1', probe));
    expect(refused.because).toBe('unknown');
    expect(refused.message).toContain('once a device has sent a line of it');
  });
});
