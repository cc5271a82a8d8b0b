import { describe, expect, it } from 'vitest';
import { pieceScenes } from '../../fixtures/piece-scenes.ts';
import { demoPieces, leftAileron } from '../../fixtures/pieces.ts';
import { Bench, type Shown, type ShowOptions } from './bench.ts';

/** Making a piece and changing its map, by keys and by thumbs. */

const bench = Bench.ofFile();

async function editing(hash: string, options: ShowOptions = {}): Promise<Shown> {
  const shown = await bench.show(pieceScenes['none in hand'].live, {
    hash,
    arrange: (daemon) => daemon.pieces.keep(demoPieces),
    ...options,
  });
  await shown.page.getByTestId('editor').waitFor();
  return shown;
}

const named = ({ daemon }: Shown, name: string) =>
  [...daemon.pieces.pieces.values()].find((piece) => piece.name === name);

describe('a new piece', () => {
  it('by keyboard alone: a name is enough, and then it is there to be worked', async () => {
    const shown = await editing('#piece/new');
    const { page } = shown;
    const focused = (part: string) =>
      page.locator(part).evaluate((element) => element === document.activeElement);
    const tabTo = async (part: string) => {
      for (let i = 0; i < 60 && !(await focused(part)); i++) await page.keyboard.press('Tab');
      expect(await focused(part)).toBe(true);
    };
    await tabTo('[data-testid="save-piece"]');
    await page.keyboard.press('Enter');
    await page.getByText('Give it a name.').waitFor();
    expect(shown.daemon.pieces.pieces.size).toBe(demoPieces.length);
    for (let i = 0; i < 60 && !(await focused('#piece-name')); i++) await page.keyboard.press('Shift+Tab');
    await page.keyboard.type('Left flap');
    await tabTo('[data-testid="save-piece"]');
    await page.keyboard.press('Enter');
    await page.getByTestId('acts').waitFor();
    expect(await page.getByTestId('piece-sentence').innerText()).toBe('Left flap');
    expect(named(shown, 'Left flap')).toMatchObject({ version: 1, sides: ['Upper side', 'Lower side'] });
    expect(await page.locator('[data-area]').count()).toBe(14);
  }, 60_000);

  it('by thumbs: bays, two of them merged, one left out, one named, a tape; each taken back', async () => {
    const shown = await editing('#piece/new', { hasTouch: true, viewport: { width: 390, height: 844 } });
    const { page } = shown;
    await page.getByLabel('Name', { exact: true }).fill('Left wing panel, inner bay');
    await page.getByTestId('grid').locator('summary').tap();
    await page.getByLabel('Bays from end to end').fill('4');
    await page.getByLabel('Bays across').fill('2');
    await page.getByTestId('lay-out').tap();
    const upper = page.getByTestId('sheet-1');
    await expect.poll(() => upper.locator('[data-area]').count()).toBe(12);
    const bay = (name: string) => upper.getByRole('button', { name: new RegExp(`^${name}\\b`) });
    await bay('Bay A1').tap();
    await bay('Bay A2').tap();
    await page.getByTestId('merge').tap();
    await expect.poll(() => upper.locator('[data-area]').count()).toBe(11);
    await bay('Bay A1').tap();
    await bay('Bay B3').tap();
    await page.getByTestId('merge').tap();
    expect(await page.getByTestId('map-trouble').innerText()).toContain('rectangle');
    await page.getByRole('button', { name: 'Choose none' }).tap();
    await bay('Bay B4').tap();
    await page.getByTestId('leave-out').tap();
    await bay('Bay B3').tap();
    await page.getByLabel('Name of the area').fill('walkway');
    await page.getByRole('button', { name: 'Rename' }).tap();
    await page.getByTestId('tape').locator('summary').tap();
    await page.getByTestId('add-tape').tap();
    await expect.poll(() => upper.locator('[data-area]').count()).toBe(11);
    await page.getByTestId('undo-map').tap();
    await expect.poll(() => upper.locator('[data-area]').count()).toBe(10);
    await page.getByTestId('save-piece').tap();
    await page.getByTestId('acts').waitFor();
    const areas = named(shown, 'Left wing panel, inner bay')?.areas.filter((area) => area.side === 1) ?? [];
    expect(areas.map((area) => area.name)).toContain('walkway');
    expect(areas.some((area) => area.kind === 'tape' || area.name === 'Bay B4')).toBe(false);
  }, 60_000);
});

describe('a piece that is there', () => {
  it('is mirrored for the opposite hand, put away and taken out again', async () => {
    const shown = await editing('#piece/left-aileron/edit');
    const { page } = shown;
    await page.getByTestId('mirror').click();
    await expect.poll(() => page.getByLabel('Name', { exact: true }).inputValue()).toBe('Right aileron');
    await page.getByTestId('save-piece').click();
    await page.getByTestId('acts').waitFor();
    const right = named(shown, 'Right aileron');
    const tape = (areas: readonly { readonly name: string; readonly column: number }[] | undefined) =>
      areas?.find(({ name }) => name === 'rib tape 3')?.column;
    expect(tape(right?.areas)).toBe(20 - 1 - (tape(leftAileron.areas) ?? 0));
    await page.getByRole('link', { name: 'Change its map' }).click();
    await page.getByTestId('archive').click();
    await expect.poll(() => named(shown, 'Right aileron')?.archived).toBe(true);
    await page.getByRole('link', { name: 'Change its map' }).click();
    await page.getByTestId('archive').click();
    await expect.poll(() => named(shown, 'Right aileron')).toMatchObject({ archived: false, version: 3 });
  }, 60_000);

  it('changed on two pages: said in words, and neither version is lost', async () => {
    const shown = await editing('#piece/left-aileron/edit');
    const { page, daemon } = shown;
    await page.getByLabel('Name', { exact: true }).fill('Left aileron, mine');
    daemon.pieces.keep([{ ...leftAileron, version: 2, name: 'Left aileron, theirs' }]);
    await page.getByTestId('save-piece').click();
    const conflict = page.getByTestId('piece-conflict');
    await conflict.waitFor();
    expect(await conflict.innerText()).toContain('there is a version 2 by now');
    expect(await conflict.innerText()).toContain('“Left aileron, theirs”');
    expect(await conflict.innerText()).toContain('“Left aileron, mine”');
    await page.reload();
    await conflict.waitFor();
    await page.getByTestId('save-apart').click();
    await page.getByTestId('map-version').waitFor();
    expect(named(shown, 'Left aileron, theirs')?.version).toBe(2);
    expect(named(shown, 'Left aileron, mine (copy)')?.version).toBe(1);
  }, 60_000);

  it('what was typed stays where the daemon is gone, and wrong lengths say what would be right', async () => {
    const { page, daemon } = await editing('#piece/left-aileron/edit');
    await page.getByLabel('From end to end').first().fill('very long');
    await page.getByText('Write a length from 1 to 2000 cm').waitFor();
    await page.getByLabel('From end to end').first().fill('72 in');
    await daemon.stop();
    await page.locator('[data-testid=link][data-link=lost]').waitFor();
    await page.getByTestId('save-piece').click();
    await page.getByText('What you typed stays here').waitFor();
    await daemon.start();
    await page.locator('[data-testid=link][data-link=live]').waitFor();
    await page.getByTestId('save-piece').click();
    await expect.poll(() => daemon.pieces.pieces.get('left-aileron')?.lengthCm).toBeCloseTo(182.88, 6);
  }, 60_000);
});
