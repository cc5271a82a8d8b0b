// npm test: makes the checkout ready and runs every check. Arguments go to vitest and leave the other checks out.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { build, checkNode, install, run, runTool } from './ready.mjs';

// Beside each tool the Debian package that brings it.
const NEEDED = [
  ['make', 'make'],
  ['g++', 'g++'],
  ['python3', 'python3'],
  ['socat', 'socat'],
  ['chromium', 'chromium'],
];

const isThere = (tool) => spawnSync('sh', ['-c', `command -v ${tool}`]).status === 0;

function installTools() {
  const missing = NEEDED.filter(([tool]) => !isThere(tool));
  if (missing.length === 0) return;
  const packages = missing.map(([, name]) => name);
  const sentence = `Needed and not found: ${missing.map(([tool]) => tool).join(', ')}.`;
  if (process.platform !== 'linux' || !existsSync('/etc/debian_version') || process.getuid() !== 0) {
    console.error(
      `${sentence} On Debian and Ubuntu: sudo apt-get install ${packages.join(' ')}. Then run the tests again.`,
    );
    process.exit(1);
  }
  console.log(`${sentence} Installing: ${packages.join(' ')}.`);
  process.env.DEBIAN_FRONTEND = 'noninteractive';
  const done =
    run('apt-get', ['update', '-qq']) &&
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages]);
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
