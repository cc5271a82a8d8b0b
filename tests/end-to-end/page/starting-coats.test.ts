import { describe, expect, it } from 'vitest';
import { coat, mayBeReady } from '../../fixtures/coats.ts';
import { actsOf, showBench } from './at-coats.ts';
import { Bench } from './bench.ts';
import { agreeing } from './fake-daemon.ts';

/** Coats that are started on the Bench, by touch, by keyboard alone and while the daemon is gone. */

const bench = Bench.ofFile();

describe('starting coats', () => {
  it('several at once, with another cement, so many minutes ago', async () => {
    const { page, daemon } = await showBench(bench, [], { viewport: { width: 1440, height: 900 } });
    const start = page.getByTestId('start-coats');
    expect(await page.getByTestId('start-clock').count()).toBe(0);
    await start.getByRole('button', { name: /^Generic water-borne/ }).click();
    await expect
      .poll(() => start.getByRole('button', { name: /^Generic water-borne/ }).innerText())
      .toContain('unconfirmed');
    expect(await start.getByRole('button', { name: 'Old tin' }).count()).toBe(0);
    await start.getByTestId('sheet-1').locator('[data-area="1-edge-r0c0"]').click();
    await start.getByTestId('sheet-1').locator('[data-area="1-edge-r1c0"]').click();
    await start.getByRole('button', { name: 'The whole side: lower side' }).click();
    await start.getByRole('button', { name: 'so long ago' }).click();
    await page.getByTestId('start-clock').click();
    await page.getByText('Write minutes from 0 to 43200').waitFor();
    await page.getByLabel('Minutes ago').fill('12,5');
    await expect
      .poll(() => page.getByTestId('start-summary').innerText())
      .toBe(
        'Generic water-borne on Left aileron, upper side: leading edge; root edge and Left aileron, lower side: the whole side, put on 12,5 min ago.',
      );
    await page.getByRole('button', { name: 'Start 3 clocks' }).click();
    await expect
      .poll(() => actsOf(daemon))
      .toEqual([
        {
          kind: 'start',
          cement: 'generic-water',
          piece: 'left-aileron',
          places: [
            { side: 2, area: null },
            { side: 1, area: '1-edge-r0c0' },
            { side: 1, area: '1-edge-r1c0' },
          ],
          agoS: 750,
        },
      ]);
  }, 40_000);

  it('by keyboard alone, with the cement used last', async () => {
    const { page, daemon } = await showBench(bench, [mayBeReady], { hash: '#bench/right-flap' });
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('data-area') ?? '');
    const pressed = () => page.evaluate(() => document.activeElement?.getAttribute('data-testid') ?? '');
    for (let i = 0; i < 60 && (await focused()) === ''; i++) await page.keyboard.press('Tab');
    expect(await focused()).toBe('1-cloth-r1c1');
    await page.keyboard.press('ArrowUp');
    await expect.poll(focused).toBe('1-edge-r0c0');
    await page.keyboard.press('Enter');
    for (let i = 0; i < 10 && (await pressed()) !== 'start-clock'; i++) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => actsOf(daemon))
      .toEqual([
        {
          kind: 'start',
          cement: 'shop-solvent',
          piece: 'right-flap',
          places: [{ side: 1, area: '1-edge-r0c0' }],
          agoS: 0,
        },
      ]);
  }, 40_000);

  it('while the daemon is gone is kept, shown as unsent, and sent once with how long it waited', async () => {
    const { page, daemon } = await showBench(bench, [mayBeReady]);
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByTestId('start-coats').locator('[data-area="1-edge-r9c0"]').click();
    // The tablet sleeps for twenty minutes: its own clock goes on.
    await page.getByTestId('start-clock').click();
    await page.getByTestId('unsent').waitFor();
    expect(await page.getByTestId('unsent').innerText()).toMatch(
      /Not sent yet: Halvorsen seam cement on Left aileron, upper side: trailing edge, put on \d\d:2\d/,
    );
    await page.evaluate(() => {
      const real = Date.now;
      Date.now = () => real() + 1_200_000;
    });
    daemon.answering = agreeing;
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    await expect.poll(() => actsOf(daemon).length).toBe(1);
    const [act] = actsOf(daemon);
    expect(act?.kind === 'start' ? act.agoS : 0).toBeGreaterThanOrEqual(1200);
    expect(act?.kind === 'start' ? act.agoS : 0).toBeLessThan(1300);
    await expect.poll(() => page.getByTestId('unsent').count()).toBe(0);
    expect(actsOf(daemon)).toHaveLength(1);
  }, 60_000);

  it('says what is missing: no cement, no piece', async () => {
    const { page } = await showBench(bench, [coat({})], {
      arrange: (daemon) => {
        daemon.cements.cements.clear();
        daemon.pieces.pieces.clear();
      },
    });
    const start = page.getByTestId('start-coats');
    await expect.poll(() => start.innerText()).toContain('No cement has been entered yet');
    expect(await start.innerText()).toContain('No piece has been made yet');
  }, 40_000);
});
