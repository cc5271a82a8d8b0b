import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  coat,
  coatsAnswer,
  drying,
  due,
  fourCoats,
  generic,
  inMin,
  mayBeReady,
  solvent,
  startedLately,
} from '../../fixtures/coats.ts';
import { atBench, pieceScenes } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron } from '../../fixtures/pieces.ts';
import { probe } from '../../fixtures/scenes.ts';
import { actsOf, showCoats, turn } from './at-coats.ts';
import { Bench } from './bench.ts';
import { settled } from './listening.ts';

/** Coats on the Piece view: wet places on its sheets, and cement that is put on where one works. */

const bench = Bench.ofFile();

describe('wet cement on the sheets of a piece', () => {
  const area = (page: Page, id: string) => page.locator(`.work-view [data-area="${id}"]`);

  it('is hatched and named with its likely time; a coat on a whole side is on all of it', async () => {
    const { page, complaints } = await showCoats(bench, fourCoats, {
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
    const { page, change } = await showCoats(bench, [drying, due], { hash: '#piece' });
    await page.getByTestId('wet-elsewhere').waitFor();
    await change(atBench(onAileron({ area: '1-edge-r0c0', areaName: 'leading edge' })));
    await expect.poll(() => page.getByTestId('wet-elsewhere').count()).toBe(0);
  }, 40_000);

  it('on an area is elsewhere where no area is named; on the whole side it is here', async () => {
    const whole = coat({ id: 'whole', area: null, placeName: 'Left aileron, upper side' });
    const { page, change } = await showCoats(bench, [drying, whole], { hash: '#piece' });
    await change(atBench(onAileron({ area: null, areaName: null })));
    await expect
      .poll(() => page.getByTestId('wet-elsewhere').innerText())
      .toMatch(/^Wet elsewhere on this piece: upper side, leading edge \(about \d\d:50\)\.$/);
  }, 40_000);

  it('stands still while readings come', async () => {
    const { page, daemon } = await showCoats(bench, fourCoats, { hash: '#piece' });
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
    const { page, daemon, change } = await showCoats(bench, [mayBeReady], { hash: '#piece', hasTouch: true });
    const target = page.getByTestId('cement-here');
    await expect.poll(() => target.innerText()).toContain('middle · Halvorsen seam cement, just now');
    await target.tap();
    // A second tap, before the daemon tells of the coat: no second clock.
    await target.tap();
    expect(await page.getByTestId('start-refused').innerText()).toBe(
      'Not started again: the clock of Halvorsen seam cement on Left aileron, upper side: middle was started within the last minute.',
    );
    // The daemon tells of it, from then on.
    const of = String(daemon.posted[0]?.body['commandId']);
    daemon.coats.coats = coatsAnswer([mayBeReady], { started: [{ ...startedLately, of }] });
    await change(atBench(onAileron(), { coatRevision: 2 }));
    const last = page.getByTestId('coat-last');
    await last.waitFor();
    // A press counts once it has stood there for a second.
    await settled(page, 1100);
    await last.getByRole('button').tap();
    await expect
      .poll(() => actsOf(daemon))
      .toEqual([
        {
          kind: 'start',
          cement: 'shop-solvent',
          piece: 'left-aileron',
          places: [{ side: 1, area: '1-cloth-r1c7' }],
          agoS: 0,
        },
        { kind: 'take-back', of },
      ]);
    // What was taken back can be started again.
    await target.tap();
    await expect.poll(() => actsOf(daemon)).toHaveLength(3);
    expect(await page.getByTestId('start-refused').innerText()).toBe('');
  }, 40_000);

  it('is not started again where another page has just started it, and is where the daemon refused it', async () => {
    const here = { area: '1-cloth-r1c7', startedAt: inMin(0) };
    const shown = await showCoats(bench, [mayBeReady, { ...mayBeReady, ...here, id: 'coat-here' }], {
      hash: '#piece',
    });
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
      await expect.poll(() => actsOf(daemon)).toHaveLength(taps);
      await expect.poll(() => page.getByTestId('notice').count()).toBe(taps);
    }
  }, 40_000);

  it('says that its cement is past its expiry or unconfirmed, as the coat’s card does', async () => {
    const old = { ...solvent, expiresOn: '2026-03-01', source: null };
    const { page } = await showCoats(bench, [mayBeReady, drying], {
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
    const { page, daemon, change } = await showCoats(bench, [], { hash: '#piece' });
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
    await expect
      .poll(() => actsOf(daemon))
      .toMatchObject([{ kind: 'start', places: [{ side: 1, area: null }] }]);
    await change(pieceScenes['none in hand'].live);
    await expect.poll(() => target.isDisabled()).toBe(true);
  }, 40_000);
});
