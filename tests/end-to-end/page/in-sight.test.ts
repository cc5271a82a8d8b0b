import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { AlarmLive, Live } from '../../../shared/messages/live.ts';
import { air, cementList, coatsAnswer, fourCoats } from '../../fixtures/coats.ts';
import { atBench } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron, wingHeat } from '../../fixtures/pieces.ts';
import { alarm } from '../../fixtures/scenes.ts';
import { Bench, type Shown } from './bench.ts';

/** Whatever is alarming, asked and noted at once: the plate temperature and the first thing to press stay in sight. */

const bench = Bench.ofFile();

/** Width and height of the screen, and the least size of the plate's digits on it, px. */
const screens = [
  [1440, 900, 120],
  [1024, 768, 96],
  [390, 844, 80],
  [320, 640, 80],
] as const;
/** What stands in the place of the digits where there is no number, px. */
const LEAST_WORDS_PX = 32;

const one = [alarm()];
const three = [
  alarm(),
  alarm({ kind: 'wet-cement', priority: 2, probe: null, peakC: null }),
  alarm({ kind: 'above-band', priority: 1, probe: null, peakC: null, iron: 'small' }),
];

interface Combo {
  readonly alarms: readonly AlarmLive[];
  readonly fire: boolean;
  /** Whether there is a notice, no sound, no record and at last no daemon too. */
  readonly rest: boolean;
}

const combos: Readonly<Record<string, Combo>> = {
  'one alarm': { alarms: one, fire: false, rest: false },
  'three alarms': { alarms: three, fire: false, rest: false },
  'the question about vapour': { alarms: [], fire: true, rest: false },
  'everything at once': { alarms: three, fire: true, rest: true },
};

const base = atBench(onAileron(), {}, 383);

const liveOf = ({ alarms, rest }: Combo, coatRevision: number): Live => ({
  ...base,
  alarms,
  situation: {
    ...base.situation,
    work: { ...base.situation.work, coatRevision },
    hearing: { armedPages: rest ? 0 : 1, unheard: rest },
    keeping: { kept: !rest, detail: rest ? 'The disk is full.' : '' },
  },
});

async function at(width: number, height: number, hash: string): Promise<Shown> {
  return bench.show(base, {
    viewport: { width, height },
    hash,
    arrange: (daemon) => {
      daemon.pieces.keep(demoPieces, [aileronHeat, wingHeat]);
      daemon.cements.keep(cementList.cements);
      daemon.air.answer = air;
    },
  });
}

async function bring({ page, daemon, change }: Shown, combo: Combo, revision: number): Promise<void> {
  const fire = combo.fire ? ['coat-may', 'coat-due'] : [];
  daemon.coats.coats = coatsAnswer(combo.rest ? fourCoats : fourCoats.slice(1, 2), { revision, fire });
  await change(liveOf(combo, revision));
  await expect.poll(() => page.getByTestId('fire-question').count()).toBe(combo.fire ? 1 : 0);
  await expect.poll(() => page.getByTestId('alarm').count()).toBe(combo.alarms.length);
  if (!combo.rest) return;
  if (!page.url().endsWith('#bench')) await page.getByTestId('ready-note').waitFor();
  daemon.freeze();
  await page.locator('[data-testid=link][data-link=lost]').first().waitFor();
  expect(await page.getByTestId('sound').getAttribute('data-state')).toBe('off');
}

/** How much of a part is on the screen and not beneath anything: all of it, none, or what is in the way. */
const seen = (part: Locator): Promise<string> =>
  part.first().evaluate((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    if (left < 0 || top < 0 || right > innerWidth || bottom > innerHeight + 0.5)
      return `outside: ${Math.round(top)} to ${Math.round(bottom)} of ${innerHeight}`;
    const inset = 2;
    const places = [
      [(left + right) / 2, (top + bottom) / 2],
      [left + inset, top + inset],
      [right - inset, bottom - inset],
    ] as const;
    const over = places
      .map(([x, y]) => document.elementFromPoint(x, y))
      .find((one) => one === null || !(element.contains(one) || one.contains(element)));
    return over === undefined ? 'all' : `beneath ${over?.outerHTML.slice(0, 60) ?? 'nothing'}`;
  });

/** The same, once it was scrolled to. */
async function reached(part: Locator): Promise<string> {
  await part.first().evaluate((element) => element.scrollIntoView({ block: 'nearest' }));
  return seen(part);
}

const toAnswer = (page: Page): Locator =>
  page.locator('[data-testid=alarm] .target--main, [data-testid=fire-question] button');

const plateSize = (page: Page): Promise<number> =>
  page.getByTestId('plate').evaluate((plate) => Number.parseFloat(getComputedStyle(plate).fontSize));

describe.each(screens)('on %i by %i', (width, height, leastDigits) => {
  it('the Iron view shows the whole plate temperature and what answers first, however it is scrolled', async () => {
    const shown = await at(width, height, '#iron');
    const { page } = shown;
    const found: Record<string, unknown> = {};
    const right: Record<string, unknown> = {};
    for (const [i, [name, combo]] of Object.entries(combos).entries()) {
      await bring(shown, combo, i + 1);
      const look = async () => [
        await page.getByTestId('plate').count(),
        await seen(page.getByTestId('plate')),
        await seen(toAnswer(page)),
        (await plateSize(page)) >= (combo.rest ? LEAST_WORDS_PX : leastDigits),
      ];
      if (combo.alarms.length > 1)
        expect(await page.getByTestId('alarm').first().innerText()).toContain('1 of 3 alarms');
      const atTop = await look();
      await page.evaluate(() => scrollTo(0, 10_000));
      found[name] = [atTop, await look()];
      await page.evaluate(() => scrollTo(0, 0));
      right[name] = Array.from({ length: 2 }, () => [1, 'all', 'all', true]);
    }
    expect(found).toEqual(right);
    expect(shown.complaints).toEqual([]);
  }, 120_000);

  it('alarms that were all seen leave the plate the largest thing, and room for the page', async () => {
    const shown = await at(width, height, '#iron');
    const { page } = shown;
    const alarms = three.map((one) => ({ ...one, state: 'acknowledged' as const }));
    await bring(shown, { alarms, fire: false, rest: false }, 1);
    expect(await seen(page.getByTestId('plate'))).toBe('all');
    const words = await page
      .locator('[data-testid=alarm] :is(h2, p)')
      .evaluateAll((all) => Math.max(...all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize))));
    expect(await plateSize(page)).toBeGreaterThan(Math.max(leastDigits - 1, 3 * words));
    const header = await page.locator('header').boundingBox();
    expect(header?.y).toBeLessThan(0.7 * height);
  }, 60_000);

  it.each([
    ['#piece', '[data-testid=acts] button'],
    ['#bench', '.coat-answers button, [data-testid=start-clock]'],
  ])(
    'on %s the plate is in sight, and what answers and what is worked with in reach',
    async (hash, main) => {
      const shown = await at(width, height, hash);
      const { page } = shown;
      const found: Record<string, unknown> = {};
      const right: Record<string, unknown> = {};
      for (const [i, [name, combo]] of Object.entries(combos).entries()) {
        await bring(shown, combo, i + 1);
        const targets = await page.locator(main).all();
        expect(targets.length).toBeGreaterThan(1);
        const reaches: string[] = [];
        for (const target of targets) reaches.push(await reached(target));
        const answers = await reached(toAnswer(page));
        found[name] = [await seen(page.getByTestId('plate-now')), answers, reaches];
        right[name] = ['all', 'all', targets.map(() => 'all')];
      }
      expect(found).toEqual(right);
      expect(shown.complaints).toEqual([]);
    },
    120_000,
  );
});

describe('on 1280 by 900, the Bench', () => {
  const hazard = alarm({ kind: 'fire-hazard', probe: null, peakC: null });

  it.each([
    ['asked', [], true],
    ['called out too', [hazard], false],
  ])(
    'shows what may be ready and its answers at once while vapour is %s',
    async (_, alarms, simulated) => {
      const shown = await at(1280, 900, '#bench');
      const { page, daemon, change } = shown;
      daemon.coats.coats = coatsAnswer(fourCoats, { revision: 1, fire: ['coat-may'] });
      const live = liveOf({ alarms, fire: true, rest: false }, 1);
      await change({ ...live, situation: { ...live.situation, simulated } });
      await page.getByTestId('fire-question').waitFor();
      expect(await seen(page.getByTestId('bench-now'))).toBe('all');
      expect(await seen(page.locator('.coat-answers'))).toBe('all');
    },
    60_000,
  );
});
