import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { coatCommandSchema } from '../../../shared/messages/cure.ts';
import {
  cementList,
  coat,
  coatsAnswer,
  drying,
  due,
  fourCoats,
  generic,
  inMin,
  mayBeReady,
  solvent,
  standsStill,
} from '../../fixtures/coats.ts';
import { atBench, pieceScenes } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron } from '../../fixtures/pieces.ts';
import { alarm, probe } from '../../fixtures/scenes.ts';
import { Bench, type Shown, type ShowOptions } from './bench.ts';
import type { FakeDaemon } from './fake-daemon.ts';
import { listening, loudness, settled } from './listening.ts';
import { pressableWhen } from './settling.ts';

/** Coats on the other views: wet places of a piece, the question about vapour, what is told as it may be ready. */

let bench: Bench;
beforeAll(async () => {
  bench = await Bench.make();
}, 120_000);
afterEach(() => bench.clear());
afterAll(() => bench.close());

const now = atBench(onAileron());

const show = (
  coats: readonly (typeof drying)[],
  { fire = [], ...options }: ShowOptions & { readonly fire?: readonly string[] } = {},
): Promise<Shown> =>
  bench.show(now, {
    arrange: (daemon) => {
      daemon.pieces.keep(demoPieces, [aileronHeat]);
      daemon.cements.keep(cementList.cements);
      daemon.coats.coats = coatsAnswer(coats, { fire });
    },
    ...options,
  });

/** The coats are now like this, and the page is told so. */
async function turn(
  { daemon, change }: Shown,
  revision: number,
  coats: readonly (typeof drying)[],
  fire: readonly string[] = [],
): Promise<void> {
  daemon.coats.coats = coatsAnswer(coats, { revision, fire });
  await change(atBench(onAileron(), { coatRevision: revision }));
}

const actsOf = ({ posted }: FakeDaemon) =>
  posted.filter(({ path }) => path === '/api/coats').map(({ body }) => coatCommandSchema.parse(body).act);
const said = (daemon: FakeDaemon) => expect.poll(() => actsOf(daemon));
const turnOn = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^Sound off/ }).click();
  await expect.poll(() => page.getByTestId('sound').getAttribute('data-state')).toBe('on');
  await settled(page, 800);
};

describe('wet cement on the sheets of a piece', () => {
  const area = (page: Page, id: string) => page.locator(`.work-view [data-area="${id}"]`);

  it('is hatched and named with its likely time; a coat on a whole side is on all of it', async () => {
    const { page, complaints } = await show(fourCoats, {
      hash: '#piece',
      viewport: { width: 1440, height: 900 },
    });
    const edge = area(page, '1-edge-r0c0');
    await expect.poll(() => edge.locator('rect').getAttribute('fill')).toBe('url(#hatch-wet)');
    await expect.poll(() => edge.innerText()).toMatch(/^wet, \d\d:50\s+leading edge\s+1/);
    expect(await edge.getAttribute('aria-label')).toMatch(
      /^wet, \d\d:50 leading edge 1 tack, wet cement, ready for the iron about \d\d:50, bonded edge/,
    );
    expect(await area(page, '1-tape-r1c9').getAttribute('data-wet')).toBe('true');
    expect(await area(page, '1-edge-r9c0').getAttribute('data-wet')).toBe('false');
    expect(await page.locator('.work-view [data-testid="sheet-2"] [data-wet="true"]').count()).toBe(7);
    expect(await area(page, '2-cloth-r1c1').getAttribute('aria-label')).toContain(
      'wet cement, not ready for the iron in this air',
    );
    expect(await page.getByTestId('wet-elsewhere').innerText()).toMatch(
      /^Wet elsewhere on this piece: upper side, rib tape 3 \(about \d\d:19\); upper side, leading edge \(about \d\d:50\); lower side\.$/,
    );
    expect(await page.getByTestId('piece-coats').getByTestId('coat').count()).toBe(3);
    expect(complaints).toEqual([]);
  }, 40_000);

  it('where the iron is, is not elsewhere, and neither is what another piece has', async () => {
    const { page, change } = await show([drying, due], { hash: '#piece' });
    await page.getByTestId('wet-elsewhere').waitFor();
    await change(atBench(onAileron({ area: '1-edge-r0c0', areaName: 'leading edge' })));
    await expect.poll(() => page.getByTestId('wet-elsewhere').count()).toBe(0);
  }, 40_000);

  it('on an area is elsewhere where no area is named; on the whole side it is here', async () => {
    const whole = coat({ id: 'whole', area: null, placeName: 'Left aileron, upper side' });
    const { page, change } = await show([drying, whole], { hash: '#piece' });
    await change(atBench(onAileron({ area: null, areaName: null })));
    await expect
      .poll(() => page.getByTestId('wet-elsewhere').innerText())
      .toMatch(/^Wet elsewhere on this piece: upper side, leading edge \(about \d\d:50\)\.$/);
  }, 40_000);

  it('stands still while readings come', async () => {
    const { page, daemon } = await show(fourCoats, { hash: '#piece' });
    await page.getByTestId('wet-elsewhere').waitFor();
    await page.evaluate(() => {
      const counted = { sheets: 0 };
      const part = document.querySelector('.facing');
      if (part === null) throw new Error('no sheets');
      new MutationObserver(() => (counted.sheets += 1)).observe(part, {
        attributes: true,
        childList: true,
        characterData: true,
        subtree: true,
      });
      Object.assign(globalThis, { counted });
    });
    // Nothing but these: what it says by itself would come between.
    daemon.freeze();
    for (let f = 251; f < 271; f++) daemon.say({ kind: 'readings', probes: [probe(f)] });
    await expect.poll(() => page.getByTestId('plate').textContent()).toBe('270');
    expect(
      await page.evaluate(() => (globalThis as unknown as { counted: { sheets: number } }).counted.sheets),
    ).toBe(0);
  }, 40_000);
});

describe('cement on here', () => {
  it('starts the clock of the area under work with the last cement in one press, and is taken back', async () => {
    const { page, daemon } = await show([mayBeReady], { hash: '#piece', hasTouch: true });
    const target = page.getByTestId('cement-here');
    await expect.poll(() => target.innerText()).toContain('middle · Halvorsen seam cement, just now');
    await target.tap();
    // A second tap, before the daemon tells of the coat: no second clock.
    await target.tap();
    expect(await page.getByTestId('start-refused').innerText()).toBe(
      'Not started again: the clock of Halvorsen seam cement on Left aileron, upper side: middle was started within the last minute.',
    );
    const last = page.getByTestId('coat-last');
    expect(await last.innerText()).toMatch(
      /You said: Halvorsen seam cement on Left aileron, upper side: middle, put on \d\d:2\d\./,
    );
    await last.getByRole('button').tap();
    await said(daemon).toEqual([
      {
        kind: 'start',
        cement: 'shop-solvent',
        piece: 'left-aileron',
        places: [{ side: 1, area: '1-cloth-r1c7' }],
        agoS: 0,
      },
      { kind: 'take-back', of: daemon.posted[0]?.body['commandId'] },
    ]);
    // What was taken back can be started again.
    await target.tap();
    await said(daemon).toHaveLength(3);
    expect(await page.getByTestId('start-refused').innerText()).toBe('');
  }, 40_000);

  it('is not started again where another page has just started it, and is where the daemon refused it', async () => {
    const here = { area: '1-cloth-r1c7', startedAt: inMin(0) };
    const shown = await show([mayBeReady, { ...mayBeReady, ...here, id: 'coat-here' }], { hash: '#piece' });
    const { page, daemon } = shown;
    const target = page.getByTestId('cement-here');
    await expect.poll(() => target.isDisabled()).toBe(false);
    await target.click();
    await page.getByTestId('start-refused').getByText('Not started again').waitFor();
    expect(actsOf(daemon)).toEqual([]);
    await turn(shown, 2, [mayBeReady]);
    await expect.poll(() => page.getByTestId('piece-coats').getByTestId('coat').count()).toBe(1);
    daemon.answering = () => ({ status: 409, body: { error: { message: 'It is archived.', where: '' } } });
    for (let taps = 1; taps < 3; taps++) {
      await target.click();
      await said(daemon).toHaveLength(taps);
      await expect.poll(() => page.getByTestId('notice').count()).toBe(taps);
      await expect.poll(() => page.getByTestId('coat-last').count()).toBe(0);
    }
  }, 40_000);

  it('says that its cement is past its expiry or unconfirmed, as the coat’s card does', async () => {
    const old = { ...solvent, expiresOn: '2026-03-01', source: null };
    const { page } = await show([mayBeReady, drying], {
      hash: '#piece',
      arrange: (daemon) => {
        daemon.pieces.keep(demoPieces, [aileronHeat]);
        daemon.cements.keep([generic, old]);
        daemon.coats.coats = coatsAnswer([drying, { ...mayBeReady, startedAt: inMin(-1) }]);
      },
    });
    const target = page.getByTestId('cement-here');
    await expect
      .poll(() => target.innerText())
      .toMatch(/Halvorsen seam cement, just now\s+unconfirmed\s+past its expiry/);
    const cards = page.getByTestId('piece-coats').getByTestId('coat');
    expect(await cards.nth(1).innerText()).toContain('past its expiry');
    expect(await cards.nth(0).innerText()).not.toContain('past its expiry');
    expect(await cards.nth(0).innerText()).toContain('unconfirmed');
  }, 40_000);

  it('is on the whole side where no area is marked, and can’t be where no piece is in hand or no cement was used', async () => {
    const { page, daemon, change } = await show([], { hash: '#piece' });
    const target = page.getByTestId('cement-here');
    await expect.poll(() => target.innerText()).toContain('choose a cement on the Bench first');
    expect(await target.isDisabled()).toBe(true);
    expect(await page.getByRole('link', { name: 'Another cement, place or time' }).getAttribute('href')).toBe(
      '#bench/left-aileron',
    );
    daemon.coats.coats = coatsAnswer([drying]);
    await change(atBench(onAileron({ area: null, areaName: null }), { coatRevision: 1 }));
    await expect.poll(() => target.isDisabled()).toBe(false);
    await target.click();
    await said(daemon).toMatchObject([{ kind: 'start', places: [{ side: 1, area: null }] }]);
    await change(pieceScenes['none in hand'].live);
    await expect.poll(() => target.isDisabled()).toBe(true);
  }, 40_000);
});

describe('the question about vapour', () => {
  const question = (page: Page) => page.getByTestId('fire-question');

  it('stands over everything on every view, beside an alarm, a coat at a time, and is answered by touch', async () => {
    const shown = await show([mayBeReady, drying], { fire: ['coat-may', 'coat-drying'], hasTouch: true });
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
    await said(daemon).toEqual([{ kind: 'fire-answer', coat: 'coat-may', answer: 'elsewhere' }]);
    // A second press that was meant for the first question answers nothing, neither the next one nor the alarm beside it.
    const next = await pressableWhen(page, '[data-coat="coat-drying"]');
    await turn(shown, 2, [mayBeReady, drying], ['coat-drying']);
    expect(await next()).toBe(0);
    expect(await question(page).innerText()).toContain('leading edge burns');
    await question(page)
      .getByRole('button', { name: /^I stop/ })
      .tap();
    await said(daemon).toMatchObject([{}, { coat: 'coat-drying', answer: 'stopped' }]);
    const gone = await pressableWhen(page, '.over-parts:not(:has([data-testid=fire-question]))');
    await turn(shown, 3, [mayBeReady, drying]);
    expect(await gone()).toBe(0);
  }, 60_000);

  it('is answered by keyboard alone and announced', async () => {
    const { page, daemon } = await show([mayBeReady], { fire: ['coat-may'] });
    await question(page).waitFor();
    expect(await page.getByRole('alert').innerText()).toContain('The vapour of Halvorsen seam cement');
    const name = () => page.evaluate(() => document.activeElement?.textContent ?? '');
    for (let i = 0; i < 20 && !(await name()).startsWith('The iron is off'); i++)
      await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await said(daemon).toEqual([{ kind: 'fire-answer', coat: 'coat-may', answer: 'iron-off' }]);
  }, 40_000);

  it('is seen and not answered where a page may only look; what was answered stands on the coat', async () => {
    const shown = await show([mayBeReady], { fire: ['coat-may'] });
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

describe('what may be ready', () => {
  it('sounds once, is told on every view with the way to the bench, and not again after a reload', async () => {
    const shown = await show([drying], { before: listening });
    const { page } = shown;
    await turnOn(page);
    expect(await loudness(page, 600)).toBe(0);
    const heard = loudness(page, 2500);
    await turn(shown, 2, [{ ...drying, state: 'may-be-ready' }]);
    expect(await heard).toBeGreaterThan(0.02);
    const note = page.getByTestId('ready-note');
    expect(await note.innerText()).toContain(
      'May be ready, test it: Left aileron, upper side, leading edge.',
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
    const shown = await show([mayBeReady], { before: listening });
    await shown.page.getByTestId('ready-note').waitFor();
    expect(await loudness(shown.page, 600)).toBe(0);
    await turnOn(shown.page);
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
    const shown = await show([drying], { before: voices, hash: '#setup/screen' });
    const { page, change } = shown;
    await turnOn(page);
    const part = page.getByTestId('spoken');
    await part.getByRole('button', { name: 'Try the voice' }).click();
    await part.getByRole('button', { name: 'Speak', exact: true }).click();
    expect(await spoken(page)).toEqual([['own', 'Left aileron, leading edge, may be ready. Test it.']]);
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

  it('several at once are one sentence', async () => {
    const shown = await show([drying], { before: voices, hash: '#setup/screen' });
    await turnOn(shown.page);
    await shown.page.getByTestId('spoken').getByRole('button', { name: 'Speak', exact: true }).click();
    await turn(shown, 2, [due, mayBeReady, { ...drying, state: 'may-be-ready' }]);
    await expect
      .poll(() => spoken(shown.page))
      .toEqual([
        [
          'own',
          'These may be ready, test them: Right flap, outer face, trailing edge; Left aileron, upper side, rib tape 3; Left aileron, upper side, leading edge.',
        ],
      ]);
  }, 40_000);

  it('is not spoken until that is chosen, and where there is no voice of the device that is said', async () => {
    const shown = await show([drying], { before: voices });
    await turnOn(shown.page);
    await turn(shown, 2, [mayBeReady]);
    await shown.page.getByTestId('ready-note').waitFor();
    await settled(shown.page);
    expect(await spoken(shown.page)).toEqual([]);
    const none = voices
      .replace("{ name: 'other', lang: 'nb-NO', localService: true },", '')
      .replace("{ name: 'own', lang: 'en-GB', localService: true },", '');
    const without = await show([drying], { before: none, hash: '#setup/screen' });
    await expect
      .poll(() => without.page.getByTestId('spoken').innerText())
      .toContain('This browser has no voice of this device');
  }, 40_000);
});
