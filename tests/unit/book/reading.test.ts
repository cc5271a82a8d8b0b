import { describe, expect, it } from 'vitest';
import { BookFailure, type Commit } from '../../../daemon/book/book.ts';
import { BookFileReader } from '../../../daemon/book/read/book-file-reader.ts';
import type { Fold } from '../../../daemon/book/read/fold.ts';
import { BookFile } from '../../../daemon/book/store/book-file.ts';
import { emptySample } from '../../../shared/thermometer/sample.ts';
import { sayVersion, tamper } from './contents.ts';
import { dataFolder, headOf, littleFold, recording, SET_ASIDE_UTC_MS, sampleAt } from './recording.ts';
import { toEnd } from './stores.ts';

function bookOf(commits: readonly Commit[]): string {
  const folder = dataFolder();
  const book = new BookFile(folder);
  book.open(SET_ASIDE_UTC_MS);
  for (const commit of commits) book.commit(commit, SET_ASIDE_UTC_MS);
  book.close();
  return folder;
}

describe('readings as CSV', () => {
  const commit: Commit = {
    session: 'a',
    begin: headOf('a'),
    entries: [
      sampleAt(2, 1000, 121.5),
      sampleAt(3, 1100, null),
      {
        seq: 4,
        tMs: 1234,
        input: {
          kind: 'sample',
          sample: {
            ...emptySample('say "hi", board/1'),
            tC: 0.1,
            emfUv: 6138.25,
            coldJunctionC: -0.5,
            motionG: 1e-9,
          },
        },
      },
    ],
    found: [],
    untilSeq: 4,
    untilMs: 1234,
    peakC: 121.5,
    end: null,
  };

  it('have a line a sample, with what the wire said as it came', () => {
    const folder = bookOf([commit]);
    expect([...new BookFileReader(folder, littleFold).readingsCsv('a')].join('')).toBe(
      [
        'utc,session_s,probe,watched,quality,plate_c,check_c,typed_c,raw_t_c,emf_uv,cold_junction_c,motion_g',
        '2026-03-01T08:00:01.000+00:00,0.000,demo-board/heel,monitored,ok,121.5,,,121.5,,,',
        '2026-03-01T08:00:01.100+00:00,0.100,demo-board/heel,monitored,open,,,,,,,',
        '2026-03-01T08:00:01.234+00:00,0.234,"say ""hi"", board/1",monitored,ok,0.1,,,0.1,6138.25,-0.5,1e-9',
        '',
      ].join('\n'),
    );
  });

  it('say nothing of a probe that the fold does not read', () => {
    const deaf: Fold = {
      version: 1,
      *replay(entries) {
        for (const entry of entries) yield { entry, found: [], state: { readings: {} } };
      },
    };
    const lines = [...new BookFileReader(bookOf([commit]), deaf).readingsCsv('a')].join('').split('\n');
    expect(lines[1]).toBe('2026-03-01T08:00:01.000+00:00,0.000,demo-board/heel,monitored,,,,,121.5,,,');
  });

  it('of a session that is not there are refused', () => {
    const reader = new BookFileReader(bookOf([commit]), littleFold);
    expect(() => [...reader.readingsCsv('b')]).toThrow('There is no session b');
  });
});

const folding = (version: number, work: Fold['replay']): Fold => ({ version, replay: work });

describe('verification', () => {
  it('tells the fold which version it must go by', () => {
    const asked: boolean[] = [];
    for (const version of [1, 2]) {
      const fold = folding(version, (entries, untilMs, exact) => {
        asked.push(exact);
        return littleFold.replay(entries, untilMs, exact);
      });
      const found = toEnd(new BookFileReader(bookOf(recording('a')), fold).verify('a'));
      expect(found).toMatchObject({ foldVersion: 1, sameFoldVersion: version === 1, differences: [] });
    }
    expect(asked).toEqual([true, false]);
  });

  it('names the commit whose inputs cannot be folded again', () => {
    const fold = folding(1, function* (entries, untilMs, exact) {
      for (const step of littleFold.replay(entries, untilMs, exact)) {
        if ((step.entry?.tMs ?? 0) >= 2500) throw new RangeError('number 30 is missing');
        yield step;
      }
    });
    const found = toEnd(new BookFileReader(bookOf(recording('a')), fold).verify('a'));
    expect(found.firstBadCommit).toEqual({
      index: 1,
      fromMs: 2000,
      toMs: 3000,
      what: "its inputs can't be folded again (number 30 is missing)",
    });
    expect(found.differences).toEqual([]);
  });

  it('does not take a mistake of the program for a broken chain', () => {
    const fold = folding(1, () => {
      throw new TypeError('a mistake');
    });
    const verify = () => toEnd(new BookFileReader(bookOf(recording('a')), fold).verify('a'));
    expect(verify).toThrow(BookFailure);
    expect(verify).toThrow('a mistake');
  });

  it('compares what stands before a break', () => {
    const folder = bookOf(recording('a'));
    tamper(folder, 'UPDATE link SET until_ms = 1 WHERE idx = 3');
    const deaf = folding(1, function* (entries, untilMs, exact) {
      for (const step of littleFold.replay(entries, untilMs, exact)) yield { ...step, found: [] };
    });
    const found = toEnd(new BookFileReader(folder, deaf).verify('a'));
    expect(found.firstBadCommit).toMatchObject({ index: 3, fromMs: 4000, toMs: 4000 });
    expect(found.differences.length).toBe(
      recording('a')
        .slice(0, 3)
        .flatMap((c) => c.found).length,
    );
    expect(found.samples).toBe(60);
  });
});

describe('reading', () => {
  it('gives sessions newest first', () => {
    const folder = bookOf([...recording('a'), ...recording('b'), ...recording('c')]);
    expect(new BookFileReader(folder, littleFold).sessions().map((s) => s.id)).toEqual(['c', 'b', 'a']);
  });

  it('says that a book of an older version has to be brought up to date first', () => {
    const folder = bookOf(recording('a'));
    // No version came before 1: an older book is one that says so of itself.
    sayVersion(folder, 0);
    expect(() => new BookFileReader(folder, littleFold).sessions()).toThrow(
      /version 0.*reads version 4.*Start the daemon once/,
    );
  });
});
