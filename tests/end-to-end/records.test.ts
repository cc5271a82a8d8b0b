import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { itemListSchema, itemSchema } from '../../shared/messages/items.ts';
import { traceSchema } from '../../shared/messages/trace.ts';
import { formatTemperature } from '../../shared/units/temperature.ts';
import { refusalOf } from './support/api.ts';
import { violations } from './support/axe.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { launchBrowser, openPage, part } from './support/page.ts';
import { type Program, startProgram, verify } from './support/program.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

interface Recorded {
  readonly program: Program;
  readonly data: string;
  readonly session: string;
}

/** A session with one crossing of the limit that was not on the rest, and an end. */
async function recorded(): Promise<Recorded> {
  const folder = freshFolder();
  const data = join(folder, 'data');
  const board = new Board(join(folder, 'port'), { plateC: 120 });
  await board.plug();
  const program = await startProgram({ data, args: ['--serial', board.path] });
  const session = await until('a session is recorded', () => program.api.running());
  await board.bring(198);
  await until('the alarm stands', () => program.api.alarm('over-limit'));
  await until('its highest is kept', async () => (await program.api.session(session))?.peakC === 198);
  await board.bring(150);
  await until('it is over', async () => {
    const found = await program.api.alarmFindings(session, 'over-limit');
    return found.some(({ change }) => change === 'cleared');
  });
  await program.api.post(`/api/sessions/${session}/stop`, {});
  return { program, data, session };
}

const get = async (program: Program, path: string): Promise<unknown> =>
  (await fetch(program.address + path)).json();
const itemsOf = async (program: Program) => itemListSchema.parse(await get(program, '/api/items')).items;

describe('records', () => {
  it('say what to do while there are none', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 22 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    const page = await openPage(browser, `${program.address}/#records`);
    await part(page, 'no-sessions').waitFor();
    expect(await part(page, 'no-sessions').innerText()).toContain('Recording starts by itself');
    expect(await violations(page)).toEqual([]);
  });

  it('show a session with its trace, findings and facts, by keyboard alone, and verify it', async () => {
    const { program, session, data } = await recorded();
    const page = await openPage(browser, `${program.address}/#records`);
    const row = page.locator(`[data-testid="session"][data-id="${session}"]`);
    await row.focus();
    await expect.poll(() => row.innerText()).toContain('peak 388 °F');
    await page.keyboard.press('Enter');
    await page.locator('[data-testid="trace"][data-complete="true"]').waitFor();
    const whole = await part(page, 'trace-span').innerText();

    // The highest raw reading is the highest drawn, whole and near.
    const frame = page.getByRole('group', { name: /^Trace of/ });
    await frame.focus();
    expect(await frame.getByRole('img').getAttribute('aria-label')).toContain('to 388 °F in this span');
    await page.keyboard.press('+');
    await until('a part is shown', async () => (await part(page, 'trace-span').innerText()) !== whole);
    await page.keyboard.press('0');
    await expect.poll(() => part(page, 'trace-span').innerText()).toBe(whole);
    const trace = traceSchema.parse(await get(program, `/api/sessions/${session}/trace?points=7`));
    expect(Math.max(...(trace.probes[0]?.maxC ?? []).map((c) => c ?? 0))).toBe(198);

    // From finding to finding; what is chosen is said.
    await page.keyboard.press('n');
    const first = await until('a finding is chosen', () => part(page, 'finding-chosen').innerText());
    await page.keyboard.press('n');
    await until('the next is chosen', async () => (await part(page, 'finding-chosen').innerText()) !== first);
    const findings = await part(page, 'finding').allInnerTexts();
    expect(findings.join('\n')).toContain('Plate over the fabric limit: raised');
    expect(findings.join('\n')).toMatch(/Plate over the fabric limit: gone, peak 388 °F/);

    const facts = await page.locator('dl.facts').first().innerText();
    const stored = await program.api.session(session);
    expect(facts).toContain('UNCONFIRMED');
    expect(facts).toContain('warned 7 °F under a limit');
    expect(await part(page, 'seal').innerText()).toBe(stored?.seal);

    const verifyTarget = page.getByRole('button', { name: 'Verify' });
    await verifyTarget.focus();
    await page.keyboard.press('Enter');
    await page.locator('[data-testid="verified"][data-stand="verified"]').waitFor();
    expect(await part(page, 'verified').innerText()).toContain('The chain of seals holds');
    expect(await page.getByRole('link', { name: 'Readings as CSV' }).getAttribute('href')).toBe(
      `/api/sessions/${session}/readings.csv`,
    );
    expect(await verify(session, data)).toMatchObject({ code: 0 });
  });

  it('have an address each, which survives a reload, leads back, and says where there is no such session', async () => {
    const { program, session } = await recorded();
    const page = await openPage(browser, `${program.address}/#records/${session}`);
    await page.locator('[data-testid="trace"][data-complete="true"]').waitFor();
    await page.reload();
    await page.locator('[data-testid="trace"][data-complete="true"]').waitFor();
    await page.getByRole('link', { name: 'All sessions' }).click();
    await page.locator(`[data-testid="session"][data-id="${session}"]`).waitFor();
    await page.goBack();
    await page.locator('[data-testid="trace"]').waitFor();
    await page.goto(`${program.address}/#records/of-another-book`);
    await part(page, 'session-unknown').getByText('The book has no such session.').waitFor();
    expect(await violations(page)).toEqual([]);
  });

  it('are zoomed by dragging over a span', async () => {
    const { program, session } = await recorded();
    const page = await openPage(browser, `${program.address}/#records`);
    await page.locator(`[data-testid="session"][data-id="${session}"]`).click();
    await page.locator('[data-testid="trace"][data-complete="true"]').waitFor();
    const whole = await part(page, 'trace-span').innerText();
    const frame = page.getByRole('group', { name: /^Trace of/ });
    await frame.scrollIntoViewIfNeeded();
    const box = await frame.boundingBox();
    if (box === null) throw new Error('the trace is not to be seen');
    const [left, middle, right] = [0.4, 0.5, 0.6].map((share) => box.x + box.width * share);
    const y = box.y + box.height / 2;
    await page.mouse.move(left ?? 0, y);
    await page.mouse.down();
    await page.mouse.move(middle ?? 0, y);
    await page.mouse.move(right ?? 0, y);
    await page.mouse.up();
    const near = await until('a part is shown', async () => {
      const text = await part(page, 'trace-span').innerText();
      return text === whole ? null : text;
    });
    expect(near).not.toBe(whole);
    await page.getByRole('button', { name: 'Whole session' }).click();
    await expect.poll(() => part(page, 'trace-span').innerText()).toBe(whole);
  });

  it('keep an area suspect open until a named person says what was found, once', async () => {
    const { program, session, data } = await recorded();
    const before = await program.api.session(session);
    const page = await openPage(browser, program.address);
    await part(page, 'suspect').waitFor();
    expect(await part(page, 'suspect').innerText()).toContain('1 area suspect: see Records');
    await page.goto(`${program.address}/#records`);
    const card = part(page, 'item');
    await card.waitFor();
    expect(await card.innerText()).toMatch(/over the fabric limit of 375 °F, peak 388 °F ±\d/);
    expect(await violations(page)).toEqual([]);

    await card.getByRole('button', { name: /^Close this item: / }).click();
    const form = page.getByRole('form', { name: /^Close this item: / });
    await form.getByLabel('Your name').fill('A. Tester');
    await form.getByRole('button').click();
    await form.getByText('Both the name and what was found are needed').waitFor();
    expect((await itemsOf(program))[0]?.closing).toBeNull();
    await form.getByLabel('What you found').fill('Weave even, no melting.');
    expect(await violations(page)).toEqual([]);
    await form.getByRole('button').click();
    await part(page, 'items').waitFor({ state: 'detached' });
    await part(page, 'items-closed').locator('summary').click();
    expect(await part(page, 'item-closed').innerText()).toMatch(
      /Closed by A\. Tester.*Weave even, no melting\./s,
    );

    const [item] = await itemsOf(program);
    expect(item?.closing).toMatchObject({ by: 'A. Tester', found: 'Weave even, no melting.' });
    const path = `/api/items/${item?.id ?? ''}/closing`;
    const second = await program.api.post(path, { by: 'B. Other', found: 'x', commandId: 'other' });
    expect(second.status).toBe(409);
    expect(refusalOf(second)).toContain('A. Tester');
    expect((await program.api.session(session))?.seal).toBe(before?.seal);

    // It is kept over a restart, and a retry after it is answered as before.
    await program.end('SIGTERM');
    expect(await verify(session, data)).toMatchObject({ code: 0 });
  });

  it('answer a closing that is sent again as the first time, over a restart too', async () => {
    const { program, data } = await recorded();
    const [item] = await itemsOf(program);
    const path = `/api/items/${item?.id ?? ''}/closing`;
    const closing = { by: 'A. Tester', found: 'Weave even.', commandId: 'closing-1' };
    const first = itemSchema.parse((await program.api.post(path, closing)).body);
    await program.end('SIGTERM');
    const again = await startProgram({ data, args: ['--simulate'] });
    const retried = await again.api.post(path, closing);
    expect(retried.status).toBe(200);
    expect(itemSchema.parse(retried.body)).toEqual(first);
  });

  it.each([
    { width: 1440, height: 900, colorScheme: 'dark' },
    { width: 320, height: 640, colorScheme: 'light' },
  ] as const)(
    'fit on $width pixels, $colorScheme, and keep nobody out',
    async ({ width, height, colorScheme }) => {
      const { program, session } = await recorded();
      const page = await openPage(browser, `${program.address}/#records`, colorScheme);
      await page.setViewportSize({ width, height });
      await page.locator(`[data-testid="session"][data-id="${session}"]`).click();
      await page.locator('[data-testid="trace"][data-complete="true"]').waitFor();
      expect(await violations(page)).toEqual([]);
      expect(await sideways(page)).toBeLessThanOrEqual(0);
      const small = await page
        .locator('.records button, .records a')
        .evaluateAll(
          (targets) =>
            targets
              .map((one) => one.getBoundingClientRect())
              .filter(({ width: w, height: h }) => w < 48 || h < 48).length,
        );
      expect(small).toBe(0);
    },
  );
});

describe('the last minutes of the plate', () => {
  it('stand below it with what was before the page was opened, and are said in words', async () => {
    const folder = freshFolder();
    const board = new Board(join(folder, 'port'), { plateC: 120 });
    await board.plug();
    const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
    await until('a session is recorded', () => program.api.running());
    await board.bring(180);
    await board.bring(130);
    const peakC = await until('the peak is in the book', async () => {
      const [session] = await program.api.sessions();
      return session?.peakC !== undefined && session.peakC !== null && session.peakC > 178 && session.peakC;
    });
    const peak = formatTemperature(peakC, 'F');
    const page = await openPage(browser, program.address);
    const recent = part(page, 'recent').getByRole('img');
    await until('what was before is there', async () =>
      (await recent.getAttribute('aria-label'))?.includes(`to ${peak} in this span`),
    );
  });
});
