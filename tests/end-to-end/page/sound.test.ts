import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { soundFrameSchema } from '../../../shared/messages/hearing.ts';
import type { Live } from '../../../shared/messages/live.ts';
import { alarm, iron, live, probe, scenes } from '../../fixtures/scenes.ts';
import { violations } from '../support/axe.ts';
import { Bench } from './bench.ts';
import { listening, loudness, settled } from './listening.ts';

/** The sound of the page in a real Chromium, by what reaches the output. */

const bench = Bench.ofFile();

const show = (scene: Live, before = '') => bench.show(scene, { before: `${listening};${before}` });
const sound = (page: Page) => page.getByTestId('sound');
const stateOf = (page: Page) => sound(page).getAttribute('data-state');
const soundingOf = (page: Page) => sound(page).getAttribute('data-sounding');
const turnOn = (page: Page) => page.getByRole('button', { name: /^Sound off/ }).click();
const calm = live([probe(252)]);

const maySleep = (page: Page) => page.getByTestId('may-sleep').count();

const whyOf = (page: Page) => page.getByTestId('screen').getAttribute('data-state');

describe('sound', () => {
  it('is off, hatched, and silent over an alarm until one tap', async () => {
    const { page } = await show(scenes['over-limit']);
    expect(await stateOf(page)).toBe('off');
    expect(await sound(page).innerText()).toContain('Sound off');
    expect(await sound(page).locator('.hatch').count()).toBe(1);
    expect(await loudness(page, 400)).toBe(0);
    await turnOn(page);
    await expect.poll(() => stateOf(page)).toBe('on');
    expect(await loudness(page, 1500)).toBeGreaterThan(0.05);
    expect(await sound(page).innerText()).toContain('Sound on');
    expect(await sound(page).locator('.hatch').count()).toBe(0);
  }, 30_000);

  it('is repeated, and stops at once when acknowledged, silenced, gone or cleared', async () => {
    const { daemon, page } = await show(scenes['over-limit']);
    await turnOn(page);
    for (let i = 0; i < 2; i += 1) expect(await loudness(page, 1300)).toBeGreaterThan(0.05);
    for (const [change, over] of [
      ['acknowledged', { state: 'acknowledged' }],
      ['silenced', { silencedUntil: '2026-03-04T13:21:00Z' }],
      ['cleared', { state: 'returned-unacknowledged' }],
      ['cleared', { state: 'normal' }],
    ] as const) {
      daemon.show(scenes['over-limit']);
      await expect.poll(() => soundingOf(page)).toBe('act-now');
      expect(await loudness(page, 1300)).toBeGreaterThan(0.05);
      daemon.say({ kind: 'alarm', change, alarm: alarm(over) });
      await expect.poll(() => soundingOf(page)).toBe('');
      await settled(page);
      expect(await loudness(page, 1300)).toBe(0);
    }
  }, 60_000);

  it('is that of the most urgent alarm, and goes on with the next', async () => {
    const below = alarm({ kind: 'above-band', priority: 1, peakC: null });
    const { daemon, page } = await show(live([probe(383)], [below, alarm()]));
    await turnOn(page);
    expect(await soundingOf(page)).toBe('act-now');
    daemon.say({ kind: 'alarm', change: 'acknowledged', alarm: alarm({ state: 'acknowledged' }) });
    await expect.poll(() => soundingOf(page)).toBe('know');
    expect(await loudness(page, 600)).toBeGreaterThan(0.02);
  }, 30_000);

  it('goes by the keyboard alone', async () => {
    const { page } = await show(scenes['over-limit']);
    await page.getByRole('button', { name: /^Sound off/ }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => stateOf(page)).toBe('on');
    expect(await loudness(page, 1500)).toBeGreaterThan(0.05);
  }, 30_000);

  it('that the browser stops is shown as stopped, told to the daemon, and goes on at any key', async () => {
    const { daemon, page } = await show(scenes['over-limit']);
    await turnOn(page);
    await expect.poll(() => lastSaid(daemon.heard)).toBe(true);
    await page.evaluate(() => (globalThis as unknown as Listening).outputs.at(-1)?.suspend());
    await expect.poll(() => stateOf(page)).toBe('stopped');
    expect(await sound(page).innerText()).toContain('Sound stopped');
    await expect.poll(() => lastSaid(daemon.heard)).toBe(false);
    expect(await loudness(page, 400)).toBe(0);
    await page.keyboard.press('Shift');
    await expect.poll(() => stateOf(page)).toBe('on');
    expect(await loudness(page, 1500)).toBeGreaterThan(0.05);
    await expect.poll(() => lastSaid(daemon.heard)).toBe(true);
  }, 30_000);

  it('that does not go on though the browser says it runs is shown as stopped', async () => {
    const { page } = await show(calm);
    await turnOn(page);
    await expect.poll(() => stateOf(page)).toBe('on');
    await page.evaluate(() => {
      for (const output of (globalThis as unknown as Listening).outputs)
        Object.defineProperty(output, 'currentTime', { get: () => 7 });
    });
    await expect.poll(() => stateOf(page), { timeout: 6000 }).toBe('stopped');
    await page.mouse.click(5, 5);
    await expect.poll(() => stateOf(page)).toBe('on');
    expect(await page.evaluate(() => (globalThis as unknown as Listening).outputs.length)).toBe(2);
  }, 30_000);

  it('that was wanted before is wanted again, and runs at the first tap anywhere', async () => {
    const { page } = await show(scenes['over-limit'], REMEMBERED);
    await expect.poll(() => stateOf(page)).toMatch(/stopped|on/);
    await page.mouse.click(5, 300);
    await expect.poll(() => stateOf(page)).toBe('on');
    expect(await loudness(page, 1500)).toBeGreaterThan(0.05);
  }, 30_000);

  it('where the browser has none is said', async () => {
    const { page } = await show(calm, 'delete globalThis.AudioContext');
    expect(await stateOf(page)).toBe('missing');
    expect(await sound(page).innerText()).toContain('No sound here');
  }, 30_000);

  it('works where storage is refused, and says that nothing is kept', async () => {
    const { page } = await show(
      calm,
      'Object.defineProperty(globalThis, "localStorage", { get() { throw new Error("refused"); } })',
    );
    await turnOn(page);
    await expect.poll(() => stateOf(page)).toBe('on');
    await page.getByTestId('sound-settings').locator('summary').click();
    await page.getByTestId('sound-settings').getByText('This browser keeps nothing').waitFor();
  }, 30_000);
});

describe('the daemon lost', () => {
  it('is heard after a while where a plate was hot, until the user wants quiet or it is back', async () => {
    const { daemon, page } = await show(calm);
    await turnOn(page);
    await settled(page);
    await daemon.stop();
    await expect.poll(() => soundingOf(page), { timeout: 10_000 }).toBe('act-soon');
    expect(await loudness(page, 1000)).toBeGreaterThan(0.02);
    await page.getByRole('button', { name: 'Quiet until the daemon is back' }).click();
    await settled(page);
    expect(await loudness(page, 3500)).toBe(0);
    await daemon.start();
    await expect.poll(() => page.getByTestId('link').getAttribute('data-link')).toBe('live');
    await daemon.stop();
    await expect.poll(() => soundingOf(page), { timeout: 10_000 }).toBe('act-soon');
  }, 60_000);
});

describe('the settings of sound', () => {
  it('try each sound, once, and not over an alarm', async () => {
    const { daemon, page } = await show(calm);
    await page.getByTestId('sound-settings').locator('summary').click();
    const button = page.getByTestId('try-act-now');
    expect(await button.isDisabled()).toBe(true);
    await turnOn(page);
    await settled(page, 700);
    for (const name of ['act-now', 'act-soon', 'know']) {
      await page.getByTestId(`try-${name}`).click();
      expect(await loudness(page, 500)).toBeGreaterThan(0.02);
      await settled(page, 900);
      expect(await loudness(page, 1300)).toBe(0);
    }
    daemon.show(scenes['over-limit']);
    await expect.poll(() => button.isDisabled()).toBe(true);
  }, 30_000);

  it('set the loudness, and are kept for the next visit', async () => {
    const { page } = await show(scenes['over-limit']);
    await turnOn(page);
    await page.getByTestId('sound-settings').locator('summary').click();
    const full = await loudness(page, 1300);
    await page.getByRole('button', { name: 'quiet', exact: true }).click();
    await settled(page);
    const low = await loudness(page, 1300);
    expect(low / full).toBeGreaterThan(0.15);
    expect(low / full).toBeLessThan(0.45);
    expect(JSON.parse((await page.evaluate(() => localStorage.getItem('soleplate.sound'))) ?? '')).toEqual({
      wanted: true,
      loudness: 'low',
      tick: false,
    });
    await page.getByRole('button', { name: 'Turn sound off' }).click();
    await expect.poll(() => stateOf(page)).toBe('off');
    expect(await loudness(page, 1300)).toBe(0);
  }, 30_000);

  it('tick while the plate is in the chosen stage, and not beside it, without a number, or without the daemon', async () => {
    const { daemon, page } = await show(calm);
    await turnOn(page);
    await page.getByTestId('sound-settings').locator('summary').click();
    await page.getByRole('button', { name: 'on', exact: true }).click();
    await expect.poll(() => soundingOf(page)).toBe('tick');
    await settled(page, 900);
    const tick = await loudness(page, 4200);
    expect(tick).toBeGreaterThan(0);
    expect(tick).toBeLessThan(0.05);

    daemon.show(live([probe(300)]));
    await expect.poll(() => soundingOf(page)).toBe('');
    daemon.show(live([probe(300)], [], { irons: [iron({ stageId: null })] }));
    await expect.poll(() => soundingOf(page)).toBe('tick');
    daemon.show(live([probe('open')], [], { irons: [iron({ stageId: null })] }));
    await expect.poll(() => soundingOf(page)).toBe('');
    daemon.show(calm);
    await expect.poll(() => soundingOf(page)).toBe('tick');
    daemon.freeze();
    await expect.poll(() => soundingOf(page), { timeout: 6000 }).toBe('');
  }, 30_000);
});

describe('an alarm that nobody would hear', () => {
  const unheard = live([probe(252)], [], { hearing: { armedPages: 0, unheard: true } });

  it('is said in words, with the one thing to do, on every view', async () => {
    const { daemon, page } = await show(unheard);
    const note = page.getByTestId('unheard');
    expect(await note.innerText()).toContain('No page would sound an alarm');
    await note.getByRole('button', { name: 'Turn sound on' }).click();
    await expect.poll(() => lastSaid(daemon.heard)).toBe(true);
    daemon.say({
      kind: 'situation',
      situation: { ...unheard.situation, hearing: { armedPages: 1, unheard: false } },
    });
    await expect.poll(() => note.count()).toBe(0);
    daemon.show(live([], [], { irons: [], devices: [], hearing: { armedPages: 0, unheard: true } }));
    await note.waitFor();
  }, 30_000);

  it('passes axe-core with every part open, at every width', async () => {
    for (const width of [320, 1440]) {
      const { page } = await bench.show(unheard, { viewport: { width, height: 800 } });
      for (const summary of await page.locator('summary').all()) await summary.click();
      expect(await violations(page)).toEqual([]);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
      ).toBeLessThanOrEqual(0);
      for (const target of await page.locator('button, summary').all()) {
        const box = await target.boundingBox();
        expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(48);
      }
    }
  }, 90_000);
});

describe('title and icon', () => {
  it('change while an alarm stands unseen; out of sight the title says how urgent it is', async () => {
    const { daemon, page } = await show(calm);
    const icon = () => page.locator('link[rel="icon"]').getAttribute('href');
    expect(await icon()).toBe('/icon.svg');
    daemon.show(scenes['over-limit']);
    await expect.poll(icon).toBe('/icon-alarm.svg');
    expect(await page.title()).toBe('! Plate over the fabric limit · soleplate');
    await page.evaluate(hide, true);
    await expect.poll(() => page.title()).toBe('ACT NOW Plate over the fabric limit · soleplate');
    await page.evaluate(hide, false);
    await expect.poll(() => page.title()).toBe('! Plate over the fabric limit · soleplate');
    daemon.show(live([probe(383)], [alarm({ state: 'acknowledged' })]));
    await expect.poll(icon).toBe('/icon.svg');
    for (const path of ['/icon.svg', '/icon-alarm.svg'])
      expect((await page.request.get(daemon.address + path)).headers()['content-type']).toBe('image/svg+xml');
  }, 30_000);
});

describe('the screen', () => {
  it('is kept awake where it can be, and asked for again on return', async () => {
    const { page } = await show(calm, WAKE_LOCK);
    await expect.poll(() => whyOf(page)).toBe('awake');
    expect(await maySleep(page)).toBe(0);
    await page.evaluate(() =>
      (globalThis as unknown as Locks).locks.at(-1)?.dispatchEvent(new Event('release')),
    );
    await expect.poll(() => whyOf(page)).toBe('released');
    expect(await maySleep(page)).toBe(1);
    await page.evaluate(hide, true);
    await page.evaluate(hide, false);
    await expect.poll(() => whyOf(page)).toBe('awake');
    expect(await page.evaluate(() => (globalThis as unknown as Locks).locks.length)).toBe(2);
  }, 30_000);

  it('may sleep where it is refused or there is no way: said in words', async () => {
    const refusing = await show(
      calm,
      'Object.defineProperty(navigator, "wakeLock", { value: { request: () => Promise.reject(new Error("no")) } })',
    );
    await expect.poll(() => whyOf(refusing.page)).toBe('refused');
    expect(await refusing.page.getByTestId('may-sleep').innerText()).toBe('This screen may sleep.');
    const without = await show(calm, 'delete Navigator.prototype.wakeLock');
    await expect.poll(() => whyOf(without.page)).toBe('missing');
    expect(await maySleep(without.page)).toBe(1);
    expect(without.complaints).toEqual([]);
  }, 30_000);
});

interface Listening {
  readonly outputs: readonly AudioContext[];
}

interface Locks {
  readonly locks: readonly EventTarget[];
}

/** A wake lock that is always granted; what was granted is in `locks`. */
const WAKE_LOCK = `
  globalThis.locks = [];
  Object.defineProperty(navigator, 'wakeLock', {
    value: { request: async () => { const lock = new EventTarget(); locks.push(lock); return lock; } },
  })`;

const REMEMBERED = `localStorage.setItem('soleplate.sound', '{"wanted":true,"loudness":"full","tick":false}')`;

/** Runs in the page: it believes that it is out of sight, or in sight again. */
function hide(hidden: boolean): void {
  Object.defineProperty(document, 'hidden', { value: hidden, configurable: true });
  document.dispatchEvent(new Event('visibilitychange'));
}

/** Whether the page last said that its sound is on; null before it said anything. All it says has to be as agreed. */
const lastSaid = (heard: readonly string[]): boolean | null =>
  heard.map((text) => soundFrameSchema.parse(JSON.parse(text))).at(-1)?.armed ?? null;
