import { execFile } from 'node:child_process';

/**
 * Makes the system leave DTR as it is when the port is closed, however the program ends: on many boards a change of
 * DTR is a reset. The serial library's `hupcl: false` only leaves the setting alone, which Linux sets by itself, so it
 * is cleared with stty. (By path, not by handle: a child's standard input would become a blocking one, and ours too.)
 *
 * @returns why it could not be done; empty when done, or when the device was pulled meanwhile
 */
export async function keepFromHangingUp(path: string, platform: NodeJS.Platform): Promise<string> {
  if (platform === 'win32') return '';
  const byPath = platform === 'linux' ? '-F' : '-f';
  const options = { timeout: 2000, env: { ...process.env, LC_ALL: 'C' } };
  return await new Promise((resolve) => {
    execFile('stty', [byPath, path, '-hupcl'], options, (error, _out, said) => {
      const reason = said.trim() || (error?.message ?? '');
      resolve(error === null || gone.test(reason) ? '' : reason);
    });
  });
}

/** What stty says of a port whose device was pulled: its end is told elsewhere. */
const gone = /no such file|no such device|input\/output error/i;
