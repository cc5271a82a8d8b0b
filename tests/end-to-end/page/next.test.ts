import { describe, expect, it } from 'vitest';
import type { Live } from '../../../shared/messages/live.ts';
import { atBench } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron } from '../../fixtures/pieces.ts';
import { Bench, type Shown, type ShowOptions } from './bench.ts';
import { agreeing } from './fake-daemon.ts';

/** "Next" where there is nothing to go to: it can't be pressed, and keys and the pedal say so in sight. */

const bench = Bench.ofFile();

const chosen = atBench(onAileron());
const noStage: Live = {
  ...chosen,
  situation: {
    ...chosen.situation,
    irons: chosen.situation.irons.map((iron) => ({ ...iron, stageId: null })),
  },
};

const show = (options: ShowOptions = {}): Promise<Shown> =>
  bench.show(noStage, {
    hash: '#piece',
    before: "localStorage.setItem('soleplate.pedal', 'F9')",
    arrange: ({ pieces }) => pieces.keep(demoPieces, [{ ...aileronHeat, next: null }]),
    ...options,
  });

describe('“next” with no stage chosen', () => {
  it('can’t be pressed, and by its key says that the stage comes first, until one is chosen', async () => {
    const { page, daemon, change } = await show();
    const target = page.getByTestId('next');
    await target.getByText('choose the stage first').waitFor();
    expect(await target.isDisabled()).toBe(true);
    const note = page.getByTestId('next-in-vain');
    await page.keyboard.press('n');
    await note.getByText('Choose the stage first').waitFor();
    await change(chosen);
    await note.waitFor({ state: 'detached' });
    await change(noStage);
    expect(await note.count()).toBe(0);
    expect(daemon.posted).toEqual([]);
  }, 30_000);

  it('by pedal says so on every view, however it is scrolled, with the way to the stages', async () => {
    const { page, daemon } = await show({ hash: '#iron', viewport: { width: 390, height: 844 } });
    await page.evaluate(() => scrollTo(0, 10_000));
    await page.keyboard.press('F9');
    const note = page.getByTestId('next-in-vain');
    await note.waitFor();
    const box = await note.boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(844);
    await note.getByRole('link', { name: 'To the stages' }).click();
    await page.getByTestId('stages').waitFor();
    await note.getByRole('button').click();
    await note.waitFor({ state: 'detached' });
    expect(daemon.posted).toEqual([]);
  }, 30_000);

  it('is sent after a stage that waits to be sent: the daemon decides', async () => {
    const { page, daemon } = await show();
    daemon.answering = () => null;
    await page.getByTestId('stages').getByRole('button', { name: 'initial shrink' }).click();
    await page.keyboard.press('n');
    expect(await page.getByTestId('next-in-vain').count()).toBe(0);
    daemon.answering = agreeing;
    await expect.poll(() => daemon.posted.at(-1)?.body['act']).toEqual({ kind: 'next' });
  }, 30_000);
});

it('“next” with no area left can’t be pressed', async () => {
  const { page, change } = await show();
  await change(chosen);
  await page.getByTestId('next').getByText('no other area lacks this stage').waitFor();
  expect(await page.getByTestId('next').isDisabled()).toBe(true);
}, 30_000);
