import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { setTimeout as after } from 'node:timers/promises';

/** Loaded before the program: a disk on which it takes this long until a file is open for writing, ms. */
const TAKES_MS = 1500;

const { open } = fs.promises;
fs.promises.open = async (path, flags, ...rest) => {
  if (flags === 'w') await after(TAKES_MS);
  return open(path, flags, ...rest);
};
syncBuiltinESMExports();
