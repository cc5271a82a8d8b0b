import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const script = fileURLToPath(new URL('../../fault/book-child.mjs', import.meta.url));

/** Runs the child and hands over each line that it prints; resolves when it has ended. */
export function runChild(
  values: readonly string[],
  onLine: (line: string, child: ChildProcess) => void,
): Promise<void> {
  const child = spawn(process.execPath, [script, ...values], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines = createInterface({ input: child.stdout });
  lines.on('line', (line) => onLine(line, child));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    // Both: a killed child's last lines may still be in the pipe.
    let open = 2;
    const ended = (): void => {
      open -= 1;
      if (open === 0) resolve();
    };
    child.on('exit', ended);
    lines.on('close', ended);
  });
}
