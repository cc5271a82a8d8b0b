import { describe, expect, it } from 'vitest';
import { airFromOf, withAirFrom } from '../../../../daemon/settings/air.ts';
import { firstSettings, settingsSchema } from '../../../../daemon/settings/settings.ts';
import { emptySample } from '../../../../shared/thermometer/sample.ts';
import { inShop } from './support/in-shop.ts';

/** An iron's board `A` with a sensor for air, and another one by the window on the same board. */
async function twoProbes() {
  const one = await inShop();
  const tell = (name: string, airC: number, rhPct: number): void => {
    one.program.drying.hear({ ...emptySample(`A/${name}`), airC, rhPct }, one.clock.nowMs());
  };
  const both = (): void => {
    tell('air', 20, 50);
    tell('window', 12, 70);
  };
  return { ...one, tell, both };
}

describe('the probes that tell the shop’s air', () => {
  it('are told with what each says, and the air of now is that of the first', async () => {
    const { cure, both } = await twoProbes();
    both();
    expect(cure.air()).toMatchObject({
      now: { airC: 20, probe: 'A/air' },
      chosen: null,
      probes: [
        { probe: 'A/air', told: { airC: 20, rhPct: 50 }, silent: false, heard: true, refused: [] },
        { probe: 'A/window', told: { airC: 12, rhPct: 70 }, silent: false, heard: false, refused: [] },
      ],
    });
  });

  it('one that tells what no air is like is told of, and that comes to the pages by itself', async () => {
    const one = await twoProbes();
    const { cure, tell, program, journal } = one;
    tell('air', 20, 50);
    one.wait(1);
    const { coatRevision } = program.live().situation.work;
    tell('air', 20, 134);
    const at = new Date(program.options.utcNowMs()).toISOString();
    one.wait(1);
    expect(program.live().situation.work.coatRevision).toBeGreaterThan(coatRevision);
    expect(cure.air().probes).toMatchObject([{ refused: [{ part: 'rhPct', value: 134, at }] }]);
    expect(cure.air().now).toMatchObject({ rhPct: 50 });
    const told = journal.flatMap(({ happened }) => (happened.kind === 'air' ? [happened.rhPct] : []));
    expect(told).not.toContain(134);
  });

  it('one can be chosen: it tells the air from its next line on, and no other while it is silent', async () => {
    const one = await twoProbes();
    const { cure, both, tell, settings } = one;
    both();
    expect(await cure.putAirFrom({ probe: 'A/window' })).toEqual({ probe: 'A/window' });
    expect(settings.current.air).toEqual({ probe: 'A/window' });
    expect(cure.air().now?.probe).toBe('A/air');
    both();
    expect(cure.air()).toMatchObject({ chosen: 'A/window', now: { airC: 12, probe: 'A/window' } });
    const silentFrom = cure.air().now?.at;
    for (let minute = 0; minute < 20; minute += 1) {
      one.wait(60);
      tell('air', 20, 50);
    }
    expect(cure.air()).toMatchObject({
      now: { probe: 'A/window', old: true },
      probes: [
        { probe: 'A/air', silent: false, heard: false },
        { probe: 'A/window', silent: true, heard: false, told: { airC: 12, at: silentFrom } },
      ],
    });
  });

  it('a simulated one can’t be chosen in a real shop', async () => {
    const { cure, both, settings } = await twoProbes();
    await expect(cure.putAirFrom({ probe: 'simulated/air' })).rejects.toThrow(
      'simulated/air is simulated: it tells nothing of this shop’s air.',
    );
    both();
    expect(cure.air()).toMatchObject({ chosen: null, now: { probe: 'A/air' } });
    expect(settings.current).toMatchObject({ air: { probe: null }, simulatedAir: { probe: null } });
  });
});

describe('which probe tells the air', () => {
  it('is whichever is heard in settings of before it could be chosen', () => {
    const { air: _, simulatedAir: __, ...before } = firstSettings;
    expect(settingsSchema.parse(before)).toMatchObject({
      air: { probe: null },
      simulatedAir: { probe: null },
    });
  });

  it('is a probe’s id or none', () => {
    const { settings } = withAirFrom(firstSettings, { probe: 'board/air' }, false);
    expect(airFromOf(settings, false)).toEqual({ probe: 'board/air' });
    expect(() => withAirFrom(firstSettings, { probe: 'air' }, false)).toThrow('a device and a probe name');
  });

  it('is settled for the simulated shop by itself: the real one keeps its choice', () => {
    const real = withAirFrom(firstSettings, { probe: 'board/air' }, false).settings;
    const both = withAirFrom(real, { probe: 'simulated/air' }, true).settings;
    expect(airFromOf(both, false)).toEqual({ probe: 'board/air' });
    expect(airFromOf(both, true)).toEqual({ probe: 'simulated/air' });
    const undone = withAirFrom(both, { probe: null }, true).settings;
    expect(airFromOf(undone, false)).toEqual({ probe: 'board/air' });
    expect(() => withAirFrom(both, { probe: 'board/air' }, true)).toThrow('board/air is a real probe');
  });
});
