// npm test: makes the checkout ready and runs every check. Arguments go to vitest and leave the other checks out.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { build, checkNode, install, run, runTool } from './ready.mjs';

// What is needed; of those in one line any will do. Debian's packages are called like the commands.
const NEEDED = [
  ['make'],
  ['g++'],
  ['python3'],
  ['socat'],
  // Chromium without its window: it takes half the work, and a whole one does as well.
  ['chromium-headless-shell', 'chromium'],
];

const isThere = (tool) => spawnSync('sh', ['-c', `command -v ${tool}`]).status === 0;
const isPackage = (name) => spawnSync('apt-cache', ['show', name]).status === 0;

function installTools() {
  const missing = NEEDED.filter((tools) => !tools.some(isThere));
  if (missing.length === 0) return;
  const sentence = `Needed and not found: ${missing.map((tools) => tools.join(' or ')).join(', ')}.`;
  if (process.platform !== 'linux' || !existsSync('/etc/debian_version') || process.getuid() !== 0) {
    console.error(
      `${sentence} On Debian and Ubuntu: sudo apt-get install ${missing.map((tools) => tools.at(-1)).join(' ')}. Then run the tests again.`,
    );
    process.exit(1);
  }
  process.env.DEBIAN_FRONTEND = 'noninteractive';
  const isUpdated = run('apt-get', ['update', '-qq']);
  const packages = missing.map((tools) => tools.find(isPackage) ?? tools.at(-1));
  console.log(`${sentence} Installing: ${packages.join(' ')}.`);
  const done = isUpdated && run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages]);
  if (!done) {
    console.error(`They could not be installed. Install them by hand: apt-get install ${packages.join(' ')}`);
    process.exit(1);
  }
}

function step(name, check) {
  const from = performance.now();
  const passed = check();
  console.log(`${passed ? 'ok' : 'FAILED'}: ${name} (${((performance.now() - from) / 1000).toFixed(1)} s)`);
  return passed;
}

const from = performance.now();
const only = process.argv.slice(2);
checkNode();
installTools();
install();
build();
const vitest = () => runTool('vitest', ['run', ...only]);
const results =
  only.length > 0
    ? [step('tests', vitest)]
    : [
        step('types', () => runTool('tsc', ['-b'])),
        step('format', () => runTool('biome', ['check', '--error-on-warnings'])),
        step('lint and boundaries', () => runTool('oxlint', ['--type-aware', '--deny-warnings'])),
        step('tests', vitest),
      ];
console.log(`All in all ${((performance.now() - from) / 1000).toFixed(0)} s.`);
process.exit(results.every(Boolean) ? 0 : 1);
