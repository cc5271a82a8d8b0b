import type { z } from 'zod';
import { type Got, getJson } from '../link/get.ts';

/** An answer that takes longer than this counts as none, ms: what hangs would keep the next reading waiting. */
const ANSWER_WITHIN_MS = 8000;

/** Reads what the daemon tells of cements, coats or the air; never throws. */
export const readCure = <S extends z.ZodType>(path: string, schema: S): Promise<Got<z.output<S>>> =>
  getJson(path, schema, AbortSignal.timeout(ANSWER_WITHIN_MS));
