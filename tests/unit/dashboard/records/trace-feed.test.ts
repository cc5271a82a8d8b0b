import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { traceOf } from '../../../../daemon/web/routes/session-answers.ts';
import { TraceFeed } from '../../../../dashboard/records/trace-feed.ts';
import type { Trace } from '../../../../shared/messages/trace.ts';
import { trace as read, summary } from '../../web/support/record-samples.ts';

const whole: Trace = traceOf(summary, read);

/** What was asked for, and what is answered, in order; the last answer stands for all that follow. */
function daemon(...answers: (Partial<Trace> | 'gone')[]) {
  const asked: string[] = [];
  const left = [...answers];
  vi.stubGlobal('fetch', async (path: string) => {
    asked.push(path.split('?')[1] ?? '');
    const answer = left.length > 1 ? left.shift() : left[0];
    if (answer === 'gone') throw new TypeError('fetch failed');
    return Response.json({ ...whole, ...answer });
  });
  return asked;
}

function feed(runs = false) {
  const told: (number | string)[] = [];
  const fed = new TraceFeed(
    'a/b',
    { trace: (trace) => told.push(trace.readUntilMs), failed: (why) => told.push(why) },
    () => runs,
  );
  return { fed, told };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a trace that is fetched', () => {
  it('is asked for until all of it has been worked out, and then no more', async () => {
    const asked = daemon(
      { complete: false, readUntilMs: 1 },
      { complete: false, readUntilMs: 2 },
      { readUntilMs: 3 },
    );
    const { fed, told } = feed();
    fed.want(null, 400);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(told).toEqual([1, 2, 3]);
    expect(asked).toEqual(['points=400', 'points=400', 'points=400']);
  });

  it('is the newest that was wanted, one request at a time', async () => {
    const asked = daemon({});
    const { fed, told } = feed();
    fed.want(null, 400);
    for (let i = 1; i <= 9; i++) fed.want({ fromMs: i, toMs: i + 1000.5 }, 400);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(asked).toEqual(['points=400', 'points=400&from=9&to=1010']);
    expect(told).toHaveLength(2);
  });

  it('of a session that runs is asked for again every few seconds, until it is let go', async () => {
    const asked = daemon({});
    const { fed } = feed(true);
    fed.want(null, 400);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(asked).toHaveLength(4);
    fed.stop();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(asked).toHaveLength(4);
  });

  it('that can’t be had is tried again, and it is said why', async () => {
    daemon('gone', 'gone', {});
    const { fed, told } = feed();
    fed.want(null, 400);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(told).toEqual(['The daemon could not be reached.', 'The daemon could not be reached.', 60_000]);
  });
});
