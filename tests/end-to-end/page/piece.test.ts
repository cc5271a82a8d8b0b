import { describe, expect, it } from 'vitest';
import { atBench, heatWithNotes, item, pieceScenes } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron, wingHeat } from '../../fixtures/pieces.ts';
import { probe } from '../../fixtures/scenes.ts';
import { Bench, type Shown, type ShowOptions } from './bench.ts';
import { agreeing, type FakeDaemon } from './fake-daemon.ts';

/** Working at the bench with the Piece view: what is pressed reaches the daemon once, by touch, by keys, by pedal. */

const bench = Bench.ofFile();

async function atPiece(options: ShowOptions = {}, live = pieceScenes['in hand'].live): Promise<Shown> {
  const shown = await bench.show(live, {
    hash: '#piece',
    arrange: (daemon) => {
      daemon.pieces.keep(demoPieces, [aileronHeat, wingHeat]);
      daemon.items = [item];
    },
    ...options,
  });
  await shown.page.getByTestId('sheet-1').waitFor();
  // Until the iron is known the shipped schedule numbers the stages.
  await shown.page.locator('[data-testid=link][data-link=live]').waitFor();
  return shown;
}

const actsOf = ({ posted }: FakeDaemon): unknown[] =>
  posted.filter(({ path }) => path === '/api/work').map(({ body }) => body['act']);
const said = (daemon: FakeDaemon) => expect.poll(() => actsOf(daemon));
const kinds = (daemon: FakeDaemon) =>
  expect.poll(() => actsOf(daemon).map((act) => (act as { kind: string }).kind));

/** A pedal that sends F9 has been taught to this screen. */
const taught = "localStorage.setItem('soleplate.pedal', 'F9')";

describe('what is said of the work', () => {
  it('by touch: areas and targets, each with the iron that is in hand', async () => {
    const { page, daemon } = await atPiece({ hasTouch: true, viewport: { width: 390, height: 844 } });
    await page.getByTestId('next').tap();
    await page.getByTestId('turned').tap();
    await page.getByTestId('lap-done').tap();
    await page.getByTestId('on-rest').tap();
    await page.getByTestId('undo').tap();
    await page.getByTestId('off-work').tap();
    await page.getByRole('button', { name: /^tip end 2 intermediate shrink, presumed/ }).tap();
    await page.getByRole('button', { name: 'Take up Small iron' }).tap();
    await page.getByRole('button', { name: 'This piece now: Right flap' }).tap();
    await said(daemon).toEqual([
      { kind: 'next' },
      { kind: 'turned' },
      { kind: 'lap-done' },
      { kind: 'on-rest' },
      { kind: 'undo' },
      { kind: 'off-work' },
      { kind: 'area', area: '1-cloth-r1c13' },
      { kind: 'in-hand' },
      { kind: 'piece', piece: 'right-flap' },
    ]);
    expect(daemon.posted.map(({ body }) => body['iron'])).toEqual([...Array(7).fill('big'), 'small', 'big']);
    expect(new Set(daemon.posted.map(({ body }) => body['commandId'])).size).toBe(9);
  }, 40_000);

  it('by keyboard alone: letters, arrow keys from area to area, Enter', async () => {
    const { page, daemon } = await atPiece();
    for (const key of ['n', 't', 'l', 'r', 'u']) await page.keyboard.press(key);
    await kinds(daemon).toEqual(['next', 'turned', 'lap-done', 'on-rest', 'undo']);
    const here = page.getByRole('button', { name: /^here middle 1 initial shrink, .*the iron is here$/ });
    const reached = () => here.evaluate((button) => button === document.activeElement);
    for (let i = 0; i < 30 && !(await reached()); i++) await page.keyboard.press('Tab');
    expect(await reached()).toBe(true);
    // Over the tape to the end behind it.
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => actsOf(daemon).slice(5))
      .toEqual([
        { kind: 'area', area: '1-cloth-r1c1' },
        { kind: 'area', area: '1-edge-r0c0' },
      ]);
  }, 40_000);

  it('letters mark nothing where they are switched off, while a field is typed into, and on other views', async () => {
    const { page, daemon } = await atPiece();
    await page.getByRole('button', { name: 'Tight, by eye and hand: upper side' }).click();
    await page.getByLabel('Your name').fill('');
    await page.keyboard.type('Nutlr');
    await page.getByRole('link', { name: 'Iron', exact: true }).click();
    await page.getByTestId('recording').waitFor();
    await page.keyboard.press('n');
    await page.getByText('Keys', { exact: true }).click();
    await page.getByRole('button', { name: 'Single keys are on' }).click();
    await page.getByRole('link', { name: 'Piece', exact: true }).click();
    await page.getByTestId('acts').waitFor();
    await page.keyboard.press('n');
    await page.getByTestId('undo').click();
    await kinds(daemon).toEqual(['undo']);
  }, 40_000);

  it('by pedal, on every view: next; twice takes back; but first of all it answers an alarm', async () => {
    const { page, daemon, change } = await atPiece({ before: taught });
    await page.getByRole('link', { name: 'Iron', exact: true }).click();
    await page.getByTestId('recording').waitFor();
    await page.evaluate(() => {
      const press = () =>
        document.dispatchEvent(new KeyboardEvent('keydown', { key: 'F9', cancelable: true }));
      press();
      press();
    });
    await kinds(daemon).toEqual(['next', 'undo', 'undo']);
    await change(pieceScenes.alarm.live);
    await page.getByTestId('alarm').waitFor();
    await page.keyboard.press('F9');
    await expect.poll(() => daemon.posted.at(-1)?.path).toBe('/api/alarms/acknowledge');
    expect(actsOf(daemon)).toHaveLength(3);
  }, 40_000);

  it('where no piece is in hand a pedal marks nothing, and the way to take one in hand is the largest', async () => {
    const { page, daemon } = await atPiece({ before: taught }, pieceScenes['none in hand'].live);
    await page.keyboard.press('F9');
    expect(await page.getByTestId('next').isDisabled()).toBe(true);
    await page.getByTestId('not-in-hand').getByRole('button', { name: 'This piece now' }).click();
    await said(daemon).toEqual([{ kind: 'piece', piece: 'left-aileron' }]);
  }, 40_000);

  it('shows the daemon’s refusal in its words', async () => {
    const { page, daemon } = await atPiece();
    daemon.answering = () => ({
      status: 409,
      body: { error: { message: 'Right flap has one side: it can’t be turned over.', where: '' } },
    });
    await page.getByTestId('turned').click();
    await page.getByText('Right flap has one side: it can’t be turned over.').waitFor();
  }, 40_000);

  it('is kept while the daemon is gone, shown as unsent, and sent once', async () => {
    const { page, daemon } = await atPiece();
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByTestId('lap-done').click();
    await page.getByTestId('unsent').waitFor();
    expect(await page.getByTestId('unsent').innerText()).toContain('Not sent yet: lap done');
    daemon.answering = agreeing;
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    await kinds(daemon).toEqual(['lap-done']);
    await page.getByTestId('unsent').waitFor({ state: 'detached' });
    expect(await page.getByTestId('notice').count()).toBe(0);
  }, 40_000);

  it('that was sent late counts from then on, which is said with where to put it right', async () => {
    const { page, daemon } = await atPiece();
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByTestId('lap-done').click();
    await page.getByRole('button', { name: /^tip end 2 intermediate shrink, presumed/ }).click();
    await expect.poll(() => page.getByTestId('unsent').count()).toBe(2);
    await page.evaluate(() => {
      const real = performance.now.bind(performance);
      performance.now = () => real() + 250_000;
    });
    await daemon.start();
    await kinds(daemon).toEqual(['lap-done', 'area']);
    const notice = page.getByTestId('notice');
    await expect
      .poll(() => notice.innerText())
      .toMatch(
        /^Sent 4 min 1\d s late: on tip end, and 1 before it\. It counts from now on, not from when you said it\. /,
      );
    expect(await notice.count()).toBe(1);
    await notice.getByRole('button', { name: /^Understood/ }).click();
    await notice.waitFor({ state: 'detached' });
  }, 40_000);

  it('notes: tight by whom, overruled by whom and why, a visit put right', async () => {
    const { page, daemon, change } = await atPiece();
    daemon.pieces.keep([], [heatWithNotes]);
    await change(atBench(onAileron(), { heatRevision: 2 }, 252, 'final'));
    await page.getByTestId('order').waitFor();
    expect(await page.getByTestId('order').innerText()).toContain('No hotter than 265 °F on upper side');
    expect(await page.getByTestId('side-1').innerText()).toContain('Tight, says Anna Berg');
    await page.getByRole('button', { name: 'Overrule the order' }).click();
    await page.getByLabel('Your name').fill('Anna Berg');
    await page.getByRole('button', { name: 'Overrule, and write it down' }).click();
    await page.getByText('Say in a few words why').waitFor();
    await page.getByLabel('Why').fill('Only a patch is open.');
    await page.getByRole('button', { name: 'Overrule, and write it down' }).click();
    await page.getByRole('button', { name: 'Tight, by eye and hand: lower side' }).click();
    await page.getByRole('button', { name: 'Write it down as mine' }).click();
    await page.getByRole('link', { name: 'Visits, and putting them right' }).click();
    const had = await page.getByTestId('areas-had').innerText();
    expect(had).toMatch(
      /covered at final shrink, peak of the plate \d+ °F ±\d+ °F.*in contact.*1 lap, last heated/,
    );
    expect(had).toContain('Nothing yet:');
    await page.getByTestId('visit').first().getByRole('button').click();
    await page.getByRole('button', { name: 'lower side', exact: true }).click();
    await page.getByLabel('Area').selectOption('middle');
    await page.getByRole('button', { name: 'Write the correction down' }).click();
    await expect
      .poll(() => daemon.posted.map(({ path, body }) => [path, body['note']]))
      .toEqual(
        [
          { kind: 'overruled', by: 'Anna Berg', why: 'Only a patch is open.' },
          { kind: 'tight', side: 2, by: 'Anna Berg' },
          {
            kind: 'corrected',
            session: '019cb8f0-7a00-7000-8000-000000000001',
            visit: 3,
            to: { side: 2, area: '2-cloth-r1c7' },
            by: 'Anna Berg',
          },
        ].map((note) => ['/api/pieces/left-aileron/notes', note]),
      );
  }, 60_000);
});

describe('what stands on the view', () => {
  it('the piece, side, area and stage as a sentence, the areas with hatching and word, the next one and why', async () => {
    const { page } = await atPiece({ viewport: { width: 1440, height: 900 } });
    expect(await page.getByTestId('piece-sentence').innerText()).toBe(
      'Left aileron, upper side, middle: initial shrink reached.',
    );
    const area = (id: string) => page.locator(`[data-area="${id}"]`);
    // What the piece has had is read for itself.
    await expect.poll(() => area('1-cloth-r1c1').innerText()).toMatch(/root end\s*3\s*final shrink/);
    expect(await area('1-cloth-r1c1').locator('rect').getAttribute('fill')).toBe('url(#hatch-stage-3)');
    expect(await area('1-cloth-r1c13').getAttribute('class')).toContain('area--presumed');
    expect(await area('1-edge-r0c0').getAttribute('aria-label')).toContain('bonded edge');
    expect(await area('1-cloth-r1c7').getAttribute('aria-current')).toBe('location');
    expect(await area('2-cloth-r1c13').innerText()).toContain('next');
    expect((await page.getByTestId('next').innerText()).replace(/\s+/g, ' ')).toContain(
      'tip end, lower side · Lap done: change sides',
    );
    expect(await page.getByTestId('balance').innerText()).toBe(
      'Balance: upper side is ahead by 1.5 laps. Iron lower side to even it out.',
    );
    expect(await page.getByTestId('dwell').innerText()).toBe(
      'On middle for 48 s of 2 min 00 s at most. By your marks. Rest on one spot is not measured.',
    );
    expect(await page.getByTestId('plate').textContent()).toBe('252');
  }, 40_000);

  it('what is presumed says so, a long stay on one area too, and the item to be examined leads to its trace', async () => {
    const { page, daemon, change } = await atPiece();
    await change(pieceScenes.presumed.live);
    expect(await page.getByTestId('piece-sentence').innerText()).toBe(
      'Left aileron, upper side, tip end (presumed): intermediate shrink reached.',
    );
    await change(pieceScenes['over its time'].live);
    expect(await page.getByTestId('dwell-over').innerText()).toContain('Longer on middle');
    daemon.pieces.keep([], [heatWithNotes]);
    await change(atBench(onAileron(), { heatRevision: 5 }));
    const link = page.getByTestId('piece-items').getByRole('link');
    await link.waitFor();
    expect(await link.getAttribute('href')).toBe(`#records/${item.session}/610000`);
  }, 40_000);

  it('is read again when the daemon says that it has changed, and not with each reading', async () => {
    const { page, daemon, change } = await atPiece();
    await expect.poll(() => daemon.pieces.heatReads).toBe(1);
    // Its beat would say the first number again.
    daemon.freeze();
    for (let f = 251; f < 271; f++) daemon.say({ kind: 'readings', probes: [probe(f)] });
    await expect.poll(() => page.getByTestId('plate').textContent()).toBe('270');
    expect(daemon.pieces.heatReads).toBe(1);
    await change(atBench(onAileron(), { heatRevision: 2 }));
    await expect.poll(() => daemon.pieces.heatReads).toBe(2);
  }, 40_000);

  it('the sheets stand still while readings come, with 200 areas on each side', async () => {
    const { page, daemon } = await atPiece({ hash: '#piece/left-wing-panel-outer' });
    expect(await page.locator('[data-area]').count()).toBe(400);
    // What the piece has had is read for itself, and drawn then.
    await page.locator('[data-area] [fill="url(#hatch-stage-3)"]').first().waitFor({ state: 'attached' });
    await page.evaluate(() => {
      const counted = { sheets: 0, plate: 0 };
      const watch = (selector: string, count: () => void) => {
        const part = document.querySelector(selector);
        if (part === null) throw new Error(selector);
        new MutationObserver(count).observe(part, {
          attributes: true,
          childList: true,
          characterData: true,
          subtree: true,
        });
      };
      watch('.facing', () => (counted.sheets += 1));
      watch('[data-testid="plate"]', () => (counted.plate += 1));
      Object.assign(globalThis, { counted });
    });
    // Nothing but these: what it says by itself would come between.
    daemon.freeze();
    for (let f = 251; f < 291; f++) daemon.say({ kind: 'readings', probes: [probe(f)] });
    await expect.poll(() => page.getByTestId('plate').textContent()).toBe('290');
    const counted = await page.evaluate(
      () => (globalThis as unknown as { counted: { sheets: number; plate: number } }).counted,
    );
    expect(counted.plate).toBeGreaterThan(0);
    expect(counted.sheets).toBe(0);
  }, 40_000);

  it('view only: nothing that marks', async () => {
    const { page, daemon } = await atPiece({}, pieceScenes['view only'].live);
    expect(await page.getByTestId('acts').count()).toBe(0);
    await page.locator('[data-area="1-cloth-r1c1"]').click({ force: true });
    await page.keyboard.press('n');
    expect(daemon.posted).toEqual([]);
    expect(daemon.presences).toBe(0);
  }, 40_000);

  it('the alarm and the plate stay in sight on a phone, and so do the targets', async () => {
    const { page } = await atPiece({ viewport: { width: 390, height: 844 } }, pieceScenes.alarm.live);
    await page.mouse.wheel(0, 600);
    const inSight = (testId: string) =>
      page
        .getByTestId(testId)
        .first()
        .evaluate((part) => {
          const { top, bottom } = part.getBoundingClientRect();
          return top >= 0 && bottom <= window.innerHeight;
        });
    await expect.poll(() => inSight('plate-now')).toBe(true);
    expect(await inSight('next')).toBe(true);
    expect(
      await page
        .getByTestId('alarm')
        .first()
        .evaluate((card) => card.getBoundingClientRect().top),
    ).toBeLessThan(300);
  }, 40_000);

  it('the Iron view names piece, side and area too', async () => {
    const { page } = await bench.show(pieceScenes['in hand'].live);
    await page
      .getByText('Big iron is in initial shrink, steady, on Left aileron, upper side, middle.')
      .waitFor();
  }, 40_000);
});

describe('presence', () => {
  it('is told with the first sign of somebody, and not again with every other', async () => {
    const { page, daemon } = await atPiece();
    expect(daemon.presences).toBe(0);
    await page.mouse.move(200, 200);
    await page.mouse.move(300, 300);
    await page.keyboard.press('Tab');
    await expect.poll(() => daemon.presences).toBe(1);
  }, 40_000);
});
