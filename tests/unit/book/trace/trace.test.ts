import { describe, expect, it, onTestFinished } from 'vitest';
import type { Commit, TraceAsked, TraceRead } from '../../../../daemon/book/book.ts';
import { BookFileReader } from '../../../../daemon/book/read/book-file-reader.ts';
import type { Rows } from '../../../../daemon/book/read/trace/rows.ts';
import { SessionTrace } from '../../../../daemon/book/read/trace/session-trace.ts';
import { BookFile } from '../../../../daemon/book/store/book-file.ts';
import { connectFile, connectForReading } from '../../../../daemon/book/store/connect.ts';
import { bookRows } from '../../../../daemon/book/store/rows.ts';
import { tamper } from '../contents.ts';
import { dataFolder, headOf, littleFold, recording, SET_ASIDE_UTC_MS } from '../recording.ts';
import { toEnd, watchFold } from '../stores.ts';
import { watchRecording } from '../watch-recording.ts';

const written = (commits: Iterable<Commit>) => {
  const folder = dataFolder();
  const book = new BookFile(folder);
  onTestFinished(() => book.close());
  book.open(SET_ASIDE_UTC_MS);
  for (const commit of commits) book.commit(commit, SET_ASIDE_UTC_MS);
  return { folder, book };
};
const whole: TraceAsked = { fromMs: null, toMs: null, points: 8000 };
const never = (): boolean => false;
const traceOf = (reader: BookFileReader, asked = whole): TraceRead => toEnd(reader.trace('a', asked, never));
const highest = (trace: TraceRead, probe = 0): number =>
  Math.max(...(trace.probes[probe]?.maxC ?? []).map((c) => c ?? Number.NEGATIVE_INFINITY));

const peakOf = (rows: Rows | undefined): number =>
  Math.max(...[...(rows?.highC ?? [])].filter((_, i) => !Number.isNaN(rows?.lowC[i])));

/** Valid readings of a session as its CSV has them. */
function csvReadings(reader: BookFileReader): { probe: string; s: number; c: number }[] {
  return [...reader.readingsCsv('a')]
    .join('')
    .split('\n')
    .slice(1, -1)
    .map((line) => line.split(','))
    .filter((cells) => cells[4] === 'ok')
    .map((cells) => ({ probe: cells[2] ?? '', s: Number(cells[1]), c: Number(cells[5]) }));
}

describe('a trace', () => {
  it('has the readings that the CSV has, and the peak that the session has, at every zoom', () => {
    const { folder } = written(watchRecording('a'));
    const reader = new BookFileReader(folder, watchFold);
    const readings = csvReadings(reader);
    for (const [fromS, toS, points] of [
      [0, 60, 8000],
      [0, 60, 7],
      [12, 13.5, 40],
      [20, 50, 2],
      [59, 90, 100],
    ] as const) {
      const trace = traceOf(reader, { fromMs: fromS * 1000, toMs: toS * 1000, points });
      expect(trace.complete).toBe(true);
      for (const { id, maxC, minC, tMs } of trace.probes) {
        const raw = readings.filter((r) => r.probe === id && r.s >= fromS && r.s <= toS).map((r) => r.c);
        expect(tMs.length).toBeLessThanOrEqual(points);
        expect(Math.max(...maxC.map((c) => c ?? -999))).toBeCloseTo(Math.max(...raw), 3);
        expect(Math.min(...minC.map((c) => c ?? 999))).toBeCloseTo(Math.min(...raw), 3);
      }
    }
    const all = traceOf(reader);
    expect(Math.max(...all.probes.map((_, i) => highest(all, i)))).toBe(reader.session('a')?.peakC);
  });

  it('says what held: the settings, the place, the findings without cycles', () => {
    const { folder } = written(watchRecording('a'));
    const reader = new BookFileReader(folder, watchFold);
    const trace = traceOf(reader);
    expect(trace.settings).toMatchObject([
      { fromMs: 0, schedule: { fabricLimitC: 190 }, probes: [{}, {}, {}, {}] },
    ]);
    expect(trace.work.map(({ place }) => place)).toEqual(['unknown', 'on-rest']);
    const stored = reader.findings('a');
    expect(trace.found).toEqual(stored.filter(({ finding }) => finding.kind !== 'cycle'));
    const late = traceOf(reader, { ...whole, fromMs: 40_000 });
    expect(late.work.map(({ place }) => place)).toEqual(['on-rest']);
    expect(late.found.every(({ tMs }) => tMs >= 41_000)).toBe(true);
  });

  it('has gaps with their fault, and the notes', () => {
    const { folder } = written(recording('a'));
    const trace = traceOf(new BookFileReader(folder, littleFold));
    const faults = trace.probes.flatMap(({ fault }) => fault.filter((one) => one !== null));
    expect(faults).toEqual(['open', 'open']);
    for (const { fault, minC, maxC } of trace.probes)
      fault.forEach((one, i) =>
        expect([minC[i] === null, maxC[i] === null]).toEqual([one !== null, one !== null]),
      );
    expect(trace.notes.map(({ text }) => text)).toEqual(['lap 1', 'lap 2', 'lap 3', 'lap 4']);
  });

  it('is given as far as it has come, and goes on when it is asked for again', () => {
    const { folder } = written(watchRecording('a', { seconds: 20 }));
    const reader = new BookFileReader(folder, watchFold);
    const reached: number[] = [];
    for (;;) {
      let left = 4;
      const trace = toEnd(reader.trace('a', whole, () => --left < 0));
      reached.push(trace.readUntilMs);
      expect(trace.untilMs).toBeGreaterThan(19_000);
      if (trace.complete) break;
    }
    expect(reached.length).toBeGreaterThan(3);
    expect(reached).toEqual(reached.toSorted((a, b) => a - b));
    expect(traceOf(reader)).toEqual(traceOf(new BookFileReader(folder, watchFold)));
  });

  it('of a session that runs grows with it', () => {
    const commits = [...watchRecording('a', { seconds: 30 })];
    const { folder, book } = written(commits.slice(0, 10));
    const reader = new BookFileReader(folder, watchFold);
    expect(traceOf(reader)).toMatchObject({ complete: true });
    for (const commit of commits.slice(10)) book.commit(commit, SET_ASIDE_UTC_MS);
    expect(traceOf(reader)).toEqual(traceOf(new BookFileReader(folder, watchFold)));
  });

  it('gives what stands before a break of the chain, and says where it breaks', () => {
    const { folder } = written(recording('a'));
    tamper(folder, 'UPDATE link SET until_ms = 4001 WHERE idx = 3');
    const trace = traceOf(new BookFileReader(folder, littleFold));
    expect(trace).toMatchObject({
      complete: true,
      readUntilMs: 3000,
      broken: { atMs: 3000, what: 'its content does not match its link' },
    });
    expect(trace.probes[0]?.tMs.length).toBeGreaterThan(10);
  });

  it('keeps no more rows than it may, and its peaks and gaps all the same', () => {
    const { folder } = written(recording('a', { commits: 40, samplesACommit: 50 }));
    const rows = bookRows(connectForReading(`${folder}/book.sqlite`, connectFile));
    const fine = new SessionTrace(headOf('a'), littleFold);
    const coarse = new SessionTrace(headOf('a'), littleFold, 200);
    for (const trace of [fine, coarse]) {
      const session = rows.sessionNumber('a') ?? -1;
      for (let more = true; more; ) more = trace.readNext(rows, session);
    }
    expect([fine.rowCount, fine.coarse]).toEqual([2000, false]);
    expect(coarse.rowCount).toBeLessThan(300);
    expect(coarse.coarse).toBe(true);
    for (const [probe, all] of fine.probes) {
      const few = coarse.probes.get(probe);
      expect(peakOf(few)).toBe(peakOf(all));
    }
  });
});
