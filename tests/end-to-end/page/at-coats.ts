import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { CoatAnswer } from '../../../shared/messages/cure.ts';
import { coatCommandSchema } from '../../../shared/messages/cure.ts';
import { air, cementList, coatsAnswer, fourCoats } from '../../fixtures/coats.ts';
import { atBench } from '../../fixtures/piece-scenes.ts';
import { aileronHeat, demoPieces, onAileron } from '../../fixtures/pieces.ts';
import type { Bench, Shown, ShowOptions } from './bench.ts';
import type { FakeDaemon } from './fake-daemon.ts';
import { settled } from './listening.ts';

/** Coats beside an aileron in hand, as the stand-in daemon has them. */

export const now = atBench(onAileron());

/** Shows a page of a daemon that has these coats. @param fire ids of those whose vapour is asked about */
export const showCoats = (
  bench: Bench,
  coats: readonly CoatAnswer[],
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

/** Shows the Bench with these coats, once it is there. */
export async function showBench(
  bench: Bench,
  coats: readonly CoatAnswer[] = fourCoats,
  { arrange, ...options }: ShowOptions = {},
): Promise<Shown> {
  const shown = await bench.show(now, {
    hash: '#bench',
    arrange: (daemon) => {
      daemon.pieces.keep(demoPieces);
      daemon.cements.keep(cementList.cements);
      daemon.air.answer = air;
      daemon.coats.coats = coatsAnswer(coats);
      arrange?.(daemon);
    },
    ...options,
  });
  await shown.page.getByTestId('bench-now').waitFor();
  return shown;
}

/** The coats are now like this, and the page is told so. */
export async function turn(
  { daemon, change }: Shown,
  revision: number,
  coats: readonly CoatAnswer[],
  fire: readonly string[] = [],
): Promise<void> {
  daemon.coats.coats = coatsAnswer(coats, { revision, fire });
  await change(atBench(onAileron(), { coatRevision: revision }));
}

/** What was said to the daemon of coats. */
export const actsOf = ({ posted }: FakeDaemon) =>
  posted.filter(({ path }) => path === '/api/coats').map(({ body }) => coatCommandSchema.parse(body).act);

export async function turnSoundOn(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Sound off/ }).click();
  await expect.poll(() => page.getByTestId('sound').getAttribute('data-state')).toBe('on');
  await settled(page, 800);
}
