import type { z } from 'zod';

/** Keeps small texts in the browser. Storage may be refused, full or switched off: then nothing is kept, and said so. */
export interface Keep {
  read(name: string): string | null;
  /** False where it could not be kept. */
  write(name: string, text: string): boolean;
  /** Whether storing has been refused. */
  readonly refused: boolean;
}

const PREFIX = 'soleplate.';

/** `storage` gives the browser's storage; even asking for it may throw. */
export function keepIn(storage: () => Storage): Keep {
  let refused = false;
  const tryTo = <T>(act: (store: Storage) => T, otherwise: T): T => {
    try {
      return act(storage());
    } catch {
      refused = true;
      return otherwise;
    }
  };
  return {
    read: (name) => tryTo((store) => store.getItem(PREFIX + name), null),
    write: (name, text) =>
      tryTo((store) => {
        store.setItem(PREFIX + name, text);
        return true;
      }, false),
    get refused() {
      return refused;
    },
  };
}

/** What was kept, as the schema has it; null where nothing was, or nothing that can be read. */
export function readKept<S extends z.ZodType>(text: string | null, schema: S): z.output<S> | null {
  try {
    return schema.parse(JSON.parse(text ?? ''));
  } catch {
    return null;
  }
}
