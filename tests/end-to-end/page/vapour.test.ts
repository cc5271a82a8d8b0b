import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drying, mayBeReady } from '../../fixtures/coats.ts';
import { alarm } from '../../fixtures/scenes.ts';
import { actsOf, now, showCoats, turn } from './at-coats.ts';
import { Bench } from './bench.ts';
import { pressableWhen } from './settling.ts';

/** The question whether a hot iron is near vapour that burns. */

const bench = Bench.ofFile();

describe('the question about vapour', () => {
  const question = (page: Page) => page.getByTestId('fire-question');

  it('stands over everything on every view, beside an alarm, a coat at a time, and is answered by touch', async () => {
    const shown = await showCoats(bench, [mayBeReady, drying], {
      fire: ['coat-may', 'coat-drying'],
      hasTouch: true,
    });
    const { page, daemon } = shown;
    await question(page).waitFor();
    expect(await question(page).innerText()).toContain(
      'The vapour of Halvorsen seam cement on Left aileron, upper side, rib tape 3 burns, and an iron is hot.',
    );
    expect(await question(page).innerText()).toContain('1 of 2 questions');
    await shown.change({ ...now, alarms: [alarm({ kind: 'fire-hazard', probe: null, peakC: null })] });
    await page.getByTestId('alarm').waitFor();
    for (const hash of ['#piece', '#bench', '#records', '#setup', '#iron']) {
      await page.evaluate((to) => {
        location.hash = to;
      }, hash);
      await expect.poll(() => question(page).isVisible()).toBe(true);
    }
    await question(page)
      .getByRole('button', { name: /^The coat is in another, ventilated space/ })
      .tap();
    await expect
      .poll(() => actsOf(daemon))
      .toEqual([{ kind: 'fire-answer', coat: 'coat-may', answer: 'elsewhere' }]);
    // A second press that was meant for the first question answers nothing, neither the next one nor the alarm beside it.
    const next = await pressableWhen(page, '[data-coat="coat-drying"]');
    await turn(shown, 2, [mayBeReady, drying], ['coat-drying']);
    expect(await next()).toBe(0);
    expect(await question(page).innerText()).toContain('leading edge burns');
    await question(page)
      .getByRole('button', { name: /^I stop/ })
      .tap();
    await expect.poll(() => actsOf(daemon)).toMatchObject([{}, { coat: 'coat-drying', answer: 'stopped' }]);
    const gone = await pressableWhen(page, '.over-parts:not(:has([data-testid=fire-question]))');
    await turn(shown, 3, [mayBeReady, drying]);
    expect(await gone()).toBe(0);
  }, 60_000);

  it('is answered by keyboard alone and announced', async () => {
    const { page, daemon } = await showCoats(bench, [mayBeReady], { fire: ['coat-may'] });
    await question(page).waitFor();
    expect(await page.getByRole('alert').innerText()).toContain('The vapour of Halvorsen seam cement');
    const name = () => page.evaluate(() => document.activeElement?.textContent ?? '');
    for (let i = 0; i < 20 && !(await name()).startsWith('The iron is off'); i++)
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => actsOf(daemon))
      .toEqual([{ kind: 'fire-answer', coat: 'coat-may', answer: 'iron-off' }]);
  }, 40_000);

  it('is seen and not answered where a page may only look; what was answered stands on the coat', async () => {
    const shown = await showCoats(bench, [mayBeReady], { fire: ['coat-may'] });
    await shown.change({ ...now, situation: { ...now.situation, viewOnly: true } });
    await question(shown.page).waitFor();
    await expect.poll(() => question(shown.page).getByRole('button').count()).toBe(0);
    const answered = { ...mayBeReady, fire: { answer: 'elsewhere', until: '2026-03-04T15:20:00Z' } } as const;
    await turn(shown, 2, [answered]);
    await shown.page.evaluate(() => {
      location.hash = '#bench';
    });
    await expect
      .poll(() => shown.page.getByTestId('coat').innerText())
      .toMatch(/another, ventilated space\. That stands until \d\d:20 at the latest/);
  }, 40_000);
});
