import { readFileSync } from 'node:fs';
import { z } from 'zod';

const packageSchema = z.object({ version: z.string() });

/** The program's version, from its package.json: two folders up from the built file, one from the source. */
export const VERSION: string = packageSchema.parse(
  JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')),
).version;
