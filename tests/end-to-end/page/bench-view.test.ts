import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  coatsAnswer,
  drying,
  endedCoat,
  fourCoats,
  mayBeReady,
  stage,
  startedLately,
} from '../../fixtures/coats.ts';
import { atBench } from '../../fixtures/piece-scenes.ts';
import { onAileron } from '../../fixtures/pieces.ts';
import { actsOf, now, showBench } from './at-coats.ts';
import { Bench, type Shown } from './bench.ts';
import { settled } from './listening.ts';

/** The Bench view: what dries, what may be ready, and what is said of it, by touch and by keyboard alone. */

const bench = Bench.ofFile();

/** No press counts so soon after what is under the finger has changed. */
const SETTLES_MS = 1000;
/** For `before`: the page's clock stands still but for what `pass` adds. */
const frozen = 'const at = performance.now(); performance.now = () => at;';
const pass = (page: Page, ms: number): Promise<void> =>
  page.evaluate((ms) => {
    const before = performance.now.bind(performance);
    performance.now = () => before() + ms;
  }, ms);

const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();

describe('what stands on the bench', () => {
  it('what may be ready first, what is next, and a card a coat with hatching, word, range and why', async () => {
    const { page, complaints } = await showBench(bench);
    expect(await page.getByTestId('bench-now').innerText()).toBe(
      'May be ready, test it: Right flap, outer face, trailing edge (set to touch); Left aileron, upper side, rib tape 3 (ready for the iron).',
    );
    expect(await page.getByTestId('bench-next').innerText()).toMatch(
      /^Next: Left aileron, upper side, leading edge, ready for the iron in (19|20) to (44|45) min, likely (29|30)\.$/,
    );
    const cards = page.getByTestId('coat');
    expect(await cards.evaluateAll((all) => all.map((card) => card.getAttribute('data-look')))).toEqual([
      'due',
      'may-be-ready',
      'drying',
      'stands',
    ]);
    const hatches = await cards.evaluateAll((all) =>
      all.map((card) => card.querySelector('rect')?.getAttribute('fill')),
    );
    expect(hatches).toEqual(
      ['coat-due', 'coat-may-be-ready', 'wet', 'coat-stands'].map((name) => `url(#hatch-${name})`),
    );
    const third = flat(await cards.nth(2).innerText());
    expect(third).toContain('Drying ready for the iron: in');
    expect(third).toMatch(/\d\d:40 to \d\d:05, likely \d\d:50/);
    expect(third).toContain('So wide because the air was typed');
    expect(third).toMatch(/Generic water-borne, put on \d\d:08 \(1\d min ago\) unconfirmed/);
    expect(third).toMatch(/set to touch dry, said \d\d:17 ready for an overlay in .* cured in \d+ to \d+ h/);
    expect(flat(await cards.nth(3).innerText())).toContain('Does not dry in this air');
    expect(flat(await page.getByTestId('bench-air').innerText())).toMatch(
      /64 °F, 97 % humidity, 1 °F over the dew point of 64 °F \(typed, \d min ago.*Too humid for cement: 85 % at most.*practice/,
    );
    expect(complaints).toEqual([]);
  }, 40_000);

  it('is read again when the daemon says that it has changed, and not with each reading', async () => {
    const { page, daemon, change } = await showBench(bench);
    await expect.poll(() => daemon.coats.reads).toBe(1);
    daemon.coats.coats = coatsAnswer([drying]);
    await change(atBench(onAileron(), { coatRevision: 1 }));
    await expect.poll(() => page.getByTestId('coat').count()).toBe(1);
    expect(daemon.coats.reads).toBe(2);
  }, 40_000);

  it('goes by the daemon’s clock: a tablet that is hours off shows the same', async () => {
    const wrong = 'const real = Date.now; Date.now = () => real() - 5 * 3600 * 1000';
    const { page } = await showBench(bench, [drying], { before: wrong });
    expect(await page.getByTestId('coat-wait').innerText()).toMatch(/in (19|20) to (44|45) min/);
  }, 40_000);

  it('says what to do where nothing dries, and what can’t be trusted where a clock was set', async () => {
    const { page, daemon, change } = await showBench(bench, []);
    expect(await page.getByTestId('bench').innerText()).toContain('Put cement on, then say below');
    daemon.coats.coats = coatsAnswer([drying], {
      clock: { at: '2026-03-04T13:00:00Z', byMs: 7_200_000, while: 'off' },
      amiss: [{ coat: 'coat-lost', text: 'The coat on Left aileron is of a cement that is gone.' }],
    });
    await change(atBench(onAileron(), { coatRevision: 1 }));
    await page.getByTestId('coats-clock').waitFor();
    expect(await page.getByTestId('coats-clock').innerText()).toContain('stood 2 h behind');
    const amiss = page.getByTestId('coats-amiss');
    expect(await amiss.innerText()).toContain('of a cement that is gone');
    await pass(page, SETTLES_MS);
    await amiss.getByRole('button', { name: /^done with it stops its clock/ }).click();
    await expect.poll(() => actsOf(daemon)).toEqual([{ kind: 'end', coat: 'coat-lost', why: 'done' }]);
  }, 40_000);

  it('view only: nothing that says anything', async () => {
    const { page, daemon, change } = await showBench(bench);
    await change({ ...now, situation: { ...now.situation, viewOnly: true } });
    await expect.poll(() => page.getByTestId('start-coats').count()).toBe(0);
    expect(await page.getByTestId('bench').getByRole('button').count()).toBe(0);
    daemon.coats.coats = coatsAnswer([drying], { started: [startedLately], ended: [endedCoat(1)] });
    await change({
      ...now,
      situation: { ...now.situation, viewOnly: true, work: { ...now.situation.work, coatRevision: 1 } },
    });
    await page.getByTestId('ended-coat').waitFor();
    expect(await page.getByTestId('bench').getByRole('button').count()).toBe(0);
  }, 40_000);
});

describe('what one finds of a coat', () => {
  /** The coats are now like this, and the page is told so. */
  async function turn({ daemon, change }: Shown, revision: number, coats: typeof fourCoats): Promise<void> {
    daemon.coats.coats = coatsAnswer(coats, { revision });
    await change(atBench(onAileron(), { coatRevision: revision }));
  }
  const place = mayBeReady.placeName;
  const button = ({ page }: Shown, name: string) => page.getByRole('button', { name });

  it('is said by touch and taken back on its card, from whichever page it came', async () => {
    const tapped = { ...drying, lastTap: 'said-elsewhere' };
    const shown = await showBench(bench, [mayBeReady, tapped], {
      hasTouch: true,
      viewport: { width: 390, height: 844 },
    });
    const { page, daemon } = shown;
    await pass(page, SETTLES_MS);
    expect(await button(shown, `Take back what was said last: ${place}`).isDisabled()).toBe(true);
    await button(shown, `still tacky: ${place}`).tap();
    await button(shown, `Take back what was said last: ${drying.placeName}`).tap();
    await expect
      .poll(() => actsOf(daemon))
      .toEqual([
        { kind: 'check', coat: 'coat-may', stage: 'ready-for-iron', found: 'tacky' },
        { kind: 'take-back', of: 'said-elsewhere' },
      ]);
    await pass(page, SETTLES_MS);
    await button(shown, `stops its clock and its warnings: ${place}`).tap();
    await button(shown, `was a mistake: ${drying.placeName}`).tap();
    await expect.poll(() => actsOf(daemon).length).toBe(4);
    expect(actsOf(daemon).slice(2)).toEqual([
      { kind: 'end', coat: 'coat-may', why: 'done' },
      { kind: 'end', coat: 'coat-drying', why: 'mistake' },
    ]);
  }, 40_000);

  it('is not said twice by a double tap, nor of the next stage as that comes under the finger', async () => {
    const shown = await showBench(bench, [mayBeReady, drying], { before: frozen });
    const { page, daemon } = shown;
    const card = page.getByTestId('coat').first();
    const dry = card.getByRole('button', { name: /^dry now/ });
    // It came up just now.
    await dry.click();
    await pass(page, SETTLES_MS);
    await dry.dblclick();
    await expect.poll(() => actsOf(daemon)).toHaveLength(1);
    const stages = [...mayBeReady.stages, stage('cured', [60, 90, 120])];
    const cured = { ...mayBeReady, stages, stage: 'cured', state: 'drying', lastTap: 'said-here' } as const;
    await turn(shown, 2, [drying, cured]);
    await expect.poll(() => dry.getAttribute('aria-label')).toBe(`dry now cured: ${place}`);
    await dry.click();
    // What was said of it would have come before this.
    await button(shown, `still tacky: ${drying.placeName}`).click();
    await pass(page, SETTLES_MS);
    await dry.click();
    await expect
      .poll(() => actsOf(daemon))
      .toMatchObject([
        { stage: 'ready-for-iron', found: 'dry' },
        { coat: 'coat-drying', found: 'tacky' },
        { stage: 'cured', found: 'dry' },
      ]);
  }, 40_000);

  it('keeps its card where it stood while somebody taps, and not for longer', async () => {
    const shown = await showBench(bench, [mayBeReady, drying], { before: frozen });
    const { page } = shown;
    const order = () =>
      page.getByTestId('coat').evaluateAll((all) => all.map((card) => card.getAttribute('data-coat')));
    await button(shown, `still tacky: ${drying.placeName}`).click();
    await turn(shown, 2, [drying, { ...mayBeReady, lastTap: 'said-here' }]);
    // That it was read is seen by what can be taken back.
    await expect.poll(() => button(shown, `Take back what was said last: ${place}`).isDisabled()).toBe(false);
    expect(await order()).toEqual(['coat-may', 'coat-drying']);
    await pass(page, 4000);
    await settled(page, 500);
    expect(await order()).toEqual(['coat-may', 'coat-drying']);
    await pass(page, 1000);
    await expect.poll(order).toEqual(['coat-drying', 'coat-may']);
  }, 40_000);

  it('while the daemon is gone is not sent later, and says why', async () => {
    const { page, daemon } = await showBench(bench, [mayBeReady]);
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    expect(await page.getByTestId('bench').innerText()).toContain('As it was read last');
    await pass(page, SETTLES_MS);
    await page.getByRole('button', { name: /^dry now/ }).click();
    await page.getByTestId('unsent').waitFor();
    await page.evaluate(() => {
      const real = performance.now.bind(performance);
      performance.now = () => real() + 61_000;
    });
    await page.getByTestId('notice').waitFor();
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    expect(await page.getByTestId('notice').innerText()).toContain('Touch it again and say how it is.');
    expect(actsOf(daemon)).toEqual([]);
  }, 60_000);
});

describe('what was said lately', () => {
  const rows = (page: Page) => page.getByTestId('ended-coat');

  it('of ended coats stands on the bench, whichever page ended them, each with the way back', async () => {
    const ended = [1, 2, 3, 4, 5].map(endedCoat);
    const { page, daemon } = await showBench(bench, [mayBeReady], {
      before: frozen,
      hasTouch: true,
      arrange: ({ coats }) => (coats.coats = coatsAnswer([mayBeReady], { ended })),
    });
    const part = page.getByTestId('ended-lately');
    expect(flat(await part.innerText())).toMatch(
      /^Ended lately Generic water-borne on Left aileron, rib 1: done with it, \d\d:19 take back .*rib 3: .*2 more$/,
    );
    await part.getByText('2 more').tap();
    await expect.poll(() => rows(page).count()).toBe(5);
    const back = rows(page).nth(4).getByRole('button');
    expect((await back.boundingBox())?.height).toBeGreaterThanOrEqual(48);
    // It came up just now.
    await back.tap();
    await pass(page, SETTLES_MS);
    await back.tap();
    await expect.poll(() => actsOf(daemon)).toEqual([{ kind: 'take-back', of: 'ended-5' }]);
  }, 40_000);

  it('of a start can be taken back while the daemon tells so, but not by the tap that started it', async () => {
    const shown = await showBench(bench, [mayBeReady], {
      before: frozen,
      arrange: ({ coats }) => (coats.coats = coatsAnswer([mayBeReady], { started: [startedLately] })),
    });
    const { page, daemon, change } = shown;
    const last = page.getByTestId('coat-last');
    expect(await last.innerText()).toMatch(
      /^You said: Halvorsen seam cement on Left aileron, rib 1; Left aileron, rib 2, put on \d\d:18\./,
    );
    await last.getByRole('button').click();
    await pass(page, SETTLES_MS);
    await last.getByRole('button').dblclick();
    await expect.poll(() => actsOf(daemon)).toEqual([{ kind: 'take-back', of: 'started-here' }]);
    // Somebody has touched one of its coats.
    daemon.coats.coats = coatsAnswer([mayBeReady], { revision: 2 });
    await change(atBench(onAileron(), { coatRevision: 2 }));
    await expect.poll(() => last.count()).toBe(0);
    expect(actsOf(daemon)).toHaveLength(1);
  }, 40_000);
});

describe('what was tapped before a tablet slept', () => {
  it('is not sent as of now', async () => {
    const { page, daemon } = await showBench(bench, [mayBeReady]);
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await pass(page, SETTLES_MS);
    await page.getByRole('button', { name: /^still tacky/ }).click();
    await page.getByTestId('unsent').waitFor();
    // The tablet sleeps for three hours: its own clock goes on, the page's stands still.
    await page.evaluate(() => {
      const real = Date.now;
      Date.now = () => real() + 3 * 3_600_000;
    });
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    await page.getByTestId('notice').getByText('Touch it again').waitFor();
    await settled(page, 500);
    expect(actsOf(daemon)).toEqual([]);
  }, 60_000);
});
