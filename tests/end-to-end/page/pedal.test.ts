import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { alarm, scenes } from '../../fixtures/scenes.ts';
import { Bench } from './bench.ts';

/** The lesson in which a pedal is taught: it takes the next key, so it must not outlast what its user sees of it. */

const bench = Bench.ofFile();

const begun = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Teach the pedal' }).click();
  await page.getByText('Press the pedal now.').waitFor();
};

const pedalOf = (page: Page): Promise<string | null> => page.getByTestId('pedal').getAttribute('data-key');

describe('the lesson of the pedal', () => {
  it.each(['iron', 'setup/irons'])(
    'ends where its page is left for %s',
    async (elsewhere) => {
      const { page, daemon } = await bench.show(scenes['over-limit'], { hash: '#setup/screen' });
      await begun(page);
      await page.locator(`a[href="#${elsewhere}"]`).click();
      await expect.poll(() => page.getByTestId('pedal').count()).toBe(0);
      await page.keyboard.press('a');
      await expect.poll(() => daemon.posted.at(-1)?.path).toBe('/api/alarms/acknowledge');
      await page.evaluate(() => (location.hash = '#setup/screen'));
      await page.getByRole('button', { name: 'Teach the pedal' }).waitFor();
      expect(await pedalOf(page)).toBe('');
    },
    30_000,
  );

  it('ends where an alarm is raised: the press that follows is meant for that', async () => {
    const { page, daemon, change } = await bench.show(scenes['in-stage'], { hash: '#setup/screen' });
    await begun(page);
    await change({ ...scenes['in-stage'], alarms: [alarm()] });
    await page.getByRole('button', { name: 'Teach the pedal' }).waitFor();
    await page.keyboard.press('a');
    await expect.poll(() => daemon.posted.at(-1)?.path).toBe('/api/alarms/acknowledge');
    expect(await pedalOf(page)).toBe('');
  }, 30_000);

  it('can be held while an alarm stands that nobody has seen', async () => {
    const { page } = await bench.show(scenes['over-limit'], { hash: '#setup/screen' });
    await begun(page);
    await page.keyboard.press('F9');
    await expect.poll(() => pedalOf(page)).toBe('F9');
  }, 30_000);
});
