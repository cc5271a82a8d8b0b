import { describe, expect, it } from 'vitest';
import type { DeviceLive } from '../../../shared/messages/live.ts';
import { device, live, type SceneName, scenes } from '../../fixtures/scenes.ts';
import { violations } from '../support/axe.ts';
import { Bench } from './bench.ts';

/** Every state of the page in a real browser: complete, without a violation, at every width. */

const bench = Bench.ofFile();

const names = Object.keys(scenes) as SceneName[];
const small = {
  viewport: { width: 320, height: 640 },
  colorScheme: 'dark',
  reducedMotion: 'reduce',
} as const;
const large = { viewport: { width: 1440, height: 900 }, colorScheme: 'light' } as const;

describe.each([
  ['a large light screen', large],
  ['a small dark one', small],
] as const)('on %s', (_, options) => {
  it('every state passes axe-core, breaks no policy and never scrolls sideways', async () => {
    const { page, change, complaints } = await bench.show(scenes['no-device'], options);
    const found: Record<string, unknown> = {};
    const fine: Record<string, unknown> = {};
    for (const name of names) {
      await change(scenes[name]);
      await page.evaluate(() => {
        for (const part of document.querySelectorAll('details')) part.open = true;
      });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      found[name] = { violations: await violations(page), over: Math.max(0, over) };
      fine[name] = { violations: [], over: 0 };
    }
    expect(found).toEqual(fine);
    expect(complaints).toEqual([]);
  }, 120_000);
});

describe('what stands on the page', () => {
  it('where no line could be used: why, what to do, and the way to its lines', async () => {
    const none = (over: Partial<DeviceLive>) =>
      live([], [], { irons: [], devices: [device({ linesAccepted: 0, rejected: [], ...over })] });
    const rejected = [{ cause: 'too-long' as const, count: 40, lastRaw: 'garbage' }];
    const { page, change } = await bench.show(none({ rejected }));
    const nothing = page.getByTestId('nothing');
    await nothing.getByText('Lines arrive, but none could be used yet. Lines have no end').waitFor();
    await change(none({}));
    await nothing.getByText('nothing has come from it yet').waitFor();
    await change(none({ linesAccepted: 12 }));
    await nothing.getByText('None of them tells a plate’s temperature yet.').waitFor();
    await nothing.getByRole('link').click();
    await page.getByTestId('device-card').waitFor();
  }, 30_000);

  it('in a stage: the number, the allowance, the sentence, the limits, the recording', async () => {
    const { page } = await bench.show(scenes['in-stage']);
    await expect.poll(() => page.getByTestId('plate').textContent()).toBe('252');
    expect(await page.getByTestId('standing').textContent()).toBe('in initial shrink');
    expect(await page.getByTestId('hot').textContent()).toBe('HOT');
    const text = await page.locator('main').innerText();
    for (const part of [
      '±4 °F allowance, not measured',
      'Big iron is in initial shrink, steady.',
      'fabric limit 375 °F',
      'warned from 371 °F',
      'cement limit 325 °F',
      'final shrink 335 to 365 °F',
    ])
      expect(text.replace(/\s+/g, ' ')).toContain(part);
    expect(await page.getByTestId('recording').textContent()).toMatch(/^Recording since \d\d:\d\d:\d\d$/);
    expect(await page.getByTestId('alarm').count()).toBe(0);
    expect(await page.title()).toBe('in initial shrink · soleplate');
  }, 30_000);

  it('over the limit: title, cause, consequence, what to do, since when, how it stands', async () => {
    const { page } = await bench.show(scenes['over-limit']);
    const card = page.getByTestId('alarm');
    expect(await card.getAttribute('data-kind')).toBe('over-limit');
    expect(await card.getAttribute('data-state')).toBe('unacknowledged');
    const text = (await card.innerText()).replace(/\s+/g, ' ');
    for (const part of [
      'Plate over the fabric limit',
      'Act now',
      'Lift the iron off',
      'Highest so far 386 °F',
    ])
      expect(text).toContain(part);
    expect(text).toMatch(/Otherwise: Fabric loses strength .* standing since \d\d:\d\d:\d\d \(4\d s\)/);
    expect(await page.getByTestId('standing').textContent()).toBe('over the fabric limit');
    expect(await page.title()).toBe('! Plate over the fabric limit · soleplate');
    const announced = page.getByRole('alert');
    expect(await announced.textContent()).toContain(
      'Plate over the fabric limit: Big iron. Lift the iron off',
    );
    expect(await announced.textContent()).not.toContain('383');
  }, 30_000);

  it('silenced, and seen: in plain words, without what can’t be done any more', async () => {
    const { page } = await bench.show(scenes.silenced);
    expect(await page.getByTestId('alarm').innerText()).toMatch(/standing, silenced until \d\d:21:00/);
    expect(await page.getByRole('button', { name: /^Silence/ }).count()).toBe(0);
    const seen = await bench.show(scenes['device-lost']);
    expect(await seen.page.getByTestId('alarm').innerText()).toContain('standing, seen');
    expect(await seen.page.getByRole('button', { name: /^Acknowledge/ }).count()).toBe(0);
  }, 30_000);

  it('on a phone the plate temperature stays in sight beside an alarm, and one that is gone takes less room', async () => {
    const { page, daemon } = await bench.show(scenes['over-limit'], {
      viewport: { width: 390, height: 844 },
    });
    const now = page.getByTestId('plate');
    expect(await now.textContent()).toBe('383');
    expect((await now.boundingBox())?.y).toBeLessThan(100);
    const standing = (await page.getByTestId('alarm').boundingBox())?.height ?? 0;
    const [over] = scenes['over-limit'].alarms;
    if (over === undefined) return expect.unreachable();
    daemon.say({ kind: 'alarm', change: 'cleared', alarm: { ...over, state: 'returned-unacknowledged' } });
    await page.locator('[data-state="returned-unacknowledged"]').waitFor();
    expect((await page.getByTestId('alarm').boundingBox())?.height).toBeLessThan(0.75 * standing);
    expect(await page.getByRole('button', { name: /^Acknowledge/ }).count()).toBe(1);
  }, 30_000);

  it('no reading: the fault, what it means, what to do, and no number', async () => {
    const { page } = await bench.show(scenes['no-reading']);
    expect(await page.getByTestId('plate').textContent()).toBe('Probe open');
    expect(await page.getByTestId('standing').textContent()).toBe('no reading');
    const texts = await Promise.all(
      [page.getByTestId('raised'), page.locator('main')].map((part) => part.innerText()),
    );
    const text = texts.join(' ');
    for (const part of [
      'circuit is broken',
      'Look at the clamp',
      'treat the plate as hot',
      'Last valid reading 12 s ago',
    ])
      expect(text).toContain(part);
    expect(await page.getByTestId('hot').count()).toBe(1);
  }, 30_000);

  it('simulated: over everything, beside the number, and in the title; unset and unconfirmed said', async () => {
    const { page } = await bench.show(scenes.simulated);
    await page.mouse.wheel(0, 4000);
    expect(await page.getByTestId('simulated').evaluate((band) => band.getBoundingClientRect().top)).toBe(0);
    expect(await page.title()).toMatch(/^SIMULATED · /);
    const text = await page.locator('main').innerText();
    for (const part of ['SIMULATED', 'cement limit not set', 'Unconfirmed limits'])
      expect(text).toContain(part);
  }, 30_000);

  it('several irons and probes: the hottest large, each with its number or what it lacks', async () => {
    const { page } = await bench.show(scenes['two-irons']);
    expect(await page.getByTestId('plate').textContent()).toBe('304');
    expect(await page.getByTestId('other-plate').allTextContents()).toEqual(['301°F', 'Probe silent']);
  }, 30_000);

  it('view only: nothing to press but what concerns this page: its sound and its unit', async () => {
    const { page } = await bench.show(scenes['view-only']);
    expect(await page.getByTestId('view-only').isVisible()).toBe(true);
    const buttons = page.getByRole('button');
    expect(await buttons.allTextContents()).toEqual(['Sound off Turn sound on', '°F', '°C']);
    expect(await page.getByTestId('hot').count()).toBe(0);
  }, 30_000);

  it('not recording: said as a note, with the reason', async () => {
    const { page } = await bench.show(scenes['not-recording']);
    expect(await page.getByTestId('not-kept').innerText()).toContain('The disk is full.');
    expect(await page.getByTestId('recording').textContent()).toContain('Not recording');
    expect(await page.getByRole('button', { name: 'on its rest' }).isDisabled()).toBe(true);
  }, 30_000);

  it('devices: lines used, missed and rejected by cause with the last one', async () => {
    const { page } = await bench.show(scenes['in-stage']);
    await page.getByTestId('devices').locator('summary').click();
    await page.getByTestId('devices').locator('.device').waitFor();
    const text = await page.getByTestId('devices').innerText();
    for (const part of [
      '5120',
      '3 × checksum does not match',
      'p=1 n=77 t=12\\x001.4*5B',
      'carry a checksum',
    ])
      expect(text).toContain(part);
  }, 30_000);
});

describe('targets', () => {
  it.each(['over-limit', 'waiting-for-choice', 'in-stage'] as const)(
    'are at least 48 px either way: %s',
    async (name) => {
      const { page } = await bench.show(scenes[name], small);
      for (const target of await page.locator('button:visible, summary:visible').all()) {
        const box = await target.boundingBox();
        expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(48);
      }
    },
    30_000,
  );
});
