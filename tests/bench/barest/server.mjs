// The barest program with the same libraries: it reads lines from serial ports, checks and parses them, keeps a block a
// second and streams to whoever looks. It judges nothing, guards against nothing and recovers from nothing.
import { mkdirSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { ReadlineParser } from '@serialport/parser-readline';
import BetterSqlite3 from 'better-sqlite3';
import express from 'express';
import { SerialPort } from 'serialport';
import { WebSocketServer } from 'ws';

const { values } = parseArgs({
  options: {
    serial: { type: 'string', multiple: true, default: [] },
    listen: { type: 'string', default: '127.0.0.1:0' },
    data: { type: 'string', default: '.' },
    coalesce: { type: 'string', default: '0' },
  },
});
const coalesceMs = Number(values.coalesce);
const [host, port] = values.listen.split(':');

const app = express();
app.use(express.static(fileURLToPath(new URL('./page', import.meta.url))));
const server = createServer(app);
const sockets = new WebSocketServer({ server, path: '/stream', perMessageDeflate: false });
server.listen(Number(port), host, () => {
  console.log(`http://127.0.0.1:${server.address().port}`);
  open();
});

function open() {
  mkdirSync(values.data, { recursive: true });
  const db = new BetterSqlite3(join(values.data, 'barest.sqlite'));
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE block (n INTEGER PRIMARY KEY, samples INTEGER NOT NULL, packed BLOB NOT NULL)');
  const insert = db.prepare('INSERT INTO block (samples, packed) VALUES (?, ?)');
  setInterval(() => keep(insert), 1000);
  for (const path of values.serial) watch(path);
}

function watch(path) {
  const opened = new SerialPort({ path, baudRate: 115_200 });
  const probe = `${path}/1`;
  opened.pipe(new ReadlineParser({ encoding: 'latin1' })).on('data', (line) => {
    const sample = parse(line);
    if (sample === null) return;
    pending.push(values.serial.indexOf(path), sample.n, sample.ms, sample.t);
    tell({ id: probe, plateC: sample.t });
  });
}

/** @returns the line's values, or null where its checksum does not match */
function parse(line) {
  const star = line.lastIndexOf('*');
  let sum = 0;
  for (let i = 0; i < star; i += 1) sum ^= line.charCodeAt(i);
  if (sum !== Number.parseInt(line.slice(star + 1), 16)) return null;
  const sample = {};
  for (const pair of line.slice(0, star).split(' ')) {
    const [key, value] = pair.split('=');
    sample[key] = Number(value);
  }
  return sample;
}

const FIELDS = 4;
let pending = [];

function keep(insert) {
  if (pending.length === 0) return;
  insert.run(pending.length / FIELDS, Buffer.from(Float64Array.from(pending).buffer));
  pending = [];
}

const newest = new Map();
let waiting = false;

/** With a gap to keep, the newest of each probe goes when it has passed; else each goes at once. */
function tell(probe) {
  newest.set(probe.id, probe);
  if (waiting) return;
  if (coalesceMs === 0) {
    send();
    return;
  }
  waiting = true;
  setTimeout(send, coalesceMs);
}

function send() {
  waiting = false;
  const text = Buffer.from(JSON.stringify({ kind: 'readings', probes: [...newest.values()] }));
  newest.clear();
  for (const client of sockets.clients) client.send(text, { binary: false });
}

process.on('SIGTERM', () => process.exit());
