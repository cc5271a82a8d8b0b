import { z } from 'zod';
import { problemSchema } from '../../shared/messages/command.ts';
import { setupWords } from '../../shared/words/setup.ts';

/** Reads and writes settings. Never throws: what could not be done is an answer too, with its sentence. */
export type Answered<T> =
  | { readonly kind: 'done'; readonly value: T }
  | { readonly kind: 'refused'; readonly status: number; readonly why: string }
  | { readonly kind: 'unreached'; readonly why: string };

/** An answer that takes longer than this counts as none, ms. */
const ANSWER_WITHIN_MS = 8000;

export const get = <S extends z.ZodType>(path: string, schema: S): Promise<Answered<z.output<S>>> =>
  asked(path, { method: 'GET' }, schema);

export const put = <S extends z.ZodType>(path: string, body: unknown, schema: S) =>
  asked(path, withBody('PUT', body), schema);

export const post = <S extends z.ZodType>(path: string, body: unknown, schema: S) =>
  asked(path, withBody('POST', body), schema);

/** For what is answered with nothing but that it is done. */
export const postDone = (path: string, body: object = {}): Promise<Answered<unknown>> =>
  asked(path, withBody('POST', body), z.unknown());

const withBody = (method: 'PUT' | 'POST', body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

async function asked<S extends z.ZodType>(
  path: string,
  request: RequestInit,
  schema: S,
): Promise<Answered<z.output<S>>> {
  try {
    const response = await fetch(path, { ...request, signal: AbortSignal.timeout(ANSWER_WITHIN_MS) });
    const body: unknown = response.status === 204 ? null : await response.json();
    if (!response.ok) return refused(response.status, body);
    const read = schema.safeParse(body);
    return read.success
      ? { kind: 'done', value: read.data }
      : { kind: 'refused', status: response.status, why: setupWords.unreadable };
  } catch {
    return { kind: 'unreached', why: setupWords.unreached };
  }
}

function refused(status: number, body: unknown): Answered<never> {
  const problem = problemSchema.safeParse(body);
  return {
    kind: 'refused',
    status,
    why: problem.success ? problem.data.error.message : setupWords.unreadable,
  };
}
