import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keptOf } from '../../../daemon/watching/kept-step.ts';
import { HELD_AT_MOST, Recorder } from '../../../daemon/watching/recorder.ts';
import { Shelf } from './support/shelf.ts';
import { beginningAt, sampleStep, stateAt, tickStep } from './support/steps.ts';

let shelf: Shelf;
let begun: number;

beforeEach(() => {
  vi.useFakeTimers();
  shelf = new Shelf();
  begun = 1;
});
afterEach(() => vi.useRealTimers());

function recorderFrom(
  seq: number,
  keep = shelf.keep,
  before = [] as ReturnType<typeof sampleStep>[],
): Recorder {
  const steps = before.flatMap((step) => keptOf(step) ?? []);
  const until = before.at(-1)?.after ?? stateAt(seq);
  return new Recorder(
    beginningAt('s1', stateAt(seq)),
    { steps, until },
    {
      keep,
      utcOf: (tMs) => new Date(tMs).toISOString(),
      goOn: (from, broken) => {
        begun += 1;
        return beginningAt(`s${begun}`, from, broken);
      },
    },
  );
}

const addAll = (recorder: Recorder, from: number, to: number): void => {
  for (let seq = from; seq <= to; seq += 1) recorder.add(sampleStep(seq));
};

const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);

describe('a session that is recorded', () => {
  it('begins with what is carried into it, and holds each input with its findings', async () => {
    const recorder = recorderFrom(4);
    addAll(recorder, 5, 9);
    expect(await recorder.flush()).toBe(true);
    const [commit] = shelf.at(0);
    expect(commit?.begin?.id).toBe('s1');
    expect(commit?.entries[0]).toMatchObject({ seq: 4, input: { kind: 'carried' } });
    expect(shelf.seqsAt(0)).toEqual(range(5, 9));
    expect(commit?.found.map((f) => f.seq)).toEqual([6, 9]);
    expect(commit).toMatchObject({ untilSeq: 9, untilMs: 90, peakC: 109, end: null });
  });

  it('commits within a second of what came, and says how far time had come where nothing came', async () => {
    const recorder = recorderFrom(0);
    recorder.add(sampleStep(1));
    await vi.advanceTimersByTimeAsync(1000);
    expect(shelf.seqsAt(0)).toEqual([1]);
    recorder.add(tickStep(2));
    await vi.advanceTimersByTimeAsync(1000);
    expect(shelf.at(0).at(-1)).toMatchObject({ entries: [], untilSeq: 2 });
  });

  it('makes no commit where nothing has happened since the last one', async () => {
    const recorder = recorderFrom(0);
    recorder.add(sampleStep(1));
    await recorder.flush();
    expect(await recorder.flush()).toBe(true);
    expect(shelf.at(0)).toHaveLength(1);
  });

  it('holds what came during a commit in the next one, before it says that it is kept', async () => {
    const answers: (() => void)[] = [];
    const recorder = recorderFrom(0, async (commit) => {
      await new Promise<void>((answer) => answers.push(answer));
      return shelf.keep(commit);
    });
    recorder.add(sampleStep(1));
    const first = recorder.flush();
    recorder.add(sampleStep(2));
    const second = recorder.flush();
    answers.shift()?.();
    expect(await first).toBe(true);
    await vi.advanceTimersByTimeAsync(0);
    expect(shelf.seqsAt(0)).toEqual([1]);
    answers.shift()?.();
    expect(await second).toBe(true);
    expect(shelf.at(0).map((c) => c.untilSeq)).toEqual([1, 2]);
  });

  it('ends with its reason, at the time that the watch has come to', async () => {
    const recorder = recorderFrom(0);
    addAll(recorder, 1, 3);
    expect(await recorder.end('cold')).toBe(true);
    expect(shelf.at(0).at(-1)?.end).toEqual({ why: 'cold', atUtc: '1970-01-01T00:00:00.030Z' });
  });

  it('takes in however much came before it, without taking that for a disk that keeps nothing', async () => {
    const before = range(1, HELD_AT_MOST + 500).map((seq) => sampleStep(seq));
    const recorder = recorderFrom(0, shelf.keep, before);
    recorder.add(sampleStep(HELD_AT_MOST + 501));
    expect(await recorder.flush()).toBe(true);
    expect(shelf.ids).toEqual(['s1']);
    expect(shelf.seqsAt(0)).toHaveLength(HELD_AT_MOST + 501);
    expect(shelf.at(0)[0]?.peakC).toBe(100 + HELD_AT_MOST + 501);
  });
});

describe('where nothing can be kept for a while', () => {
  it('says so, and tries again with all that came since', async () => {
    shelf.isFull = true;
    const recorder = recorderFrom(0);
    addAll(recorder, 1, 3);
    expect(await recorder.flush()).toBe(false);
    recorder.add(sampleStep(4));
    await vi.advanceTimersByTimeAsync(5000);
    shelf.isFull = false;
    await vi.advanceTimersByTimeAsync(5000);
    expect(shelf.ids).toEqual(['s1']);
    expect(shelf.seqsAt(0)).toEqual([1, 2, 3, 4]);
    expect(shelf.at(0)).toHaveLength(1);
  });

  it('goes on trying to end a session', async () => {
    const recorder = recorderFrom(0);
    recorder.add(sampleStep(1));
    await recorder.flush();
    shelf.isFull = true;
    expect(await recorder.end('by-hand')).toBe(false);
    await vi.advanceTimersByTimeAsync(5000);
    shelf.isFull = false;
    await vi.advanceTimersByTimeAsync(5000);
    expect(shelf.at(0).at(-1)?.end?.why).toBe('by-hand');
  });
});

describe('where too much is held back', () => {
  it('breaks off at what is kept, and goes on as another session once keeping works again', async () => {
    const recorder = recorderFrom(0);
    addAll(recorder, 1, 2);
    await recorder.flush();
    shelf.isFull = true;
    addAll(recorder, 3, HELD_AT_MOST + 3);
    shelf.isFull = false;
    recorder.add(sampleStep(HELD_AT_MOST + 4));
    // What came since the break is not in the book, and not said to be.
    expect(await recorder.flush()).toBe(false);
    recorder.add(sampleStep(HELD_AT_MOST + 5));
    expect(await recorder.flush()).toBe(true);
    expect(shelf.seqsAt(0)).toEqual([1, 2]);
    expect(shelf.at(0).at(-1)).toMatchObject({ untilSeq: 2, peakC: 102, end: { why: 'interrupted' } });
    expect(shelf.seqsAt(1)).toEqual([HELD_AT_MOST + 5]);
    expect(shelf.at(1)[0]?.begin).toMatchObject({ firstSeq: HELD_AT_MOST + 4, fromSession: 's1' });
    expect(recorder.session).toBe('s2');
  });

  it('goes on once, where a slow commit comes through after all', async () => {
    const recorder = recorderFrom(0, async (commit) => {
      await new Promise((resolve) => {
        setTimeout(resolve, 500);
      });
      return shelf.keep(commit);
    });
    addAll(recorder, 1, 2);
    void recorder.flush();
    addAll(recorder, 3, HELD_AT_MOST + 3);
    await vi.advanceTimersByTimeAsync(5000);
    expect(shelf.ids).toEqual(['s1', 's2']);
    expect(shelf.at(0).at(-1)).toMatchObject({ untilSeq: 2, end: { why: 'interrupted' } });
    expect(begun).toBe(2);
  });

  it('a session of which nothing was kept still says what was carried into it, and where it is gone on with', async () => {
    shelf.isFull = true;
    const recorder = recorderFrom(0);
    addAll(recorder, 1, HELD_AT_MOST + 1);
    await recorder.flush();
    shelf.isFull = false;
    await vi.advanceTimersByTimeAsync(10_000);
    expect(shelf.ids).toEqual(['s1', 's2']);
    expect(shelf.at(0)).toHaveLength(1);
    expect(shelf.at(0)[0]).toMatchObject({ untilSeq: 0, peakC: null, end: { why: 'interrupted' } });
    expect(shelf.at(1)[0]?.begin?.fromSession).toBe('s1');
  });

  it('ended by hand meanwhile, is not gone on with', async () => {
    const recorder = recorderFrom(0);
    recorder.add(sampleStep(1));
    await recorder.flush();
    shelf.isFull = true;
    addAll(recorder, 2, HELD_AT_MOST + 2);
    expect(await recorder.end('by-hand')).toBe(false);
    shelf.isFull = false;
    await vi.advanceTimersByTimeAsync(10_000);
    expect(shelf.ids).toEqual(['s1']);
    expect(shelf.at(0).at(-1)).toMatchObject({ untilSeq: 1, end: { why: 'interrupted' } });
  });
});

describe('where the session is gone from the book', () => {
  it('another goes on from where the book had come, and loses nothing', async () => {
    const recorder = recorderFrom(0);
    addAll(recorder, 1, 3);
    await recorder.flush();
    shelf.setAside();
    addAll(recorder, 4, 6);
    expect(await recorder.flush()).toBe(true);
    expect(shelf.ids).toEqual(['s1', 's2']);
    expect(shelf.at(1)[0]?.begin).toMatchObject({ firstSeq: 3, fromSession: 's1' });
    expect(shelf.seqsAt(1)).toEqual([4, 5, 6]);
    expect(recorder.session).toBe('s2');
  });

  it('and was to be ended: the other one holds the rest, and ends', async () => {
    const recorder = recorderFrom(0);
    recorder.add(sampleStep(1));
    await recorder.flush();
    shelf.setAside();
    recorder.add(sampleStep(2));
    expect(await recorder.end('cold')).toBe(true);
    expect(shelf.seqsAt(1)).toEqual([2]);
    expect(shelf.at(1).at(-1)?.end?.why).toBe('cold');
  });

  it('and the new one can not begin either: it is tried again under another id, but not in a rush', async () => {
    const asked: string[] = [];
    const recorder = recorderFrom(0, (commit) => {
      asked.push(commit.session);
      return asked.length < 4 ? Promise.resolve('never') : shelf.keep(commit);
    });
    recorder.add(sampleStep(1));
    expect(await recorder.flush()).toBe(false);
    expect(asked).toEqual(['s1']);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(asked).toEqual(['s1', 's2', 's3', 's4']);
    expect(shelf.seqsAt(0)).toEqual([1]);
    expect(shelf.at(0)[0]?.begin?.fromSession).toBeNull();
  });

  it('after it was broken off: nothing is left to end, and another goes on from now', async () => {
    const recorder = recorderFrom(0);
    recorder.add(sampleStep(1));
    await recorder.flush();
    shelf.isFull = true;
    addAll(recorder, 2, HELD_AT_MOST + 2);
    shelf.setAside();
    shelf.isFull = false;
    await vi.advanceTimersByTimeAsync(10_000);
    expect(shelf.ids).toEqual(['s1', 's2']);
    expect(shelf.at(0).at(-1)?.end).toBeNull();
    expect(shelf.at(1)[0]?.begin).toMatchObject({ firstSeq: HELD_AT_MOST + 2, fromSession: 's1' });
  });
});
