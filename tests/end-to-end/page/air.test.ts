import { describe, expect, it } from 'vitest';
import { fToC } from '../../../shared/units/temperature.ts';
import { oldAir, shopAir, silentChosen, twoProbes } from '../../fixtures/air.ts';
import { atBench, pieceScenes } from '../../fixtures/piece-scenes.ts';
import { onAileron } from '../../fixtures/pieces.ts';
import { Bench, type Shown, type ShowOptions } from './bench.ts';
import { NO_AIR } from './fake-air.ts';
import { fine, looks, tabTo, wrongWith } from './looks.ts';

/** Shop air in Setup: as it is and was, typed in, and a day's forecast. */

const bench = Bench.ofFile();

async function atAir(answer = shopAir, options: ShowOptions = {}): Promise<Shown> {
  const shown = await bench.show(pieceScenes['in hand'].live, {
    hash: '#setup/air',
    timezoneId: 'UTC',
    arrange: ({ air }) => {
      air.answer = answer;
    },
    ...options,
  });
  await shown.page.getByTestId('air-now').waitFor();
  return shown;
}

const textOf = async ({ page }: Shown, part: string): Promise<string> =>
  (await page.getByTestId(part).innerText()).replace(/\s+/g, ' ');

describe('the air', () => {
  it('is told with its dew point, how it is known and how old it is, in the user’s unit', async () => {
    const shown = await atAir();
    expect(await textOf(shown, 'air-now')).toMatch(
      /71 °F, 56 % humidity Dew point 54 °F; the air is 16 °F over it Known by the probe bench-board\/air, just now/,
    );
    expect(await textOf(shown, 'air-concerns')).toContain('Nothing is amiss');
    expect(await shown.page.getByTestId('no-air-probe').count()).toBe(0);
    // What would be typed here stands until the probe's next reading only.
    expect(await textOf(shown, 'probe-tells')).toContain('its next reading takes the place');
    await shown.page.getByRole('button', { name: '°C Celsius' }).click();
    await shown.page.getByTestId('air-now').getByText('21.5 °C, 56 % humidity').waitFor();
  }, 60_000);

  it('told long ago says so, with what is amiss for which cement, and what a probe takes', async () => {
    const shown = await atAir(oldAir);
    expect(await textOf(shown, 'air-now')).toContain('It may be something else by now.');
    const concerns = await textOf(shown, 'air-concerns');
    expect(concerns).toContain(
      'Too cold for Demo rib cement, water-borne: 55 °F at least, by the instructions.',
    );
    expect(concerns).toContain('Too near the dew point for cement');
    expect(await shown.page.getByTestId('probe-tells').count()).toBe(0);
    expect(await textOf(shown, 'no-air-probe')).toContain('p=air ta=21.4 rh=56.0');
  }, 60_000);

  it('is read again when the daemon tells that it has changed', async () => {
    const { page, daemon, change } = await atAir(NO_AIR);
    await page.getByText('Nothing is known of the shop’s air').waitFor();
    daemon.air.answer = shopAir;
    await change(atBench(onAileron(), { coatRevision: 9 }));
    await page.getByTestId('air-now').getByText('71 °F, 56 % humidity').waitFor();
  }, 60_000);

  it('of the last day is drawn with its gap, which is told in words and stands in a table', async () => {
    const { page } = await atAir();
    const drawn = page.getByTestId('air-drawn').getByRole('img');
    expect(await drawn.count()).toBe(2);
    expect(await drawn.first().getAttribute('aria-label')).toBe(
      'Temperature of the last 24 hours: from 51 °F to 71 °F. Nothing was heard of the probe from 01:15 to 07:25.',
    );
    // Two stretches of the probe's, and a dot for what was typed.
    expect(await drawn.first().locator('path.plot-line--plate').count()).toBe(2);
    expect(await drawn.first().locator('path.plot-line--dot').count()).toBe(1);
    await page.getByTestId('air-table').locator('summary').click();
    const row = (hour: string) => page.getByRole('row', { name: new RegExp(`^${hour}`) });
    await row('18:00 61 °F to 63 °F 71 % to 72 %').waitFor();
    await row('03:00 nothing told nothing told').waitFor();
  }, 60_000);

  it('can only be looked at from afar', async () => {
    const { live } = pieceScenes['in hand'];
    const { page, change } = await atAir();
    await change({ ...live, situation: { ...live.situation, viewOnly: true } });
    await page.getByTestId('typed-air').waitFor({ state: 'detached' });
    expect(await page.getByTestId('keep-forecast').count()).toBe(0);
    await page.getByText('A forecast stands until').waitFor();
  }, 60_000);
});

describe('the probes that tell it', () => {
  it('are told with their values; what no air is like is said, with what the clocks go by, until it is right', async () => {
    const shown = await atAir(twoProbes);
    const { page, daemon, change } = shown;
    const notes = await textOf(shown, 'air-notes');
    expect(notes).toContain(
      'bench-board/air told humidity 134 % at 13:16: not taken. Relative humidity lies between 0 % and 100 %.',
    );
    expect(notes).toContain(
      'window-board/air told 185 °F at 13:18: not taken. A shop’s air lies between -22 °F and 140 °F.',
    );
    expect(notes).toContain('Clocks go by 71 °F, humidity not told (by a probe, just now).');
    const probes = await textOf(shown, 'air-probes');
    expect(probes).toContain('bench-board/air: 71 °F, humidity not told; taken for the air of the shop.');
    expect(probes).toContain('window-board/air: 63 °F, 71 % humidity; only shown here.');
    daemon.air.answer = shopAir;
    await change(atBench(onAileron(), { coatRevision: 9 }));
    await page.getByTestId('air-notes').waitFor({ state: 'detached' });
  }, 60_000);

  it('on the Bench only the one that the clocks go by is told of, and all while they go by none', async () => {
    const { page, daemon, change } = await atAir(twoProbes);
    await page.evaluate(() => {
      location.hash = '#bench';
    });
    const bench = page.getByTestId('bench-air');
    await bench.getByText('bench-board/air told humidity 134 %').waitFor();
    expect(await bench.getByText('window-board/air').count()).toBe(0);
    const { probes } = twoProbes;
    daemon.air.answer = { ...twoProbes, probes: probes.map((probe) => ({ ...probe, heard: false })) };
    await change(atBench(onAileron(), { coatRevision: 9 }));
    await bench.getByText('window-board/air told 185 °F').waitFor();
  }, 60_000);

  it('one is chosen by keyboard alone, which can be undone', async () => {
    const { page, daemon } = await atAir(twoProbes);
    const chosen = (name: string) =>
      page.getByTestId('air-probes').getByRole('button', { name, exact: true, pressed: true }).waitFor();
    await chosen('whichever is heard');
    await tabTo(page, '[data-testid="air-probes"] button:last-child');
    await page.keyboard.press('Enter');
    await page.getByText('The air is told by window-board/air alone, from its next line on.').waitFor();
    await chosen('window-board/air');
    expect(daemon.air.answer.chosen).toBe('window-board/air');
    await page.getByTestId('air-probes').getByText('No other stands in').waitFor();
    await page.getByTestId('undo').click();
    await chosen('whichever is heard');
    expect(daemon.air.answer.chosen).toBeNull();
  }, 60_000);

  it('the chosen one that is silent is told of, here and on the Bench', async () => {
    const shown = await atAir(silentChosen);
    const { page } = shown;
    const told = /bench-board\/air, has told none since 13:00\. No other stands in for it/;
    expect(await textOf(shown, 'air-notes')).toMatch(told);
    // What is typed now stands: nothing is heard that would take its place.
    expect(await page.getByTestId('probe-tells').count()).toBe(0);
    await page.evaluate(() => {
      location.hash = '#bench';
    });
    await page.getByTestId('bench-air').getByText(told).waitFor();
  }, 60_000);

  it('one that can’t be chosen says why', async () => {
    const { page, daemon } = await atAir(twoProbes);
    await daemon.stop();
    await page.getByTestId('air-probes').getByRole('button', { name: 'window-board/air' }).click();
    await page.getByText('Not saved. The daemon can’t be reached.').waitFor();
    await daemon.start();
  }, 60_000);
});

describe('typed in', () => {
  it('by keyboard alone: what is wrong is said, what is half typed outlives a reload, then it is kept', async () => {
    const { page, daemon } = await atAir(NO_AIR);
    await tabTo(page, '#air-temperature');
    await page.keyboard.type('7');
    await page.keyboard.press('Tab');
    await page.keyboard.type('130');
    await page.keyboard.press('Enter');
    await page.getByText('Write a number from 0 % to 100 %.').waitFor();
    expect(daemon.posted).toEqual([]);
    await page.reload();
    const field = (id: string) => page.locator(`#air-${id}`);
    await expect.poll(() => field('humidity').inputValue()).toBe('130');
    await tabTo(page, '#air-temperature');
    await page.keyboard.press('End');
    await page.keyboard.type('1,6');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('56');
    await page.keyboard.press('Enter');
    await page.getByTestId('air-said').getByText('Kept: 72 °F, 56 % humidity.').waitFor();
    expect(daemon.posted).toHaveLength(1);
    expect(daemon.posted[0]?.body).toMatchObject({ rhPct: 56, commandId: expect.stringMatching(/^\w{32}$/) });
    expect(daemon.posted[0]?.body['airC']).toBeCloseTo(22, 9);
    await page.getByTestId('air-now').getByText('72 °F, 56 % humidity').waitFor();
    expect(await field('temperature').inputValue()).toBe('');
  }, 60_000);

  it('that isn’t in the book yet says so, and that it counts', async () => {
    const { page, daemon } = await atAir(NO_AIR);
    daemon.air.kept = false;
    await page.locator('#air-temperature').fill('65');
    await page.getByTestId('keep-air').click();
    const said = page.getByTestId('air-said');
    await said.getByText('Taken: 65 °F, humidity not told. It counts from now on, but is not in').waitFor();
    await page.getByTestId('air-now').getByText('65 °F').waitFor();
  }, 60_000);

  it('stays in its fields while the daemon is gone, and goes out once with the same id', async () => {
    const { page, daemon } = await atAir(NO_AIR);
    const sent: unknown[] = [];
    await page.route('**/api/air', async (route) => {
      if (route.request().method() !== 'POST') return route.continue();
      sent.push(route.request().postDataJSON());
      // The first one arrives, but its answer is lost.
      if (sent.length > 1) return route.continue();
      await route.fetch();
      return route.abort();
    });
    await page.locator('#air-temperature').fill('65');
    await page.getByTestId('keep-air').click();
    await page.getByTestId('air-said').getByText('What you typed stays here').waitFor();
    await page.getByTestId('keep-air').click();
    await page.getByTestId('air-said').getByText('Kept: 65 °F, humidity not told.').waitFor();
    expect(sent).toHaveLength(2);
    expect(sent[1]).toEqual(sent[0]);
    expect(daemon.air.answer.now?.rhPct).toBeNull();
  }, 60_000);
});

describe('a forecast', () => {
  it('is typed in by keyboard alone, stands, is cleared, and is put back', async () => {
    const { page, daemon } = await atAir({ ...shopAir, forecast: [] });
    await tabTo(page, '#forecast-0-temperature');
    await page.keyboard.type('68');
    await tabTo(page, '#forecast-2-temperature');
    await page.keyboard.type('warm');
    await tabTo(page, '[data-testid="keep-forecast"]');
    await page.keyboard.press('Enter');
    await page.getByTestId('said').getByText('something in the rows needs a look').waitFor();
    await page.getByText('Write a number in °F, for example 70 or 70,5.').waitFor();
    await page.reload();
    const bad = page.locator('#forecast-2-temperature');
    await expect.poll(() => bad.inputValue()).toBe('warm');
    await tabTo(page, '#forecast-2-temperature');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('59,5');
    await page.keyboard.press('Tab');
    await page.keyboard.type('75');
    await tabTo(page, '[data-testid="keep-forecast"]');
    await page.keyboard.press('Enter');
    await page.getByTestId('said').getByText('Kept: the forecast stands until').waitFor();
    const points = daemon.air.answer.forecast;
    expect(points.map(({ at, rhPct }) => [at, rhPct])).toEqual([
      ['2026-03-04T14:00:00.000Z', null],
      ['2026-03-04T20:00:00.000Z', 75],
    ]);
    expect(points[1]?.airC).toBeCloseTo(fToC(59.5), 9);
    await page.getByTestId('clear-forecast').click();
    await page.getByText('Cleared: no forecast stands.').waitFor();
    expect(daemon.air.answer.forecast).toEqual([]);
    await page.getByTestId('undo').click();
    await page.getByText('Put back as it was.').waitFor();
    expect(daemon.air.answer.forecast).toEqual(points);
  }, 60_000);

  it('that isn’t in the book yet says so, and so does clearing it', async () => {
    const { page, daemon } = await atAir();
    daemon.air.kept = false;
    const said = page.getByTestId('said');
    await page.getByTestId('keep-forecast').click();
    await said.getByText(/^Taken: the forecast stands until .* not in the book yet/).waitFor();
    await page.getByTestId('clear-forecast').click();
    await said.getByText(/^Cleared: no forecast stands. .* not in the book yet/).waitFor();
    await page.getByTestId('undo').click();
    await said.getByText(/^Put back as it was. .* not in the book yet/).waitFor();
  }, 60_000);

  it('is kept where it was to be cleared before, and the answer to that was lost', async () => {
    const { page, daemon } = await atAir();
    const sent: { readonly commandId: string; readonly points: readonly unknown[] }[] = [];
    await page.route('**/api/air/forecast', async (route) => {
      sent.push(route.request().postDataJSON());
      if (sent.length > 1) return route.continue();
      await route.fetch();
      return route.abort();
    });
    await page.getByTestId('clear-forecast').click();
    await page.getByTestId('said').getByText('What you typed stays here').waitFor();
    await page.getByTestId('keep-forecast').click();
    await page.getByTestId('said').getByText('Kept: the forecast stands until').waitFor();
    expect(sent.map(({ points }) => points.length)).toEqual([0, 2]);
    // A daemon does nothing under an id that it has seen.
    expect(sent[1]?.commandId).not.toBe(sent[0]?.commandId);
    expect(daemon.air.answer.forecast).toHaveLength(2);
  }, 60_000);

  it('begins with the one that stands, takes another hour, and stays while the daemon is gone', async () => {
    const { page, daemon } = await atAir();
    const hour = (row: number) => page.locator(`#forecast-${row}-hour`);
    await expect.poll(() => hour(1).inputValue()).toBe('23:00');
    await page.getByTestId('add-hour').click();
    await expect.poll(() => hour(2).inputValue()).toBe('00:00');
    await hour(2).fill('6:30');
    await page.locator('#forecast-2-temperature').fill('50');
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByTestId('keep-forecast').click();
    await page.getByTestId('said').getByText('What you typed stays here').waitFor();
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    await page.getByTestId('keep-forecast').click();
    await page.getByTestId('said').getByText('Kept: the forecast stands until').waitFor();
    expect(daemon.air.answer.forecast.at(-1)).toMatchObject({ at: '2026-03-05T06:30:00.000Z', airC: 10 });
    expect(daemon.air.answer.forecast).toHaveLength(3);
  }, 60_000);
});

describe.each(looks)('at %s', (_, options) => {
  it('known, old, unknown and with errors pass axe-core, never scroll sideways, have large targets', async () => {
    const shown = await atAir(shopAir, options);
    const { page, daemon, change, complaints } = shown;
    const found: Record<string, unknown> = {};
    found['known'] = await wrongWith(shown);
    daemon.air.answer = twoProbes;
    await change(atBench(onAileron(), { coatRevision: 4 }));
    await page.getByText('told humidity 134 %').waitFor();
    found['refused'] = await wrongWith(shown);
    daemon.air.answer = silentChosen;
    await change(atBench(onAileron(), { coatRevision: 5 }));
    await page.getByText('has told none since').waitFor();
    found['silent'] = await wrongWith(shown);
    daemon.air.answer = oldAir;
    await change(atBench(onAileron(), { coatRevision: 2 }));
    await page.getByTestId('no-air-probe').waitFor();
    found['old'] = await wrongWith(shown);
    await page.getByTestId('keep-air').click();
    await page.locator('#forecast-1-humidity').fill('120');
    await page.getByTestId('keep-forecast').click();
    await page.getByText('Write the temperature too').waitFor();
    found['errors'] = await wrongWith(shown);
    daemon.air.answer = NO_AIR;
    await change(atBench(onAileron(), { coatRevision: 3 }));
    await page.getByText('Nothing is known of the shop’s air').waitFor();
    found['unknown'] = await wrongWith(shown);
    expect(found).toEqual({
      known: fine,
      refused: fine,
      silent: fine,
      old: fine,
      errors: fine,
      unknown: fine,
    });
    expect(complaints).toEqual([]);
  }, 120_000);
});
