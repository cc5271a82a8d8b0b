import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fToC } from '../../../shared/units/temperature.ts';
import { demoCements, edgeCement, ribCement, ribLearned } from '../../fixtures/cements.ts';
import { atBench, pieceScenes } from '../../fixtures/piece-scenes.ts';
import { onAileron } from '../../fixtures/pieces.ts';
import { Bench, type Shown, type ShowOptions } from './bench.ts';
import { fine, looks, tabTo, wrongWith } from './looks.ts';

/** Cements in Setup: entered and changed by keys and by thumbs, by two people, with the daemon there and gone. */

const bench = Bench.ofFile();

async function settingUp(hash = '', options: ShowOptions = {}): Promise<Shown> {
  return bench.show(pieceScenes['in hand'].live, {
    hash: `#setup/cements${hash}`,
    arrange: ({ cements }) => {
      cements.keep(demoCements);
      cements.learned.set(ribCement.id, ribLearned);
    },
    ...options,
  });
}

const card = (page: Page, id: string) => page.locator(`[data-testid="cement"][data-id="${id}"]`);
const said = (page: Page) => page.getByTestId('cement-said');
const kept = ({ daemon }: Shown, name: string) =>
  [...daemon.cements.cements.values()].find((cement) => cement.name === name);

describe('the list', () => {
  it('tells what stands of each, what is doubtful, and what was learned', async () => {
    const { page } = await settingUp();
    const rib = card(page, ribCement.id);
    await rib.waitFor();
    const text = (await rib.innerText()).replace(/\s+/g, ' ');
    expect(text).toContain('Set to touch 30 to 45 min');
    expect(text).toContain('Times hold at 73 °F and 50 % humidity');
    expect(text).toContain('Cement limit 325 °F');
    expect(text).toContain('Past its day, which was');
    expect(text).toContain('Dries here in 0.8 of the instructions’ time (5 observations)');
    expect(await rib.getByTestId('cement-unconfirmed').count()).toBe(0);
    await card(page, edgeCement.id).getByTestId('cement-unconfirmed').waitFor();
    expect(await card(page, 'old-glue').count()).toBe(0);
    await page.getByTestId('cements-away').locator('summary').click();
    await card(page, 'old-glue').waitFor();
    await page.getByRole('button', { name: '°C Celsius' }).click();
    await rib.getByText('22.8 °C and 50 % humidity').waitFor();
  }, 60_000);

  it('says what to do where there is none, and follows what others change', async () => {
    const { page, daemon, change } = await settingUp('', { arrange: () => undefined });
    await page.getByText('Enter each cement that you work with').waitFor();
    daemon.cements.keep([ribCement]);
    await change(atBench(onAileron(), { coatRevision: 7 }));
    await card(page, ribCement.id).waitFor();
  }, 60_000);

  it('puts one away and takes it out again', async () => {
    const shown = await settingUp();
    const { page } = shown;
    await page.getByRole('button', { name: `Put it away: ${ribCement.name}` }).click();
    await expect.poll(() => kept(shown, ribCement.name)).toMatchObject({ archived: true, version: 4 });
    await page.getByTestId('cements-away').locator('summary').click();
    await page.getByRole('button', { name: `Take it out again: ${ribCement.name}` }).click();
    await expect.poll(() => kept(shown, ribCement.name)).toMatchObject({ archived: false, version: 5 });
  }, 60_000);

  it('learns anew only when asked twice, and says first what that does', async () => {
    const { page, daemon } = await settingUp();
    const rib = card(page, ribCement.id);
    await rib.getByTestId('learn-anew').click();
    await rib.getByText('It can’t be taken back').waitFor();
    await rib.getByTestId('keep-learned').click();
    expect(daemon.posted).toEqual([]);
    await rib.getByTestId('learn-anew').click();
    await rib.getByTestId('learn-anew-really').click();
    await rib.getByText('Nothing learned here yet').waitFor();
    expect(daemon.posted).toEqual([
      {
        path: `/api/cements/${ribCement.id}/learn-anew`,
        body: { commandId: expect.stringMatching(/^\w{32}$/) },
      },
    ]);
  }, 60_000);
});

describe('learning anew', () => {
  it('that isn’t in the book yet says so', async () => {
    const { page, daemon } = await settingUp();
    daemon.cements.kept = false;
    const rib = card(page, ribCement.id);
    await rib.getByTestId('learn-anew').click();
    await rib.getByTestId('learn-anew-really').click();
    const told = rib.getByTestId('cement-card-said');
    await told.getByText(/^Learned anew from here.* is not in the book yet/).waitFor();
  }, 60_000);
});

describe('a new cement', () => {
  it('by keyboard alone: what is wrong is said beside each field, then it is there', async () => {
    const shown = await settingUp();
    const { page } = shown;
    await card(page, ribCement.id).waitFor();
    await tabTo(page, '[data-testid="new-cement"]');
    await page.keyboard.press('Enter');
    await page.getByTestId('cement-editor').waitFor();
    await tabTo(page, '[data-testid="save"]');
    await page.keyboard.press('Enter');
    await said(page).getByText('Not saved: 5 fields need a look').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toMatch(/-name$/);
    await page.keyboard.type('Flap cement');
    await tabTo(page, 'button:text("moisture-curing")');
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Yes, it burns' }).waitFor();
    await tabTo(page, 'button:text("Yes, it burns")');
    await page.keyboard.press('Space');
    await tabTo(page, '[id$="-ready-for-iron.from"]');
    await page.keyboard.type('1,5');
    await page.keyboard.press('Tab');
    await page.keyboard.type('2');
    await tabTo(page, '[data-kind="ready-for-iron"] button:text("hours")');
    await page.keyboard.press('Enter');
    await tabTo(page, '[id$="-at"]');
    await page.keyboard.type('73,4');
    await tabTo(page, '[id$="-atRh"]');
    await page.keyboard.type('101');
    await page.keyboard.press('Tab');
    await page.getByText('Write a number from 0 % to 100 %.').waitFor();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('50');
    await tabTo(page, '[data-testid="save"]');
    await page.keyboard.press('Enter');
    await said(page).getByText('Saved as version 1').waitFor();
    const made = kept(shown, 'Flap cement');
    expect(made).toMatchObject({
      kind: 'moisture-curing',
      flammable: true,
      stages: [{ kind: 'ready-for-iron', fromS: 5400, toS: 7200 }],
      atRhPct: 50,
      airLimits: { lowC: null, highC: null, lowRhPct: null, highRhPct: null },
      energyKJPerMol: null,
      source: null,
    });
    expect(made?.atC).toBeCloseTo(23, 9);
    await page.getByTestId('cement-unconfirmed').waitFor();
  }, 90_000);

  it('begun from another has its values, but not its batch, day and document', async () => {
    const shown = await settingUp(`/${ribCement.id}`, {
      hasTouch: true,
      viewport: { width: 390, height: 844 },
    });
    const { page } = shown;
    await page.getByTestId('copy-cement').tap();
    await expect.poll(() => page.getByLabel('Name', { exact: true }).inputValue()).toContain('(another)');
    await page.getByRole('textbox', { name: 'Document' }).fill('Demo sheet (invented)');
    await page.getByTestId('save').tap();
    await said(page).getByText('one field needs a look').waitFor();
    await page.getByRole('textbox', { name: 'Page' }).fill('3');
    await page.getByTestId('save').tap();
    await said(page).getByText('Saved as version 1').waitFor();
    expect(kept(shown, `${ribCement.name} (another)`)).toMatchObject({
      stages: ribCement.stages,
      atC: ribCement.atC,
      batch: '',
      expiresOn: null,
      source: { manual: 'Demo sheet (invented)', page: '3' },
    });
  }, 60_000);

  it('in which nothing was typed leaves nothing behind', async () => {
    const { page } = await settingUp();
    await page.getByTestId('new-cement').click();
    await page.getByRole('link', { name: 'Back to the cements' }).click();
    await card(page, ribCement.id).waitFor();
    expect(await page.getByText('not saved').count()).toBe(0);
  }, 60_000);
});

describe('a cement that is there', () => {
  it('what is half typed outlives a reload and another view, and says that it is not saved', async () => {
    const { page } = await settingUp(`/${ribCement.id}`);
    const iron = page.getByRole('textbox', { name: 'From, ready for the iron' });
    await iron.fill('1,');
    await page
      .getByRole('link', { name: /^Setup/ })
      .getByText('not saved')
      .waitFor();
    await page.reload();
    await expect.poll(() => iron.inputValue()).toBe('1,');
    await page.getByRole('button', { name: '°C Celsius' }).click();
    await expect
      .poll(() => page.getByRole('textbox', { name: 'Temperature', exact: true }).inputValue())
      .toBe('22.8');
    await page.getByRole('link', { name: 'Back to the cements' }).click();
    await card(page, ribCement.id).getByText('not saved yet').waitFor();
    await page.getByRole('link', { name: `Change it: ${ribCement.name}` }).click();
    await expect.poll(() => iron.inputValue()).toBe('1,');
    await page.getByRole('button', { name: 'Drop what I typed' }).click();
    await expect.poll(() => iron.inputValue()).toBe('1.5');
    await page.getByRole('button', { name: 'Take that back' }).click();
    await expect.poll(() => iron.inputValue()).toBe('1,');
  }, 60_000);

  it('changed on two pages: nothing typed is lost, the other version is shown, both are kept', async () => {
    const shown = await settingUp(`/${ribCement.id}`);
    const { page, daemon } = shown;
    await page.getByRole('textbox', { name: 'Batch' }).fill('D-200');
    await page.getByRole('textbox', { name: 'Lowest temperature' }).fill('60');
    daemon.cements.keep([
      { ...ribCement, version: 4, batch: 'D-300', atC: fToC(77), stages: ribCement.stages.slice(0, 2) },
    ]);
    await page.getByTestId('save').click();
    const conflict = page.getByTestId('conflict');
    await conflict.getByText('there is a version 4').waitFor();
    await said(page).getByText('There is a version 4 of it by now.').waitFor();
    const text = (await conflict.innerText()).replace(/\s+/g, ' ');
    expect(text).toContain('Temperature: 77 °F (was 73 °F)');
    expect(text).toContain('cured: nothing (was 2 to 3 days)');
    expect(text).toContain('Batch: the other “D-300”, yours “D-200”');
    await page.reload();
    await conflict.waitFor();
    await page.getByRole('button', { name: 'Take the other’s: Batch' }).click();
    await page.getByTestId('save-both').click();
    await said(page).getByText('Saved as version 5').waitFor();
    const saved = kept(shown, ribCement.name);
    expect(saved).toMatchObject({ version: 5, batch: 'D-300', stages: ribCement.stages.slice(0, 2) });
    expect(saved?.atC).toBeCloseTo(fToC(77), 9);
    expect(saved?.airLimits.lowC).toBeCloseTo(fToC(60), 9);
    expect(saved?.airLimits.highC).toBe(ribCement.airLimits.highC);
  }, 60_000);

  it('typed while the daemon is gone stays, and is saved once it is back', async () => {
    const shown = await settingUp(`/${edgeCement.id}`);
    const { page, daemon } = shown;
    await page.getByTestId('cement-more').locator('summary').waitFor();
    await page.getByRole('textbox', { name: 'Heat of vaporisation' }).fill('');
    await page.getByRole('textbox', { name: 'Heat of vaporisation' }).fill('3');
    await page.getByRole('textbox', { name: 'Heat of vaporisation' }).fill('');
    await page.getByRole('textbox', { name: 'Batch' }).fill('E-7');
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByTestId('save').click();
    await said(page).getByText('What you typed stays here').waitFor();
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    await page.getByTestId('save').click();
    await said(page).getByText('Saved as version 2').waitFor();
    expect(kept(shown, edgeCement.name)).toMatchObject({ batch: 'E-7', energyKJPerMol: null });
  }, 60_000);

  it('can only be looked at from afar', async () => {
    const { live } = pieceScenes['in hand'];
    const { page, change } = await settingUp();
    await change({ ...live, situation: { ...live.situation, viewOnly: true } });
    await page.getByRole('link', { name: `Look at it: ${ribCement.name}` }).click();
    await page.getByTestId('cement-editor').waitFor();
    expect(await page.getByRole('textbox', { name: 'Batch' }).isDisabled()).toBe(true);
    expect(await page.getByTestId('copy-cement').count()).toBe(0);
  }, 60_000);
});

describe.each(looks)('at %s', (_, options) => {
  it('list, form, errors and conflict pass axe-core, never scroll sideways, have large targets', async () => {
    const shown = await settingUp('', options);
    const { page, daemon, complaints } = shown;
    const found: Record<string, unknown> = {};
    await card(page, ribCement.id).getByTestId('learn-anew').click();
    found['list'] = await wrongWith(shown);
    await page.getByTestId('new-cement').click();
    await page.getByTestId('cement-editor').waitFor();
    await page.getByRole('button', { name: 'two-part' }).click();
    await page.getByTestId('save').click();
    await said(page).getByText('fields need a look').waitFor();
    found['errors'] = await wrongWith(shown);
    await page.evaluate((to) => {
      location.hash = to;
    }, `#setup/cements/${ribCement.id}`);
    await page.getByRole('textbox', { name: 'Batch' }).fill('D-200');
    daemon.cements.keep([{ ...ribCement, version: 4, batch: 'D-300' }]);
    await page.getByTestId('save').click();
    await page.getByTestId('conflict').waitFor();
    found['conflict'] = await wrongWith(shown);
    expect(found).toEqual({ list: fine, errors: fine, conflict: fine });
    expect(complaints).toEqual([]);
  }, 120_000);
});
