// Makes the checkout ready to run: installs where the lock file changed, builds where sources changed.
// Without dependencies, since it runs before there are any.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const LEAST_NODE = [20, 19];
const INSTALLED = join(root, 'node_modules', '.installed-for');
const BUILT = join(root, 'build', '.built-from');
const SOURCES = [
  'shared',
  'daemon',
  'dashboard',
  'tsconfig.base.json',
  'package-lock.json',
  'scripts/ready.mjs',
];

/** Ends with a sentence and an exit code where the machine lacks something. */
function giveUp(message) {
  console.error(message);
  process.exit(1);
}

/** Runs a tool to its end with its output shown; false where it failed. */
export function run(command, args, env = process.env) {
  const windows = process.platform === 'win32';
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: windows, env });
  if (done.error) console.error(`${command} could not be run: ${done.error.message}`);
  return done.status === 0;
}

/** Runs the program of an installed package. */
export const runTool = (name, args, env) => run(join(root, 'node_modules', '.bin', name), args, env);

/** Under a test runner's own NODE_ENV the page would be built with its libraries' debugging aids, which keep what is gone. */
const production = { ...process.env, NODE_ENV: 'production' };

export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  const [leastMajor, leastMinor] = LEAST_NODE;
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return;
  giveUp(`Node ${LEAST_NODE.join('.')} or newer is needed; this is Node ${process.versions.node}.`);
}

function installKey() {
  const lock = readFileSync(join(root, 'package-lock.json'));
  const { platform, arch, versions } = process;
  return `${createHash('sha256').update(lock).digest('hex')} ${platform} ${arch} ${versions.modules}`;
}

/** Installs the libraries with npm, unless those of this lock file are there for this Node. */
export function install() {
  const key = installKey();
  if (existsSync(INSTALLED) && readFileSync(INSTALLED, 'utf8') === key) return;
  console.log(
    'Installing the libraries. Where the database library must be compiled this takes some minutes.',
  );
  if (!run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'])) {
    giveUp(
      'The libraries could not be installed. The database library may have to be compiled: for that make, g++ and ' +
        'python3 are needed (on Debian and Ubuntu: sudo apt-get install make g++ python3; on macOS: xcode-select ' +
        '--install; on Windows: the C++ build tools of Visual Studio). Then run the command again.',
    );
  }
  writeFileSync(INSTALLED, key);
}

function* filesBelow(path) {
  for (const entry of readdirSync(path, { withFileTypes: true })) {
    const inner = join(path, entry.name);
    if (entry.isDirectory()) yield* filesBelow(inner);
    else yield inner;
  }
}

function sourcesKey() {
  const hash = createHash('sha256');
  for (const name of SOURCES) {
    const path = join(root, name);
    const files =
      existsSync(path) && name.includes('.')
        ? [path]
        : [...filesBelow(path)].sort((a, b) => (a < b ? -1 : 1));
    for (const file of files)
      hash.update(file.slice(root.length)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

/** Builds daemon and page, unless the sources are those of the last build. */
export function build() {
  const key = sourcesKey();
  if (existsSync(BUILT) && readFileSync(BUILT, 'utf8') === key) return;
  console.log('Building.');
  const built =
    runTool('tsc', ['-b', 'shared', 'daemon']) &&
    runTool(
      'vite',
      ['build', '--logLevel', 'warn', '--config', join('dashboard', 'vite.config.ts')],
      production,
    );
  if (!built) giveUp('The build failed; what it printed stands above.');
  mkdirSync(dirname(BUILT), { recursive: true });
  writeFileSync(BUILT, key);
}
