import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Book, BookFailure, BookReader, Commit } from '../daemon/book/book.ts';
import { FOLD_VERSION } from '../shared/watch/watch.ts';
import { sayVersion } from './unit/book/contents.ts';
import { dataFolder, entriesOf, foundOf, recording } from './unit/book/recording.ts';
import { FOUR_PROBES, watchRecording } from './unit/book/watch-recording.ts';

/** What every store must do, whatever is underneath it. */

export interface Store {
  readonly book: Book;
  /** Must replay with the program's own fold. */
  readonly reader: BookReader;
}

const keepAll = async (book: Book, commits: Iterable<Commit>): Promise<void> => {
  for (const commit of commits) await book.commit(commit);
};
const failureOf = async (work: Promise<unknown>): Promise<BookFailure> => {
  const error: unknown = await work.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  // By name: a store from the build has a class of its own.
  if (error instanceof Error && error.name === 'BookFailure') return error as BookFailure;
  throw new Error(`not a BookFailure: ${String(error)}`);
};

export function storeContract(name: string, make: (folder: string) => Store): void {
  const storeIn = (folder: string): Store => {
    const store = make(folder);
    onTestFinished(async () => {
      await store.reader.close();
      await store.book.close();
    });
    return store;
  };
  describe(`the store contract: ${name}`, { timeout: 60_000 }, () => {
    it('begins a book where there is none, in a folder that it makes', async () => {
      const { book, reader } = storeIn(join(dataFolder(), 'deep', 'down'));
      expect(await book.open()).toEqual({ setAside: null, interrupted: [], notKept: null });
      expect(await reader.sessions()).toEqual([]);
      expect(await reader.session('a')).toBeNull();
      expect((await failureOf(reader.findings('a'))).failure).toBe('no-such-session');
      expect((await failureOf(reader.verify('a'))).message).toContain('There is no session a');
    });

    it('gives back what was committed, as soon as the commit has settled', async () => {
      const { book, reader } = storeIn(dataFolder());
      await book.open();
      const commits = [...watchRecording('a', { seconds: 30 })];
      for (const [i, commit] of commits.entries()) {
        await book.commit(commit);
        const sofar = commits.slice(0, i + 1);
        const samples = entriesOf(sofar).filter((e) => e.input.kind === 'sample').length;
        const { untilMs, peakC, end } = commit;
        expect(await reader.session('a')).toMatchObject({
          ...commits[0]?.begin,
          startedAtUtc: '2026-03-01T08:00:01.000+00:00',
          endedAtUtc: end?.atUtc ?? null,
          endWhy: end?.why ?? null,
          untilMs,
          peakC,
          samples,
          findings: foundOf(sofar).length,
        });
      }
      expect(await reader.findings('a')).toEqual(foundOf(commits));
      expect(foundOf(commits).some((f) => f.finding.kind === 'alarm')).toBe(true);
      expect(await reader.sessions()).toEqual([await reader.session('a')]);
    });

    it.each([false, true])(
      'replays a session to exactly what is stored (begun while watching: %s)',
      async (running) => {
        const { book, reader } = storeIn(dataFolder());
        await book.open();
        const commits = [...watchRecording('a', { running })];
        await keepAll(book, commits);
        expect(await reader.verify('a')).toEqual({
          id: 'a',
          firstBadCommit: null,
          foldVersion: FOLD_VERSION,
          sameFoldVersion: true,
          differences: [],
          findings: foundOf(commits).length,
          samples: 60 * 40,
        });
      },
    );

    it('names the finding that replay does not give', async () => {
      const { book, reader } = storeIn(dataFolder());
      await book.open();
      const commits = [...watchRecording('a')];
      const invented = { seq: 7, tMs: 1100, finding: { kind: 'heat', change: 'cold' } } as const;
      await keepAll(
        book,
        commits.map((c, i) => (i === 0 ? { ...c, found: [...c.found, invented] } : c)),
      );
      const { differences, firstBadCommit } = await reader.verify('a');
      expect(differences).toEqual([{ seq: 7, subject: 'heat:cold', stored: invented, replayed: null }]);
      expect(firstBadCommit).toBeNull();
    });

    it('gives a trace and the items, and keeps what was found of one', async () => {
      const { book, reader } = storeIn(dataFolder());
      await book.open();
      await keepAll(book, watchRecording('a'));
      let trace = await reader.trace('a', { fromMs: null, toMs: null, points: 400 });
      while (!trace.complete) trace = await reader.trace('a', { fromMs: null, toMs: null, points: 400 });
      expect(trace.probes.map((probe) => probe.id).sort()).toEqual([...FOUR_PROBES].sort());
      const highest = Math.max(...trace.probes.flatMap((probe) => probe.maxC.map((c) => c ?? 0)));
      expect(highest).toBe((await reader.session('a'))?.peakC);
      expect((await failureOf(reader.trace('b', { fromMs: 0, toMs: 1, points: 2 }))).failure).toBe(
        'no-such-session',
      );
      // Its iron is marked as on its rest before it is over the limit.
      expect(await reader.items()).toEqual([]);
      const closing = { item: 'a-1', by: 'A', found: 'x', atUtc: '2026-03-02T08:00:00Z', commandId: 'c' };
      expect(await book.closeItem(closing)).toEqual(closing);
      expect(await book.closeItem({ ...closing, by: 'B', commandId: 'd' })).toEqual(closing);
    });

    it('writes readings as CSV', async () => {
      const { book, reader } = storeIn(dataFolder());
      await book.open();
      await keepAll(book, watchRecording('a', { seconds: 40 }));
      const chunks: string[] = [];
      for await (const chunk of reader.readingsCsv('a')) chunks.push(chunk);
      const lines = chunks.join('').split('\n');
      expect(lines[0]).toBe(
        'utc,session_s,probe,watched,quality,plate_c,check_c,typed_c,raw_t_c,emf_uv,cold_junction_c,motion_g',
      );
      expect(lines.at(-1)).toBe('');
      expect(lines).toHaveLength(1 + 40 * 40 + 1);
      expect(chunks.length).toBeGreaterThan(1);
      for (const line of lines.slice(1, -1))
        expect(line).toMatch(
          /^2026-03-01T08:00:\d\d\.\d{3}\+00:00,-?\d+\.\d{3},usb-demo-0001\/\w+,monitored,[a-z-]+,(-?\d+(\.\d{1,3})?)?,,,-?\d+(\.\d\d?)?,,,$/,
        );
    });

    it('lets go of CSV that nobody reads to the end', async () => {
      const { book, reader } = storeIn(dataFolder());
      await book.open();
      await keepAll(book, watchRecording('a', { seconds: 40 }));
      for await (const chunk of reader.readingsCsv('a')) {
        expect(chunk).toContain('utc');
        break;
      }
      await book.commit(recording('b')[0] as Commit);
      expect(await reader.sessions()).toHaveLength(2);
    });

    it('keeps commits in the order in which they were handed over, without waiting between them', async () => {
      const { book, reader } = storeIn(dataFolder());
      await book.open();
      await Promise.all([...watchRecording('a')].map((commit) => book.commit(commit)));
      expect(await reader.verify('a')).toMatchObject({ firstBadCommit: null, differences: [] });
    });

    it('refuses a commit that belongs nowhere, keeps nothing of it and goes on with the next', async () => {
      const { book, reader } = storeIn(dataFolder());
      await book.open();
      const commits = recording('a');
      const [first, second, third] = commits as [Commit, Commit, Commit];
      await book.commit(first);
      const wrong: Commit[] = [
        { ...first },
        { ...third, session: 'nobody' },
        { ...second, untilSeq: 3 },
        { ...second, entries: second.entries.toReversed() },
        { ...second, entries: [{ seq: 1, tMs: 5000, input: { kind: 'time' } }] },
        { ...second, entries: [{ seq: 50, tMs: 5000, input: { kind: 'tick' } }] },
        { ...first, session: 'b' },
      ];
      const before = await reader.sessions();
      const settled = wrong.map((commit) => failureOf(book.commit(commit)));
      const next = book.commit(second);
      const failures = await Promise.all(settled);
      await next;
      expect(failures.map((f) => f.failure)).toEqual(wrong.map(() => 'session-broken'));
      expect(before).toHaveLength(1);
      expect(await reader.findings('a')).toEqual(foundOf([first, second]));
      await keepAll(book, commits.slice(2));
      expect((await failureOf(book.commit({ ...third, untilSeq: 9999 }))).message).toContain('has ended');
    });

    it('ends what nobody ended, and tells what to go on with, once', async () => {
      const folder = dataFolder();
      const first = make(folder);
      await first.book.open();
      const commits = [...watchRecording('a', { ended: false })];
      await keepAll(first.book, commits);
      await first.book.close();
      await first.reader.close();

      const { book, reader } = storeIn(folder);
      const opened = await book.open();
      const heel = { kind: 'over-limit', probe: FOUR_PROBES[0], state: 'acknowledged' };
      expect(opened.interrupted).toHaveLength(1);
      expect(opened.interrupted[0]).toMatchObject({
        id: 'a',
        ironId: 'iron-1',
        commandIds: ['a-rest', 'a-ack'],
        stageId: null,
        dial: null,
        place: 'on-rest',
        hot: true,
      });
      expect(opened.interrupted[0]?.alarms).toContainEqual(expect.objectContaining(heel));
      expect(await reader.session('a')).toMatchObject({
        endWhy: 'interrupted',
        endedAtUtc: new Date((commits[0]?.begin?.originUtcMs ?? 0) + (commits.at(-1)?.untilMs ?? 0))
          .toISOString()
          .replace('Z', '+00:00'),
      });
      expect(await reader.verify('a')).toMatchObject({ firstBadCommit: null, differences: [] });
      expect((await book.open()).interrupted).toEqual([]);
    });

    it('sets a damaged book aside under a dated name, with its log, and begins another', async () => {
      const folder = dataFolder();
      const garbage = Buffer.alloc(20_000, 'no book at all ');
      writeFileSync(join(folder, 'book.sqlite'), garbage);
      writeFileSync(join(folder, 'book.sqlite-wal'), 'no log either');
      const { book, reader } = storeIn(folder);
      const { setAside } = await book.open();
      expect(setAside).toMatch(/book-damaged-\d{4}-\d\d-\d\dT\d\d-\d\d-\d\dZ\.sqlite$/);
      expect(readFileSync(setAside ?? '')).toEqual(garbage);
      expect(readdirSync(folder).some((file) => file.endsWith('Z.sqlite-wal'))).toBe(true);
      await keepAll(book, recording('a'));
      expect(await reader.sessions()).toHaveLength(1);
    });

    it('refuses a book newer than itself, names both versions and leaves it as it is', async () => {
      const folder = dataFolder();
      const file = join(folder, 'book.sqlite');
      const first = make(folder);
      await first.book.open();
      await first.book.close();
      await first.reader.close();
      sayVersion(folder, 7);
      const before = readFileSync(file);

      const { book, reader } = storeIn(folder);
      const failure = await failureOf(book.open());
      expect(failure.failure).toBe('newer-than-program');
      expect(failure.message).toMatch(/version 7.*version 4/);
      expect((await failureOf(reader.sessions())).failure).toBe('newer-than-program');
      expect((await failureOf(book.commit(recording('a')[0] as Commit))).failure).toBe('newer-than-program');
      expect(readFileSync(file)).toEqual(before);
    });

    it('says so where the file is a folder', async () => {
      const folder = dataFolder();
      mkdirSync(join(folder, 'book.sqlite'));
      const { book } = storeIn(folder);
      expect((await failureOf(book.open())).message).toContain(join(folder, 'book.sqlite'));
    });
  });
}
