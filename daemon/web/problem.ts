import type { z } from 'zod';
import type { Problem } from '../../shared/messages/command.ts';
import { issuePath, issueSentence } from '../../shared/words/issue.ts';
import { webWords } from '../../shared/words/web.ts';
import { BookFailure } from '../book/book.ts';
import { Refusal } from '../refusal.ts';

/** A request that can't be met: its HTTP status, the sentence for the user, the field that was wrong. */
export class Trouble extends Error {
  readonly status: number;
  readonly where: string;

  constructor(status: number, message: string, where = '') {
    super(message);
    this.name = 'Trouble';
    this.status = status;
    this.where = where;
  }
}

export const problemBody = (trouble: Trouble): Problem => ({
  error: { message: trouble.message, where: trouble.where },
});

/** `value` by `schema`, or a `Trouble` (400) that names the first three things wrong with it. `whole` names it. */
export function readAs<S extends z.ZodType>(schema: S, value: unknown, whole: string): z.output<S> {
  const read = schema.safeParse(value, { reportInput: true });
  if (read.success) return read.data;
  const issues = read.error.issues.slice(0, 3);
  const message = issues.map((issue) => issueSentence(issue, whole)).join(' ');
  throw new Trouble(400, capitalised(message), issuePath(issues[0]?.path ?? []));
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a thrown value means to whoever asked; null where it is a fault of the program itself. */
export function troubleOf(error: unknown): Trouble | null {
  if (error instanceof Trouble) return error;
  if (error instanceof Refusal) return new Trouble(refusalStatus[error.because], error.message, error.where);
  if (error instanceof BookFailure) return new Trouble(503, error.message);
  // So express names a path parameter that it can't decode.
  return error instanceof URIError ? new Trouble(400, webWords.badAddress) : null;
}

const refusalStatus = { unknown: 404, conflict: 409, invalid: 422 } as const;
