import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { own } from './children.mjs';

/** A pseudo-terminal that stands in for a device: `path` is what the program opens, `write` what the device sends. */
export async function openPty(folder, name) {
  const path = join(folder, name);
  const socat = own(
    spawn('socat', ['-', `pty,raw,echo=0,link=${path}`], { stdio: ['pipe', 'pipe', 'inherit'] }),
  );
  const failed = new Promise((_, reject) => {
    socat.once('error', (error) => reject(new Error(`socat could not be run: ${error.message}`)));
  });
  // What the program says to its device is nobody's concern here; unread it would fill the pipe.
  socat.stdout.resume();
  socat.stdin.on('error', () => undefined);
  await Promise.race([appeared(path), failed]);
  return { path, write: (text) => socat.stdin.write(text) };
}

/** Opens `count` of them, all at once. */
export const openPtys = (folder, count) =>
  Promise.all(Array.from({ length: count }, (_, i) => openPty(folder, `device${i + 1}`)));

async function appeared(path) {
  for (let tries = 0; tries < 500; tries += 1) {
    if (existsSync(path)) return;
    await delay(10);
  }
  throw new Error(`socat made no ${path} within 5 s.`);
}
