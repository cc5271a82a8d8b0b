import * as fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Commit } from '../../daemon/book/book.ts';
import { type KeepOutcome, Recorder } from '../../daemon/watching/recorder.ts';
import type { WatchStep } from '../../daemon/watching/watcher.ts';
import { Shelf } from '../unit/watching/support/shelf.ts';
import { beginningAt, sampleStep, stateAt, tickStep } from '../unit/watching/support/steps.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** What happens to a recorder, one after the other; a commit takes a random time and fails at random moments. */
type Event =
  | { readonly what: 'sample' | 'tick' | 'flush' | 'full' | 'room' | 'set-aside' }
  | { readonly what: 'wait'; readonly ms: number };

const plain = (what: Exclude<Event['what'], 'wait'>) => fc.constant<Event>({ what });
const event: fc.Arbitrary<Event> = fc.oneof(
  { weight: 12, arbitrary: plain('sample') },
  { weight: 3, arbitrary: plain('tick') },
  { weight: 3, arbitrary: plain('flush') },
  { weight: 1, arbitrary: plain('full') },
  { weight: 2, arbitrary: plain('room') },
  { weight: 1, arbitrary: plain('set-aside') },
  { weight: 4, arbitrary: fc.integer({ min: 0, max: 3000 }).map((ms): Event => ({ what: 'wait', ms })) },
);

/** A shelf that takes its time. */
class SlowShelf extends Shelf {
  readonly #delays: readonly number[];
  #turn = 0;

  constructor(delays: readonly number[]) {
    super();
    this.#delays = delays;
  }

  readonly slowly = async (commit: Commit): Promise<KeepOutcome> => {
    this.#turn += 1;
    const ms = this.#delays[this.#turn % this.#delays.length] ?? 0;
    await new Promise((resolve) => {
      setTimeout(resolve, ms);
    });
    return this.keep(commit);
  };
}

interface Run {
  readonly shelf: SlowShelf;
  readonly added: readonly WatchStep[];
  readonly begun: ReadonlyMap<string, string | null>;
}

/** Carries the events out; checks at each `true` of a flush that all that was added before it is on the shelf. */
async function carryOut(events: readonly Event[], delays: readonly number[]): Promise<Run> {
  const shelf = new SlowShelf(delays);
  const added: WatchStep[] = [];
  const begun = new Map<string, string | null>([['s1', null]]);
  const recorder = new Recorder(
    beginningAt('s1', stateAt(0)),
    { steps: [], until: stateAt(0) },
    {
      keep: shelf.slowly,
      utcOf: (tMs) => new Date(tMs).toISOString(),
      goOn: (from, broken) => {
        const id = `s${begun.size + 1}`;
        begun.set(id, broken);
        return beginningAt(id, from, broken);
      },
    },
  );
  const asked: Promise<void>[] = [];
  const flush = async (): Promise<void> => {
    const wanted = seqsOf(added);
    if (await recorder.flush()) expect(seqsOn(shelf)).toEqual(expect.arrayContaining(wanted));
  };
  let seq = 0;
  for (const one of [...events, { what: 'room' } as const]) {
    switch (one.what) {
      case 'sample':
      case 'tick':
        seq += 1;
        added.push(one.what === 'sample' ? sampleStep(seq) : tickStep(seq));
        recorder.add(added.at(-1) ?? tickStep(seq));
        break;
      case 'flush':
        asked.push(flush());
        break;
      case 'full':
      case 'room':
        shelf.isFull = one.what === 'full';
        break;
      case 'set-aside':
        shelf.setAside();
        break;
      case 'wait':
        // oxlint-disable-next-line eslint/no-await-in-loop -- one event follows the other
        await vi.advanceTimersByTimeAsync(one.ms);
    }
  }
  const ended = recorder.end('shutdown');
  await vi.advanceTimersByTimeAsync(60_000);
  await Promise.all([...asked, ended]);
  return { shelf, added, begun };
}

const seqsOf = (steps: readonly WatchStep[]): number[] =>
  steps.flatMap(({ entry }) => (entry === null ? [] : [entry.seq]));

const seqsOn = (shelf: Shelf): number[] => shelf.ids.flatMap((_, i) => shelf.seqsAt(i));

const events = fc.array(event, { maxLength: 80 });
const delays = fc.array(fc.integer({ min: 0, max: 1500 }), { minLength: 1, maxLength: 5 });

describe('a recorder, whatever fails', () => {
  it('puts every input into the book once, in order, without a gap in any session, with exactly its findings', async () => {
    await fc.assert(
      fc.asyncProperty(events, delays, async (happens, takes) => {
        const { shelf, added } = await carryOut(happens, takes);
        expect(seqsOn(shelf)).toEqual(seqsOf(added));
        for (const [i] of shelf.ids.entries()) {
          const commits = shelf.at(i);
          const until = commits.at(-1)?.untilSeq ?? 0;
          const first = commits[0]?.begin?.firstSeq ?? 0;
          const held = added.filter((s) => s.after.seq > first && s.after.seq <= until);
          expect(shelf.seqsAt(i)).toEqual(seqsOf(held));
          expect(commits.flatMap((c) => c.found)).toEqual(held.flatMap((s) => s.found));
        }
      }),
      { numRuns: 150 },
    );
  });

  it('begins each session once, where the one before ended, and says which one that was', async () => {
    await fc.assert(
      fc.asyncProperty(events, delays, async (happens, takes) => {
        const { shelf, begun } = await carryOut(happens, takes);
        const { ids } = shelf;
        for (const [i, id] of ids.entries()) {
          const [first, ...more] = shelf.at(i);
          expect(more.every((c) => c.begin === null)).toBe(true);
          expect(first?.entries[0]?.input.kind).toBe('carried');
          expect(begun.get(id) ?? null).toBe(ids[i - 1] ?? null);
          if (i > 0) expect(first?.begin?.firstSeq).toBe(shelf.at(i - 1).at(-1)?.untilSeq);
        }
        expect(shelf.at(-1).at(-1)?.end?.why).toBe('shutdown');
      }),
      { numRuns: 150 },
    );
  });
});
