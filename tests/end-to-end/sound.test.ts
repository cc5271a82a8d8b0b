import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build, type Rolldown } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lengthS, type PatternName, patternNames, patterns } from '../../dashboard/sound/patterns.ts';
import type { Player } from '../../dashboard/sound/player.ts';
import { listening, loudness } from './page/listening.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { alarmCard, launchBrowser, openPage, part } from './support/page.ts';
import { startProgram } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const RATE = 48_000;
const alarms = ['act-now', 'act-soon', 'know'] as const;

interface WithPlayer {
  readonly sound: { readonly Player: typeof Player };
}

describe('each sound as Chromium renders it', () => {
  let page: Page;
  beforeAll(async () => {
    page = await browser.newPage();
    await page.addScriptTag({ content: await playerScript() });
  });

  /** The first cycle of a pattern and a little of the second, stopped after `stopS` if that is given. */
  async function render(name: PatternName, stopS: number | null = null): Promise<Float32Array> {
    const { cycleS } = patterns[name];
    const seconds = stopS === null ? cycleS + lengthS(patterns[name]) + 0.1 : 0.3;
    const asked = { name, seconds, rate: RATE, stopS };
    const text = await page.evaluate(async ({ name, seconds, rate, stopS }) => {
      const context = new OfflineAudioContext(1, Math.ceil(seconds * rate), rate);
      const player = new (globalThis as unknown as WithPlayer).sound.Player(context, 1);
      player.repeat(name);
      if (stopS !== null)
        void context.suspend(stopS).then(() => {
          player.quiet();
          return context.resume();
        });
      const bytes = new Uint8Array((await context.startRendering()).getChannelData(0).buffer);
      let text = '';
      for (let i = 0; i < bytes.length; i += 8192)
        text += String.fromCharCode(...bytes.subarray(i, i + 8192));
      return btoa(text);
    }, asked);
    return new Float32Array(new Uint8Array(Buffer.from(text, 'base64')).buffer);
  }

  const whole = new Map<PatternName, Promise<Float32Array>>();
  const rendered = (name: PatternName): Promise<Float32Array> => {
    const known = whole.get(name) ?? render(name);
    whole.set(name, known);
    return known;
  };

  it.each(patternNames)(
    '%s: loud in its notes, silent in its rests, repeated, and never clipping',
    async (name) => {
      const pattern = patterns[name];
      const samples = await rendered(name);
      expect(highest(samples)).toBeLessThanOrEqual(1);
      expect(highest(samples)).toBeGreaterThan(pattern.peak * 0.9);
      for (const cycle of [0, 1]) {
        const cycleS = cycle * pattern.cycleS;
        for (const note of pattern.notes) {
          const from = cycleS + note.startS;
          expect(rms(stretch(samples, from, from + note.lengthS))).toBeGreaterThan(pattern.peak / 8);
        }
      }
      const rest = stretch(samples, lengthS(pattern) + 0.02, pattern.cycleS - 0.02);
      expect(rest.length).toBeGreaterThan(0);
      expect(highest(rest)).toBeLessThan(0.001);
    },
  );

  it.each(alarms)('%s: its energy is where a compressor’s is not, in several partials', async (name) => {
    const pattern = patterns[name];
    const samples = await rendered(name);
    for (const { startS, lengthS, hz } of pattern.notes) {
      const note = stretch(samples, startS, startS + lengthS);
      for (const { ratio } of pattern.partials) expect(at(hz * ratio, note)).toBeGreaterThan(0.02);
      for (const low of [50, 100, 200, 400]) expect(at(low, note)).toBeLessThan(0.02);
    }
  });

  it('no two are alike in rhythm or in pitch', async () => {
    const all = await Promise.all(alarms.map(async (name) => (await rendered(name)).slice(0, RATE)));
    const rhythms = all.map((samples) =>
      Array.from({ length: 20 }, (_, i) =>
        rms(samples.slice(i * 2400, (i + 1) * 2400)) > 0.03 ? '#' : '.',
      ).join(''),
    );
    expect(new Set(rhythms).size).toBe(3);
    const pitches = alarms.map((name) => patterns[name].notes.map(({ hz }) => hz));
    for (const [i, samples] of all.entries())
      for (const [j, own] of pitches.entries()) {
        const strength = Math.max(...own.map((hz) => at(hz, stretch(samples, 0, 0.5))));
        if (i === j) expect(strength).toBeGreaterThan(0.05);
        else expect(strength).toBeLessThan(0.05);
      }
  });

  it.each(alarms)('%s: stops at once in the midst of a note, without a click', async (name) => {
    const stopS = 0.064;
    const samples = await render(name, stopS);
    const grains = stretch(samples, stopS, stopS + 0.04);
    expect(rms(stretch(samples, 0.02, stopS))).toBeGreaterThan(0.05);
    expect(highest(samples.slice(Math.ceil((stopS + 0.04) * RATE)))).toBe(0);
    // It falls from one sample to the next by no more than its highest partial does.
    const steps = grains.map((sample, i) => Math.abs(sample - (grains[i - 1] ?? sample)));
    const playing = stretch(samples, 0.02, stopS);
    const usual = playing.map((sample, i) => Math.abs(sample - (playing[i - 1] ?? sample)));
    expect(highest(steps)).toBeLessThanOrEqual(highest(usual) * 1.1);
  });
});

describe('an alarm that nobody would hear', () => {
  it('is said on every page, by the API and to the handle, until a page has its sound on; and again when it goes', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 22 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    const hearing = async () => (await program.api.live()).situation.hearing;
    await until('a cold plate is read', async () => (await program.api.probe())?.hot === false);
    const page = await openPage(browser, program.address);
    await page.addInitScript(listening);
    await page.reload();
    const other = await openPage(browser, program.address);
    expect(await hearing()).toEqual({ armedPages: 0, unheard: false });
    expect(await part(page, 'unheard').count()).toBe(0);

    await board.bring(121);
    await until('the API says it', async () => (await hearing()).unheard);
    await Promise.all([page, other].map((one) => part(one, 'unheard').waitFor()));
    await until('the handle hears of it', () => board.heard.includes('heard=0\n'));

    await page.getByRole('button', { name: /^Sound off/ }).click();
    await until('the page counts', async () => (await hearing()).armedPages === 1);
    expect(await hearing()).toEqual({ armedPages: 1, unheard: false });
    await part(other, 'unheard').waitFor({ state: 'detached' });
    await until('the handle hears that it is over', () => board.heard.includes('heard=1\n'));
    expect(linesOf(board)).toEqual(['heard=0', 'heard=1']);

    await board.bring(197);
    const card = alarmCard(page, 'over-limit', 'unacknowledged');
    await card.waitFor();
    expect(await part(page, 'sound').getAttribute('data-sounding')).toBe('act-now');
    expect(await loudness(page, 1500)).toBeGreaterThan(0.05);
    // Acknowledged on the other page, with whatever else stands by then: this one falls silent too.
    const unseen = async () =>
      (await program.api.live()).alarms.filter(({ state }) => state === 'unacknowledged').length;
    while ((await unseen()) > 0) {
      const most = await unseen();
      await other
        .getByRole('button', { name: /^Acknowledge/ })
        .first()
        .click();
      await until('it is acknowledged', async () => (await unseen()) < most);
    }
    await alarmCard(page, 'over-limit', 'acknowledged').waitFor();
    await page.locator('[data-testid="sound"][data-sounding=""]').waitFor();
    // Longer than the longest pause between two notes of what could sound here.
    expect(await until('the last sound has died away', async () => (await loudness(page, 100)) === 0)).toBe(
      true,
    );
    expect(await loudness(page, 3500)).toBe(0);

    const before = linesOf(board).length;
    await page.context().close();
    await until('the closed tab is missed', async () => (await hearing()).armedPages === 0);
    await until('the handle hears of it again', () => linesOf(board).slice(before).includes('heard=0'));
    await part(other, 'unheard').waitFor();
  });

  it('a page that stands still counts no more, though its connection is open, and counts again when it goes on', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 121 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    const armed = async () => (await program.api.live()).situation.hearing.armedPages;
    const page = await openPage(browser, program.address);
    await page.getByRole('button', { name: /^Sound off/ }).click();
    await until('the page counts', async () => (await armed()) === 1);
    const going = page.evaluate((ms) => {
      const endMs = performance.now() + ms;
      while (performance.now() < endMs);
    }, 15_000);
    await until('the page is missed', async () => (await armed()) === 0);
    await going;
    await until('the page counts again', async () => (await armed()) === 1);
  });
});

/** What the handle was told of being heard, in order. */
const linesOf = (board: Board): string[] =>
  board.heard.split('\n').filter((line) => line.startsWith('heard='));

/** The page's player as a script for any page, as `sound`. */
async function playerScript(): Promise<string> {
  const built = (await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      lib: {
        entry: join(import.meta.dirname, '../../dashboard/sound/player.ts'),
        name: 'sound',
        formats: ['iife'],
      },
    },
  })) as Rolldown.RolldownOutput[];
  return built[0]?.output[0].code ?? '';
}

const stretch = (samples: Float32Array, fromS: number, toS: number): Float32Array =>
  samples.slice(Math.floor(fromS * RATE), Math.ceil(toS * RATE));

function highest(samples: Float32Array): number {
  return samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
}

const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length));

/** Amplitude at one frequency, by a discrete Fourier sum: 1 for a full sine that fills the stretch. */
function at(hz: number, samples: Float32Array): number {
  let re = 0;
  let im = 0;
  for (const [i, sample] of samples.entries()) {
    re += sample * Math.cos((2 * Math.PI * hz * i) / RATE);
    im += sample * Math.sin((2 * Math.PI * hz * i) / RATE);
  }
  return (2 * Math.hypot(re, im)) / samples.length;
}
