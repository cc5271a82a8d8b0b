import { statSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { BookFile, bookFileIn } from '../../../build/daemon/book/store/book-file.js';
import { IronWatch } from '../../../build/daemon/watching/iron-watch.js';
import { freshlyCarried, PROBES, sampleAt } from '../parts/fold-watch.mjs';
import { freshFolder } from '../parts/folder.mjs';

const LINES_PER_S = 10;

/** Size of the closed book by the samples in it: four probes at 10 Hz, each line with n, ms and t. */
export async function bytes({ full }) {
  const seconds = full ? 8 * 3600 : 1800;
  const rows = barestBytes(seconds);
  const row = (how, measure) => ({
    what: `bytes in the book per sample, ${seconds / 60} min, ${how}`,
    ours: measure.toFixed(1),
    barest: rows.toFixed(1),
    ratio: measure / rows,
    target: 20,
    measure,
    note: 'the target is in bytes; the barest keeps a row a sample, without findings, links or settings',
  });
  return [
    row('four probes on one iron', await oursBytes([PROBES], seconds)),
    row(
      'each probe on an iron of its own',
      await oursBytes(
        PROBES.map((p) => [p]),
        seconds,
      ),
    ),
  ];
}

/** Keeps what the watches of irons with these probes record, a commit a second, and measures the file. */
async function oursBytes(irons, seconds) {
  const folder = freshFolder();
  const book = new BookFile(folder);
  book.open(0);
  const watches = irons.map((probes) => ({ probes, watch: watchOf(probes, book) }));
  for (let n = 0; n < seconds * LINES_PER_S; n += 1) {
    for (const { probes, watch } of watches) {
      for (const probe of probes) {
        const { sample, tMs } = sampleAt(probe, n);
        watch.take({ kind: 'sample', sample }, tMs);
      }
      if (n % LINES_PER_S === LINES_PER_S - 1) await watch.kept();
    }
  }
  for (const { watch } of watches) await watch.stop('by-hand', seconds * 1000, null);
  book.close();
  return statSync(bookFileIn(folder)).size / samplesIn(bookFileIn(folder), seconds);
}

function watchOf(probes, book) {
  return new IronWatch(freshlyCarried(probes), 0, {
    keep: async (commit) => {
      book.commit(commit, 0);
      return true;
    },
    originUtcMs: 0,
    utcOf: (tMs) => new Date(tMs).toISOString(),
    programVersion: 'bench',
    told: () => undefined,
  });
}

function samplesIn(file, seconds) {
  const db = new BetterSqlite3(file, { readonly: true });
  const { samples } = db
    .prepare('SELECT sum(s) AS samples FROM (SELECT max(samples) AS s FROM link GROUP BY session)')
    .get();
  db.close();
  const sent = seconds * LINES_PER_S * PROBES.length;
  if (samples !== sent) throw new Error(`of ${sent} samples ${samples} are in the book.`);
  return samples;
}

function barestBytes(seconds) {
  const file = join(freshFolder(), 'rows.sqlite');
  const db = new BetterSqlite3(file);
  db.pragma('journal_mode = WAL');
  db.exec(
    'CREATE TABLE sample (seq INTEGER PRIMARY KEY, t_ms INTEGER, probe INTEGER, n INTEGER, ms INTEGER, t REAL)',
  );
  const insert = db.prepare('INSERT INTO sample (t_ms, probe, n, ms, t) VALUES (?, ?, ?, ?, ?)');
  db.transaction(() => {
    for (let n = 0; n < seconds * LINES_PER_S; n += 1) {
      for (const [place, probe] of PROBES.entries()) {
        const { sample, tMs } = sampleAt(probe, n);
        insert.run(tMs, place, n, sample.deviceMs, sample.tC);
      }
    }
  })();
  db.close();
  return statSync(file).size / (seconds * LINES_PER_S * PROBES.length);
}
