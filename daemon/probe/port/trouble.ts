import { readFile, stat } from 'node:fs/promises';
import { type PortProblem, pathAdvice, portTroubleWords } from '../../../shared/words/serial.ts';
import type { Machine } from './machine.ts';

/** The serial library gives errors as text only; these are its own and the system's words in it. */
const signs: readonly (readonly [RegExp, PortProblem])[] = [
  [/permission denied|operation not permitted/i, 'permission'],
  [/cannot lock port|resource busy|access denied/i, 'busy'],
  [/no such file|file not found|no such device/i, 'missing'],
  [/baud rate of \d+ is not supported|invalid argument setting custom baud/i, 'baud'],
  [/inappropriate ioctl|is a directory|not a typewriter/i, 'not-a-port'],
];

/** Which of the known problems an error of opening a port is. */
export function portProblem(reason: string): PortProblem {
  return signs.find(([sign]) => sign.test(reason))?.[1] ?? 'other';
}

/** What is wrong with a port and what to do, as sentences for the user. */
export async function troubleWords(machine: Machine, path: string, reason: string): Promise<string> {
  const problem = portProblem(reason);
  const group = problem === 'permission' ? await groupOf(machine, path) : '';
  const { platform } = machine;
  const words = portTroubleWords[problem]({ path, platform, group, reason });
  return [words, pathAdvice(path, platform)].filter((part) => part !== '').join(' ');
}

/** The group that may use the port; Debian's name for it where the system does not say. */
async function groupOf(machine: Machine, path: string): Promise<string> {
  try {
    const { gid } = await stat(path);
    const lines = (await readFile(machine.groups, 'utf8')).split('\n');
    const name = lines.map((line) => line.split(':')).find(([, , id]) => id === String(gid))?.[0];
    return name === undefined || gid === 0 ? 'dialout' : name;
  } catch {
    return 'dialout';
  }
}
