/** Child processes of this one: none outlives it. */

const children = new Set();

process.on('exit', () => {
  for (const child of children) child.kill('SIGKILL');
});
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => process.exit(1));

/** @template {import('node:child_process').ChildProcess} C @param {C} child @returns {C} */
export function own(child) {
  children.add(child);
  child.on('exit', () => children.delete(child));
  return child;
}

/** Resolves when the child has ended; asks it to end with `signal` first. */
export async function end(child, signal = 'SIGTERM') {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill(signal);
  await ended;
}
