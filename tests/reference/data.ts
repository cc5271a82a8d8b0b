import { readFileSync } from 'node:fs';

/** Reads the published values; their sources and standing are in the SOURCES.md beside them. */
const text = (file: string): string => readFileSync(new URL(`./data/${file}`, import.meta.url), 'utf8');

export const json = (file: string): unknown => JSON.parse(text(file));

export const rows = (file: string): readonly (readonly string[])[] =>
  text(file)
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));

/** The record with this id. */
export function record(file: string, id: string): unknown {
  const found = (json(file) as readonly { readonly id: string }[]).find((each) => each.id === id);
  if (found === undefined) throw new Error(`no record ${id} in ${file}`);
  return found;
}
