import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Tests that start the built program build it first, so that none runs against a stale build. */
export default function buildFirst(): void {
  const ready = fileURLToPath(new URL('../scripts/ready.mjs', import.meta.url));
  const script = `import(${JSON.stringify(`file://${ready}`)}).then((r) => r.build())`;
  const done = spawnSync(process.execPath, ['-e', script], { stdio: 'inherit' });
  if (done.status !== 0)
    throw new Error('The program could not be built, so the tests that run it can not either.');
}
