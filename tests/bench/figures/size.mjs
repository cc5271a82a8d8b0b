import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const page = fileURLToPath(new URL('../../../build/dashboard', import.meta.url));

/** What a page loads, kB: at once (what index.html names), and later for traces. */
export async function size() {
  const index = readFileSync(join(page, 'index.html'), 'utf8');
  const files = readdirSync(page, { recursive: true })
    .map(String)
    .filter((name) => /\.(js|css)$/.test(name));
  const atOnce = files.filter((name) => index.includes(name));
  const later = files.filter((name) => !index.includes(name));
  return [row('at once', ['index.html', ...atOnce]), row('later, for traces', later)];
}

function row(when, names) {
  const contents = names.map((name) => readFileSync(join(page, name)));
  const kB = (sizes) => (sizes.reduce((sum, one) => sum + one, 0) / 1000).toFixed(0);
  return {
    what: `size of the page, loaded ${when}, kB`,
    ours: kB(contents.map(({ length }) => length)),
    barest: '',
    ratio: null,
    target: null,
    note: `${kB(contents.map((content) => gzipSync(content).length))} kB gzipped; ${names.length} files`,
  };
}
