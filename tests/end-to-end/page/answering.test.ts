import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { AlarmLive } from '../../../shared/messages/live.ts';
import { fToC } from '../../../shared/units/temperature.ts';
import { alarm, live, probe, scenes } from '../../fixtures/scenes.ts';
import { Bench } from './bench.ts';
import { pressableWhen } from './settling.ts';

/** Alarms are answered by touch, by focus and by key, whatever comes and goes under the finger meanwhile. */

const bench = Bench.ofFile();

describe('answering an alarm', () => {
  it('acknowledges by touch, by focus and Enter, and by its single key', async () => {
    const { page, daemon } = await bench.show(scenes['over-limit'], { hasTouch: true });
    // The same thing asked again while it is on its way is one command: each is answered before the next.
    const answered = async (act: () => Promise<void>) => {
      await Promise.all([
        page.waitForResponse(/\/api\/alarms\//).then((response) => response.finished()),
        act(),
      ]);
      await page.evaluate(() => new Promise(requestAnimationFrame));
    };
    const button = page.getByRole('button', { name: 'Acknowledge: Plate over the fabric limit' });
    await answered(() => button.tap());
    await expect.poll(() => daemon.posted.length).toBe(1);
    expect(daemon.posted[0]).toMatchObject({
      path: '/api/alarms/acknowledge',
      body: {
        iron: 'big',
        kind: 'over-limit',
        probe: 'bench-board/1',
        commandId: expect.stringMatching(/^[0-9a-f]{32}$/),
      },
    });
    await page.getByRole('button', { name: /^Acknowledge/ }).focus();
    await answered(() => page.keyboard.press('Enter'));
    await expect.poll(() => daemon.posted.length).toBe(2);
    await answered(() => page.keyboard.press('a'));
    await expect.poll(() => daemon.posted.length).toBe(3);
    await page.keyboard.press('s');
    await expect
      .poll(() => daemon.posted[3])
      .toMatchObject({ path: '/api/alarms/silence', body: { forS: 60 } });
    expect(new Set(daemon.posted.map(({ body }) => body['commandId'])).size).toBe(4);
  }, 30_000);

  it('takes no press at once where something else has come to stand: seen, raised, or moved beneath a finger', async () => {
    const first = alarm();
    const second = alarm({ kind: 'wet-cement', priority: 2, probe: null, peakC: null });
    const { page, daemon, change } = await bench.show(live([probe(383)], [second]));
    const raised = await pressableWhen(page, '[data-testid=alarm]:first-child[data-kind=over-limit]');
    await change(live([probe(383)], [first, second]));
    expect(await raised()).toBe(0);
    const acknowledge = page.getByRole('button', { name: /^Acknowledge/ }).first();
    await acknowledge.click();
    const moved = await pressableWhen(page, '[data-testid=alarm]:first-child[data-kind=wet-cement]');
    await change(live([probe(383)], [{ ...first, state: 'acknowledged' }, second]));
    expect(await moved()).toBe(0);
    // Later the same place answers what stands there now; a click waits for that as a person does.
    await acknowledge.click();
    await expect
      .poll(() => daemon.posted.map(({ body }) => body['kind']))
      .toEqual(['over-limit', 'wet-cement']);
  }, 30_000);

  it('leaves single keys alone where they are switched off, and remembers that', async () => {
    const { page, daemon } = await bench.show(scenes['over-limit']);
    await page.getByText('Keys', { exact: true }).click();
    await page.getByRole('button', { name: 'Single keys are on' }).click();
    await page.reload();
    await page.getByTestId('alarm').waitFor();
    await page.keyboard.press('a');
    await page.getByRole('button', { name: /^Acknowledge/ }).click();
    await expect.poll(() => daemon.posted.length).toBe(1);
  }, 30_000);

  it('takes those that are gone together: a line each with what is left to do, one press for all, after what stands', async () => {
    const gone = (kind: AlarmLive['kind'], minute: number, peakC: number | null = null) =>
      alarm({ kind, state: 'returned-unacknowledged', since: `2026-03-04T13:0${minute}:00Z`, peakC });
    const wet = alarm({ kind: 'wet-cement', priority: 2, probe: null, peakC: null });
    const over = gone('over-limit', 1, fToC(385));
    const { page, daemon } = await bench.show(
      live([probe(252)], [over, gone('heading-for-limit', 2), gone('unattended', 3), wet]),
    );
    expect(await page.getByTestId('alarm').first().getAttribute('data-kind')).toBe('wet-cement');
    const group = page.getByTestId('alarms-gone');
    expect((await group.innerText()).replace(/\s+/g, ' ')).toMatch(
      /Plate over the fabric limit · Big iron · raised at \d\d:01:00\. Highest 385 °F\. Examine the area as the manual says\./,
    );
    // What was to be done at once is not to be done any more.
    expect(await group.innerText()).not.toContain('Lift the iron off');
    await group.getByRole('button', { name: /^Acknowledge/ }).click();
    await expect
      .poll(() => daemon.posted.map(({ body }) => body['kind']))
      .toEqual(['over-limit', 'heading-for-limit', 'unattended']);
    // A key takes the one that stands.
    await page.keyboard.press('a');
    await expect.poll(() => daemon.posted.at(-1)?.body['kind']).toBe('wet-cement');
  }, 30_000);

  it('one that the plate has overtaken points to what is to be done now', async () => {
    const heading = alarm({ kind: 'heading-for-limit', priority: 2 });
    const card = (page: Page) => page.locator('[data-kind=heading-for-limit]');
    const { page, change } = await bench.show(live([probe(383)], [alarm(), heading]));
    expect(await card(page).innerText()).toContain('It has passed the limit since');
    expect(await card(page).innerText()).not.toContain('will pass the fabric limit shortly');
    await change(live([probe(350)], [heading]));
    await expect.poll(() => card(page).innerText()).toContain('Lift the iron off the work now');
  }, 30_000);

  it('keeps the focus in the panel as the button goes, and on no other one', async () => {
    const [first, second] = [alarm(), alarm({ kind: 'dwell', priority: 2, peakC: null })];
    const { page, daemon, change } = await bench.show(live([probe(383)], [first, second]));
    await page
      .getByRole('button', { name: /^Acknowledge/ })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => daemon.posted.length).toBe(1);
    await change(live([probe(383)], [{ ...first, state: 'acknowledged' }, second]));
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('data-testid'));
    await expect.poll(focused).toBe('over-all');
    await page.keyboard.press('Tab');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
      .toBe('Acknowledge: Iron rests on one spot');
  }, 30_000);

  it('that another page has acknowledged meanwhile is what was asked for: nothing is said', async () => {
    const { page, daemon, change } = await bench.show(scenes['over-limit']);
    daemon.answering = () => ({ status: 409, body: { error: { message: 'Already seen.', where: '' } } });
    const refused = page.waitForResponse(/acknowledge/);
    await page.route('**/acknowledge', async (route) => {
      await change(live([probe(383)], [alarm({ state: 'acknowledged' })]));
      await page.locator('[data-state=acknowledged]').waitFor();
      await route.continue();
    });
    await page.getByRole('button', { name: /^Acknowledge/ }).click();
    await (await refused).finished();
    await page.evaluate(() => new Promise(requestAnimationFrame));
    expect(await page.getByTestId('notice').count()).toBe(0);
    expect(daemon.posted).toHaveLength(1);
  }, 30_000);

  it('shows the daemon’s refusal until it is read', async () => {
    const { page, daemon } = await bench.show(scenes['over-limit']);
    daemon.answering = () => ({
      status: 409,
      body: { error: { message: 'Already seen by another page.', where: '' } },
    });
    await page.getByRole('button', { name: /^Acknowledge/ }).click();
    const notice = page.getByTestId('notice');
    await notice.waitFor();
    expect(await notice.innerText()).toContain('Already seen by another page.');
    await notice.getByRole('button').click();
    await notice.waitFor({ state: 'detached' });
  }, 30_000);

  it('says where it took effect but could not be written down', async () => {
    const { page, daemon } = await bench.show(scenes['over-limit']);
    daemon.answering = ({ body }) => ({
      status: 200,
      body: { commandId: body['commandId'], session: null, kept: false },
    });
    await page.getByRole('button', { name: /^Acknowledge/ }).click();
    await page.getByTestId('notice').waitFor();
    expect(await page.getByTestId('notice').innerText()).toContain('could not be written to the book');
  }, 30_000);
});
