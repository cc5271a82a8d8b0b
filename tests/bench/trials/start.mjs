import { freshFolder } from '../parts/folder.mjs';
import { startProgram } from '../parts/program.mjs';
import { openPty } from '../parts/pty.mjs';

/** From starting the process to its address being printed, with one device and a new data folder, ms. */
export async function start({ subject }) {
  const folder = freshFolder();
  const { path } = await openPty(folder, 'device');
  const program = await startProgram(subject, { folder, serial: [path] });
  await program.stop();
  return { startMs: program.startMs };
}
