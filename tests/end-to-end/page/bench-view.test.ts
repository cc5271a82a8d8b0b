import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { coatCommandSchema } from '../../../shared/messages/cure.ts';
import { air, cementList, coat, coatsAnswer, drying, fourCoats, mayBeReady } from '../../fixtures/coats.ts';
import { atBench } from '../../fixtures/piece-scenes.ts';
import { demoPieces, onAileron } from '../../fixtures/pieces.ts';
import { Bench, type Shown, type ShowOptions } from './bench.ts';
import { agreeing, type FakeDaemon } from './fake-daemon.ts';

/** The Bench view: what dries, what may be ready, and what is said of it, by touch and by keyboard alone. */

let bench: Bench;
beforeAll(async () => {
  bench = await Bench.make();
}, 120_000);
afterEach(() => bench.clear());
afterAll(() => bench.close());

const now = atBench(onAileron());

async function atCoats(coats = fourCoats, options: ShowOptions = {}): Promise<Shown> {
  const { arrange, ...rest } = options;
  const shown = await bench.show(now, {
    hash: '#bench',
    arrange: (daemon) => {
      daemon.pieces.keep(demoPieces);
      daemon.cements.keep(cementList.cements);
      daemon.air.answer = air;
      daemon.coats.coats = coatsAnswer(coats);
      arrange?.(daemon);
    },
    ...rest,
  });
  await shown.page.getByTestId('bench-now').waitFor();
  return shown;
}

/** What was said of coats: each as the daemon's own schema reads it. */
const actsOf = ({ posted }: FakeDaemon) =>
  posted.filter(({ path }) => path === '/api/coats').map(({ body }) => coatCommandSchema.parse(body).act);
const said = (daemon: FakeDaemon) => expect.poll(() => actsOf(daemon));
const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();

describe('what stands on the bench', () => {
  it('what may be ready first, what is next, and a card a coat with hatching, word, range and why', async () => {
    const { page, complaints } = await atCoats();
    expect(await page.getByTestId('bench-now').innerText()).toBe(
      'May be ready, test it: Right flap, outer face, trailing edge; Left aileron, upper side, rib tape 3.',
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
    expect(flat(await cards.nth(3).innerText())).toContain('Stands still: nothing dries in this air');
    expect(flat(await page.getByTestId('bench-air').innerText())).toMatch(
      /64 °F, 97 % humidity, dew point 64 °F, .*typed, \d min ago.*Too humid for cement: 85 % at most.*practice/,
    );
    expect(complaints).toEqual([]);
  }, 40_000);

  it('is read again when the daemon says that it has changed, and not with each reading', async () => {
    const { page, daemon, change } = await atCoats();
    await expect.poll(() => daemon.coats.reads).toBe(1);
    daemon.coats.coats = coatsAnswer([drying]);
    await change(atBench(onAileron(), { coatRevision: 1 }));
    await expect.poll(() => page.getByTestId('coat').count()).toBe(1);
    expect(daemon.coats.reads).toBe(2);
  }, 40_000);

  it('goes by the daemon’s clock: a tablet that is hours off shows the same', async () => {
    const wrong = 'const real = Date.now; Date.now = () => real() - 5 * 3600 * 1000';
    const { page } = await atCoats([drying], { before: wrong });
    expect(await page.getByTestId('coat-wait').innerText()).toMatch(/in (19|20) to (44|45) min/);
  }, 40_000);

  it('says what to do where nothing dries, and what can’t be trusted where a clock was set', async () => {
    const { page, daemon, change } = await atCoats([]);
    expect(await page.getByTestId('bench').innerText()).toContain('Put cement on, then say below');
    daemon.coats.coats = coatsAnswer([drying], {
      clock: { at: '2026-03-04T13:00:00Z', byMs: 7_200_000, while: 'off' },
      amiss: ['A coat on Left aileron is of a cement that is gone.'],
    });
    await change(atBench(onAileron(), { coatRevision: 1 }));
    await page.getByTestId('coats-clock').waitFor();
    expect(await page.getByTestId('coats-clock').innerText()).toContain('stood 2 h behind');
    expect(await page.getByTestId('coats-amiss').innerText()).toContain('of a cement that is gone');
  }, 40_000);

  it('view only: nothing that says anything', async () => {
    const { page, change } = await atCoats();
    await change({ ...now, situation: { ...now.situation, viewOnly: true } });
    await expect.poll(() => page.getByTestId('start-coats').count()).toBe(0);
    expect(await page.getByTestId('bench').getByRole('button').count()).toBe(0);
  }, 40_000);
});

describe('what one finds of a coat', () => {
  it('is said by touch and taken back where it stands; ends are taken back below', async () => {
    const { page, daemon } = await atCoats([mayBeReady, drying], {
      hasTouch: true,
      viewport: { width: 390, height: 844 },
    });
    const place = mayBeReady.placeName;
    await page.getByRole('button', { name: `dry now ready for the iron: ${place}` }).tap();
    await page.getByRole('button', { name: /^Take back: dry now/ }).tap();
    await page.getByRole('button', { name: `still tacky: ${place}` }).tap();
    await page.getByRole('button', { name: `done with it: ${place}` }).tap();
    const last = page.getByTestId('coat-last');
    expect(await last.innerText()).toContain(`You said: done with ${place}.`);
    await last.getByRole('button').tap();
    await page.getByRole('button', { name: `was a mistake: ${drying.placeName}` }).tap();
    await expect.poll(() => actsOf(daemon).length).toBe(6);
    const ids = daemon.posted.map(({ body }) => body['commandId']);
    expect(actsOf(daemon)).toEqual([
      { kind: 'check', coat: 'coat-may', stage: 'ready-for-iron', found: 'dry' },
      { kind: 'take-back', of: ids[0] },
      { kind: 'check', coat: 'coat-may', stage: 'ready-for-iron', found: 'tacky' },
      { kind: 'end', coat: 'coat-may', why: 'done' },
      { kind: 'take-back', of: ids[3] },
      { kind: 'end', coat: 'coat-drying', why: 'mistake' },
    ]);
  }, 40_000);

  it('can be taken back after a reload', async () => {
    const { page, daemon } = await atCoats([mayBeReady]);
    await page.getByRole('button', { name: /^dry now/ }).click();
    await said(daemon).toHaveLength(1);
    await page.reload();
    await page.getByRole('button', { name: /^Take back: dry now/ }).click();
    await said(daemon).toMatchObject([{ kind: 'check' }, { kind: 'take-back' }]);
  }, 40_000);

  it('while the daemon is gone is not sent later, and says why', async () => {
    const { page, daemon } = await atCoats([mayBeReady]);
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    expect(await page.getByTestId('bench').innerText()).toContain('As it was read last');
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

describe('starting coats', () => {
  it('several at once, with another cement, so many minutes ago', async () => {
    const { page, daemon } = await atCoats([], { viewport: { width: 1440, height: 900 } });
    const start = page.getByTestId('start-coats');
    expect(await page.getByTestId('start-clock').count()).toBe(0);
    await start.getByRole('button', { name: /^Generic water-borne/ }).click();
    expect(await start.getByRole('button', { name: /^Generic water-borne/ }).innerText()).toContain(
      'unconfirmed',
    );
    expect(await start.getByRole('button', { name: 'Old tin' }).count()).toBe(0);
    await start.getByTestId('sheet-1').locator('[data-area="1-edge-r0c0"]').click();
    await start.getByTestId('sheet-1').locator('[data-area="1-edge-r1c0"]').click();
    await start.getByRole('button', { name: 'The whole side: lower side' }).click();
    await start.getByRole('button', { name: 'so long ago' }).click();
    await page.getByTestId('start-clock').click();
    await page.getByText('Write minutes from 0 to 43200').waitFor();
    await page.getByLabel('Minutes ago').fill('12,5');
    expect(await page.getByTestId('start-summary').innerText()).toBe(
      'Generic water-borne on Left aileron, upper side: leading edge; root edge and Left aileron, lower side: the whole side, put on 12,5 min ago.',
    );
    await page.getByRole('button', { name: 'Start 3 clocks' }).click();
    await said(daemon).toEqual([
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
    await page.getByTestId('coat-last').getByRole('button').click();
    await said(daemon).toHaveLength(2);
  }, 40_000);

  it('by keyboard alone, with the cement used last', async () => {
    const { page, daemon } = await atCoats([mayBeReady], { hash: '#bench/right-flap' });
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('data-area') ?? '');
    const pressed = () => page.evaluate(() => document.activeElement?.getAttribute('data-testid') ?? '');
    for (let i = 0; i < 60 && (await focused()) === ''; i++) await page.keyboard.press('Tab');
    expect(await focused()).toBe('1-cloth-r1c1');
    await page.keyboard.press('ArrowUp');
    expect(await focused()).toBe('1-edge-r0c0');
    await page.keyboard.press('Enter');
    for (let i = 0; i < 10 && (await pressed()) !== 'start-clock'; i++) await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await said(daemon).toEqual([
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
    const { page, daemon } = await atCoats([mayBeReady]);
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
    const { page } = await atCoats([coat({})], {
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
