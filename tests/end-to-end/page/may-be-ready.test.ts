import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { coatsAnswer, drying, due, mayBeReady, standsStill } from '../../fixtures/coats.ts';
import { alarm } from '../../fixtures/scenes.ts';
import { now, showCoats, turn, turnSoundOn } from './at-coats.ts';
import { Bench } from './bench.ts';
import { listening, loudness, settled } from './listening.ts';

/** A coat that may be ready: its sound, its note on every view, and the voice. */

const bench = Bench.ofFile();

describe('what may be ready', () => {
  it('sounds once, is told on every view with the way to the bench, and not again after a reload', async () => {
    const shown = await showCoats(bench, [drying], { before: listening });
    const { page } = shown;
    await turnSoundOn(page);
    expect(await loudness(page, 600)).toBe(0);
    const heard = loudness(page, 2500);
    await turn(shown, 2, [{ ...drying, state: 'may-be-ready' }]);
    expect(await heard).toBeGreaterThan(0.02);
    const note = page.getByTestId('ready-note');
    expect(await note.innerText()).toContain(
      'May be ready, test it: Left aileron, upper side, leading edge (ready for the iron).',
    );
    await settled(page, 600);
    const again = loudness(page, 1500);
    await turn(shown, 3, [{ ...drying, state: 'due' }]);
    expect(await again).toBe(0);
    await page.reload();
    await note.waitFor();
    await page.mouse.click(5, 300);
    await expect.poll(() => page.getByTestId('sound').getAttribute('data-state')).toBe('on');
    expect(await loudness(page, 1200)).toBe(0);
    await note.getByRole('link', { name: 'To the Bench' }).click();
    await page.getByTestId('coat').waitFor();
    expect(await note.count()).toBe(0);
    await page.goBack();
    await note.getByRole('button').click();
    await expect.poll(() => note.count()).toBe(0);
    await page.reload();
    await page.getByTestId('plate').waitFor();
    await expect.poll(() => shown.daemon.coats.reads).toBeGreaterThanOrEqual(5);
    expect(await note.count()).toBe(0);
  }, 60_000);

  it('is silent where sound is off, and is not made up for later', async () => {
    const shown = await showCoats(bench, [mayBeReady], { before: listening });
    await shown.page.getByTestId('ready-note').waitFor();
    expect(await loudness(shown.page, 600)).toBe(0);
    await turnSoundOn(shown.page);
    expect(await loudness(shown.page, 1200)).toBe(0);
  }, 40_000);

  const voices = `
    globalThis.spoken = [];
    globalThis.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
    Object.defineProperty(window, 'speechSynthesis', { value: Object.assign(new EventTarget(), {
      getVoices: () => [
        { name: 'fetched', lang: 'en-US', localService: false },
        { name: 'other', lang: 'nb-NO', localService: true },
        { name: 'own', lang: 'en-GB', localService: true },
      ],
      speak: ({ text, voice }) => globalThis.spoken.push([voice.name, text]),
      cancel: () => globalThis.spoken.push('hushed'),
    }) });`;
  const spoken = (page: Page) =>
    page.evaluate(() => (globalThis as unknown as { spoken: readonly unknown[] }).spoken);

  it('waits while an alarm sounds, and is spoken by a voice of the device where the user wants that', async () => {
    const shown = await showCoats(bench, [drying], { before: voices, hash: '#setup/screen' });
    const { page, change } = shown;
    await turnSoundOn(page);
    const part = page.getByTestId('spoken');
    await part.getByRole('button', { name: 'Try the voice' }).click();
    await part.getByRole('button', { name: 'Speak', exact: true }).click();
    await expect
      .poll(() => spoken(page))
      .toEqual([['own', 'Left aileron, leading edge, may be ready. Test it.']]);
    const soundsAlarm = { ...now, alarms: [alarm()] };
    await change(soundsAlarm);
    await expect.poll(() => page.getByTestId('sound').getAttribute('data-sounding')).toBe('act-now');
    // What was being said ends as the alarm begins.
    expect((await spoken(page)).slice(1)).toEqual(['hushed']);
    shown.daemon.coats.coats = coatsAnswer([mayBeReady, standsStill], { revision: 2 });
    const { situation } = now;
    const work = { ...situation.work, coatRevision: 2 };
    await change({ ...soundsAlarm, situation: { ...situation, work } });
    await page.getByTestId('ready-note').waitFor();
    expect(await spoken(page)).toHaveLength(2);
    await change({ ...now, situation: { ...situation, work } });
    await expect
      .poll(() => spoken(page))
      .toEqual([
        expect.anything(),
        'hushed',
        ['own', 'Left aileron, upper side, rib tape 3 may be ready for the iron. Test it.'],
      ]);
  }, 60_000);

  it('is not said of a coat that was touched or done with while an alarm sounded', async () => {
    const shown = await showCoats(bench, [drying], { before: voices, hash: '#setup/screen' });
    const { page, change } = shown;
    await turnSoundOn(page);
    await page.getByTestId('spoken').getByRole('button', { name: 'Speak', exact: true }).click();
    const { situation } = now;
    const at = (coatRevision: number) => ({
      situation: { ...situation, work: { ...situation.work, coatRevision } },
    });
    const soundsAlarm = { ...now, alarms: [alarm()] };
    await change(soundsAlarm);
    await expect.poll(() => page.getByTestId('sound').getAttribute('data-sounding')).toBe('act-now');
    shown.daemon.coats.coats = coatsAnswer([mayBeReady, due], { revision: 2 });
    await change({ ...soundsAlarm, ...at(2) });
    await page.getByTestId('ready-note').getByText('Right flap').waitFor();
    shown.daemon.coats.coats = coatsAnswer([due], { revision: 3 });
    await change({ ...soundsAlarm, ...at(3) });
    await expect.poll(() => page.getByTestId('ready-note').innerText()).not.toContain('rib tape 3');
    await change({ ...now, ...at(3) });
    await expect
      .poll(async () => (await spoken(page)).filter((one) => one !== 'hushed'))
      .toEqual([['own', 'Right flap, outer face, trailing edge may be set to touch. Test it.']]);
  }, 60_000);

  it('several at once are one sentence', async () => {
    const shown = await showCoats(bench, [drying], { before: voices, hash: '#setup/screen' });
    await turnSoundOn(shown.page);
    await shown.page.getByTestId('spoken').getByRole('button', { name: 'Speak', exact: true }).click();
    await turn(shown, 2, [due, mayBeReady, { ...drying, state: 'may-be-ready' }]);
    await expect
      .poll(() => spoken(shown.page))
      .toEqual([
        [
          'own',
          'These may be ready, test them: Right flap, outer face, trailing edge (set to touch); Left aileron, upper side, rib tape 3 (ready for the iron); Left aileron, upper side, leading edge (ready for the iron).',
        ],
      ]);
  }, 40_000);

  it('is not spoken until that is chosen, and where there is no voice of the device that is said', async () => {
    const shown = await showCoats(bench, [drying], { before: voices });
    await turnSoundOn(shown.page);
    await turn(shown, 2, [mayBeReady]);
    await shown.page.getByTestId('ready-note').waitFor();
    await settled(shown.page);
    expect(await spoken(shown.page)).toEqual([]);
    const none = voices
      .replace("{ name: 'other', lang: 'nb-NO', localService: true },", '')
      .replace("{ name: 'own', lang: 'en-GB', localService: true },", '');
    const without = await showCoats(bench, [drying], { before: none, hash: '#setup/screen' });
    await expect
      .poll(() => without.page.getByTestId('spoken').innerText())
      .toContain('This browser has no voice of this device');
  }, 40_000);
});
