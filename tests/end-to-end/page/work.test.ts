import { describe, expect, it } from 'vitest';
import { alarm, live, probe, SESSION, scenes, VERSION } from '../../fixtures/scenes.ts';
import { Bench } from './bench.ts';
import { agreeing, type FakeDaemon } from './fake-daemon.ts';

/** Working with the page: what is pressed reaches the daemon once, whatever happens on the way. */

const bench = Bench.ofFile();

const idOf = (daemon: FakeDaemon, at: number): unknown => daemon.posted[at]?.body['commandId'];

describe('marks, recording and choosing', () => {
  it('go to the session and the source that they are for', async () => {
    const { page, daemon } = await bench.show(scenes['in-stage']);
    await page.getByRole('button', { name: /^final shrink/ }).click();
    await page.getByRole('button', { name: 'on its rest' }).click();
    await page.getByRole('button', { name: 'Stop recording' }).click();
    await expect.poll(() => daemon.posted.length).toBe(3);
    expect(daemon.posted.map((p) => [p.path, p.body['mark']])).toEqual([
      [`/api/sessions/${SESSION}/marks`, { kind: 'stage', stageId: 'final' }],
      [`/api/sessions/${SESSION}/marks`, { kind: 'place', place: 'on-rest' }],
      [`/api/sessions/${SESSION}/stop`, undefined],
    ]);
    const stopped = await bench.show(scenes['not-recording']);
    await stopped.page.getByRole('button', { name: 'Start recording' }).click();
    await expect
      .poll(() => stopped.daemon.posted[0])
      .toMatchObject({ path: '/api/sessions', body: { iron: 'big' } });
  }, 30_000);

  it('choose a port or the simulated iron by keyboard alone', async () => {
    const { page, daemon } = await bench.show(scenes['waiting-for-choice']);
    // However much stands before it, the first choice is reached by Tab alone.
    const chosen = page.getByTestId('found-port').getByRole('button').first();
    const reached = () => chosen.evaluate((button) => button === document.activeElement);
    for (let i = 0; i < 30 && !(await reached()); i++) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => daemon.posted[0]?.body).toEqual({ kind: 'serial', path: '/dev/ttyUSB0' });
    await page.getByTestId('simulate').press('Space');
    await expect.poll(() => daemon.posted[1]?.body).toEqual({ kind: 'simulate' });
  }, 30_000);
});

describe('the daemon lost', () => {
  it('by silence: within two seconds no number stands as live, and none comes back by itself', async () => {
    const { page, daemon } = await bench.show(scenes['in-stage']);
    await expect.poll(() => page.getByTestId('plate').textContent()).toBe('252');
    daemon.freeze();
    const from = Date.now();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    expect(Date.now() - from).toBeLessThan(2750);
    expect(await page.getByTestId('plate').textContent()).toBe('no reading');
    expect(await page.getByTestId('link').innerText()).toMatch(
      /can’t be reached since \d\d:\d\d:\d\d \(\d+ s\)\./,
    );
    expect(await page.locator('body').innerText()).not.toContain('252');
    expect(await page.title()).toBe('Daemon lost · soleplate');
  }, 30_000);

  it('and back: goes on after the last message it knows, and holds what was pressed meanwhile, once', async () => {
    const { page, daemon } = await bench.show(live([probe(383)], [alarm()]));
    daemon.answering = () => null;
    await page.getByRole('button', { name: 'on its rest' }).click();
    await page.getByTestId('unsent').waitFor();
    expect(await page.getByTestId('unsent').innerText()).toContain('Not sent yet: on its rest (Big iron)');
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByRole('button', { name: /^Acknowledge/ }).click();
    await page.getByTestId('unsent-count').getByText('not sent yet: 2').waitFor();
    daemon.posted.length = 0;
    daemon.answering = agreeing;
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    await expect.poll(() => page.getByTestId('plate').textContent()).toBe('383');
    expect(daemon.connections.at(-1)).toMatch(/^\/stream\?epoch=run-1&after=\d+$/);
    await expect.poll(() => daemon.posted.length, { timeout: 8000 }).toBe(2);
    expect(daemon.posted.map((p) => p.path)).toEqual([
      `/api/sessions/${SESSION}/marks`,
      '/api/alarms/acknowledge',
    ]);
    expect(await page.getByTestId('unsent').count()).toBe(0);
  }, 40_000);

  it('sends a command again under the same id', async () => {
    const { page, daemon } = await bench.show(scenes['in-stage']);
    daemon.answering = (posted) => (daemon.posted.length === 1 ? null : agreeing(posted));
    await page.getByRole('button', { name: 'on its rest' }).click();
    await expect.poll(() => daemon.posted.length, { timeout: 8000 }).toBe(2);
    expect(idOf(daemon, 0)).toBe(idOf(daemon, 1));
  }, 30_000);

  it('never acknowledges another alarm than the one that was pressed', async () => {
    const { page, daemon } = await bench.show(scenes['over-limit']);
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByRole('button', { name: /^Acknowledge/ }).click();
    await page.getByTestId('unsent').waitFor();
    daemon.show(live([probe(385)], [alarm({ since: '2026-03-04T13:40:00Z' })]));
    await daemon.start();
    await page.getByTestId('notice').waitFor();
    expect(await page.getByTestId('notice').innerText()).toContain('The alarm has changed since then');
    expect(daemon.posted).toEqual([]);
  }, 30_000);
});

describe('bad days', () => {
  it('keeps the unit, and says so where the browser refuses to', async () => {
    const { page } = await bench.show(scenes['in-stage']);
    await page.getByRole('button', { name: '°C Celsius' }).click();
    await page.reload();
    await expect.poll(() => page.getByTestId('plate').textContent()).toBe('122');
    const refusing =
      "Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused') } })";
    const refused = await bench.show(scenes['in-stage'], { before: refusing });
    await refused.page.getByRole('button', { name: '°C Celsius' }).click();
    await expect.poll(() => refused.page.getByTestId('plate').textContent()).toBe('122');
    expect(await refused.page.getByTestId('storage-refused').isVisible()).toBe(true);
  }, 30_000);

  it('doesn’t mind a tablet whose clock is wrong by hours', async () => {
    const wrong = 'const real = Date.now; Date.now = () => real() + 5 * 3600e3;';
    const { page } = await bench.show(scenes['over-limit'], { before: wrong, timezoneId: 'UTC' });
    expect(await page.getByTestId('alarm').innerText()).toMatch(/since 13:19:18 \(4\d s\)/);
  }, 30_000);

  it('reloads itself once for another version of the program, then says so; an unsent mark is not lost', async () => {
    const newer = live([probe(252)]);
    const { page, daemon } = await bench.show(newer);
    daemon.answering = () => null;
    await page.getByRole('button', { name: 'on its rest' }).click();
    await page.getByTestId('unsent').waitFor();
    let loads = 0;
    page.on('load', () => {
      loads += 1;
    });
    daemon.show({ ...newer, program: { ...newer.program, version: `${VERSION}-next` } });
    await page.getByTestId('older-page').waitFor();
    expect(loads).toBe(1);
    expect(await page.getByTestId('older-page').innerText()).toContain(`${VERSION}-next`);
    expect(await page.getByTestId('unsent').innerText()).toContain('on its rest');
    daemon.answering = agreeing;
    await expect.poll(() => page.getByTestId('unsent').count(), { timeout: 8000 }).toBe(0);
  }, 30_000);

  it('says so where it can’t read what the daemon sends, and uses none of it', async () => {
    const { page, daemon } = await bench.show(scenes['in-stage']);
    daemon.sayRaw('{"epoch":"run-1","seq":9999,"kind":"readings","probes":[{"plateC":"hot"}]}');
    await page.getByTestId('older-page').waitFor();
    expect(await page.getByTestId('plate').textContent()).toBe('252');
    daemon.sayRaw('not json at all');
    expect(await page.getByTestId('plate').textContent()).toBe('252');
  }, 30_000);
});
