import { expect } from 'vitest';
import { Refusal } from '../../../../daemon/refusal.ts';

/** The refusal that comes of what was asked; fails where it was taken. */
export const refused = async (asked: Promise<unknown>): Promise<Refusal> =>
  asked.then(
    () => expect.unreachable('it was taken'),
    (error: unknown) => (error instanceof Refusal ? error : expect.unreachable(String(error))),
  );
