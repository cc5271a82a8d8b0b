import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import BetterSqlite3 from 'better-sqlite3';
import { end, own } from './children.mjs';
import { monotonicMs } from './pace.mjs';

/** The two programs that are compared: ours as it is built, and the barest that does the same. */

const root = fileURLToPath(new URL('../../../', import.meta.url));
const mains = {
  ours: join(root, 'build', 'daemon', 'main.js'),
  barest: join(root, 'tests', 'bench', 'barest', 'server.mjs'),
};

const START_AT_MOST_MS = 20_000;
/** Ticks of the times in /proc, ms (USER_HZ, 100 on every Linux that Node runs on). */
const TICK_MS = 10;

/**
 * Starts one of them and waits for its address.
 * @param {'ours' | 'barest'} subject
 * @param {{ folder: string, serial: readonly string[], coalesceMs?: number }} options
 */
export async function startProgram(subject, { folder, serial, coalesceMs = 0 }) {
  const data = join(folder, subject);
  const args = ['--listen', '127.0.0.1:0', '--data', data, ...serial.flatMap((path) => ['--serial', path])];
  if (subject === 'barest') args.push('--coalesce', String(coalesceMs));
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !name.startsWith('SOLEPLATE_')),
  );
  const fromMs = monotonicMs();
  const node = [...(process.env['BENCH_NODE_ARGS'] ?? '').split(' ').filter(Boolean), mains[subject]];
  const child = own(
    spawn(process.execPath, [...node, ...args], { env, stdio: ['ignore', 'pipe', 'inherit'] }),
  );
  const address = await addressOf(child, subject);
  return {
    address,
    startMs: monotonicMs() - fromMs,
    cpu: () => cpuOf(child.pid),
    rssMiB: () => rssOf(child.pid),
    kept: () => (subject === 'ours' ? keptByOurs(address) : keptByBarest(data)),
    stop: () => end(child),
  };
}

function addressOf(child, subject) {
  return new Promise((resolve, reject) => {
    let said = '';
    const fail = (why) => reject(new Error(`${subject} ${why}. It said: ${said}`));
    const timer = setTimeout(() => fail('printed no address in time'), START_AT_MOST_MS);
    child.once('exit', (code) => fail(`ended with ${code}`));
    child.stdout.on('data', (chunk) => {
      said += chunk;
      const [address] = /http:\/\/127\.0\.0\.1:\d+/.exec(said) ?? [];
      if (address === undefined) return;
      clearTimeout(timer);
      resolve(address);
    });
  });
}

/** CPU time so far, ms: of the whole process, and of its main thread. */
function cpuOf(pid) {
  return { allMs: timesOf(`/proc/${pid}/stat`), mainMs: timesOf(`/proc/${pid}/task/${pid}/stat`) };
}

const timesOf = (path) => {
  const text = readFileSync(path, 'utf8');
  // The name of the process, in parentheses, may hold spaces; utime and stime are the 12th and 13th after it.
  const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
  return (Number(fields[11]) + Number(fields[12])) * TICK_MS;
};

function rssOf(pid) {
  const [, kib] = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
  return Number(kib) / 1024;
}

/** Samples that stand in the book, by the program's own account. */
async function keptByOurs(address) {
  const answer = await fetch(`${address}/api/sessions`);
  if (!answer.ok) throw new Error(`/api/sessions answered ${answer.status}`);
  const body = await answer.json();
  const sessions = Array.isArray(body) ? body : body.sessions;
  return sessions.reduce((sum, session) => sum + session.samples, 0);
}

function keptByBarest(data) {
  const [file] = readdirSync(data).filter((name) => name.endsWith('.sqlite'));
  const db = new BetterSqlite3(join(data, file), { readonly: true });
  const { samples } = db.prepare('SELECT coalesce(sum(samples), 0) AS samples FROM block').get();
  db.close();
  return samples;
}
