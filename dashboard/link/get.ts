import type { z } from 'zod';
import { problemSchema } from '../../shared/messages/command.ts';
import { linkWords } from '../../shared/words/page.ts';
import { recordWords } from '../../shared/words/records.ts';

/** What came of asking: the answer, or the sentence that says why there is none. */
export type Got<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly why: string; readonly status: number };

/** Asks the daemon for something; never throws. `status` is 0 where it could not be reached. */
export const getJson = <S extends z.ZodType>(
  path: string,
  schema: S,
  signal?: AbortSignal,
): Promise<Got<z.output<S>>> => answered(path, schema, signal === undefined ? {} : { signal });

/** Sends the daemon something and reads its answer; never throws. */
export const postJson = <S extends z.ZodType>(
  path: string,
  body: unknown,
  schema: S,
): Promise<Got<z.output<S>>> =>
  answered(path, schema, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

async function answered<S extends z.ZodType>(
  path: string,
  schema: S,
  request: RequestInit,
): Promise<Got<z.output<S>>> {
  try {
    const response = await fetch(path, request);
    const body: unknown = await response.json();
    if (!response.ok) return { ok: false, why: problem(body), status: response.status };
    const read = schema.safeParse(body);
    if (read.success) return { ok: true, value: read.data };
    return { ok: false, why: linkWords.garbled, status: response.status };
  } catch {
    return { ok: false, why: recordWords.failedUnsaid, status: 0 };
  }
}

function problem(body: unknown): string {
  const read = problemSchema.safeParse(body);
  return read.success ? read.data.error.message : linkWords.garbled;
}
