import { describe, expect, it } from 'vitest';
import {
  type Recorded,
  RecordedSource,
  realSchedule,
  type Schedule,
} from '../../../daemon/probe/recorded.ts';
import type { Device, SourceEvent } from '../../../daemon/probe/source.ts';
import { emptySample } from '../../../shared/thermometer/sample.ts';
import { sourceContract } from '../../source-contract.ts';

const device: Device = { id: 'board-7', path: 'a recording', simulated: false };

const at = (tMs: number, tC: number): Recorded => ({ tMs, sample: { ...emptySample('board-7/1'), tC } });

/** Time that goes on when told to. */
class HandSchedule implements Schedule {
  ms = 5000;
  #due: { ms: number; wake: () => void } | null = null;

  nowMs(): number {
    return this.ms;
  }

  after(delayMs: number, wake: () => void): () => void {
    if (this.#due !== null) throw new Error('one timer at a time');
    this.#due = { ms: this.ms + delayMs, wake };
    return () => {
      this.#due = null;
    };
  }

  get waiting(): boolean {
    return this.#due !== null;
  }

  goTo(ms: number): void {
    while (this.#due !== null && this.#due.ms <= ms) {
      const { ms: dueMs, wake } = this.#due;
      this.#due = null;
      this.ms = dueMs;
      wake();
    }
    this.ms = ms;
  }
}

function played(trace: Iterable<Recorded>) {
  const schedule = new HandSchedule();
  const source = new RecordedSource({ device, trace, schedule });
  const events: SourceEvent[] = [];
  source.start((event) => events.push(event));
  const told = (): readonly string[] =>
    events.map((e) => `${e.tMs} ${e.kind === 'sample' ? e.sample.tC : e.kind === 'link' ? e.link : e.cause}`);
  return { schedule, source, events, told };
}

function* damaged(): Generator<Recorded> {
  yield at(0, 20);
  throw new Error('block 3 is damaged');
}

describe('a recorded trace', () => {
  it('plays each sample as long after the first as it was then', () => {
    const { schedule, source, told } = played([at(900, 20), at(1000, 21), at(1000, 22), at(3000, 23)]);
    expect(told()).toEqual(['5000 connected', '5000 20']);
    schedule.goTo(5099);
    expect(told()).toHaveLength(2);
    schedule.goTo(7099);
    expect(told().slice(2)).toEqual(['5100 21', '5100 22']);
    schedule.goTo(7100);
    expect(told().slice(4)).toEqual(['7100 23', '7100 lost']);
    expect(source.status()).toMatchObject({ link: 'lost', linesAccepted: 4 });
    expect(source.status().detail).not.toBe('');
    expect(schedule.waiting).toBe(false);
  });

  it('is read no further ahead than one sample', () => {
    let read = 0;
    function* trace(): Generator<Recorded> {
      for (;;) {
        read += 1;
        yield at(read * 100, 20);
      }
    }
    const { schedule } = played(trace());
    schedule.goTo(5950);
    expect(read).toBe(11);
  });

  it('that can’t be read on says so', () => {
    const { source, told } = played(damaged());
    expect(told()).toEqual(['5000 connected', '5000 20', '5000 lost']);
    expect(source.status().detail).toContain('block 3 is damaged');
  });

  it('that is empty is at its end', () => {
    expect(played([]).told()).toEqual(['5000 connected', '5000 lost']);
  });

  it('waits for nothing any more once it is stopped', async () => {
    const { schedule, source, events } = played([at(0, 20), at(100, 21)]);
    await source.stop();
    expect(schedule.waiting).toBe(false);
    schedule.goTo(9000);
    expect(events).toHaveLength(2);
  });
});

sourceContract('a recorded trace', async () => {
  const schedule = new HandSchedule();
  const trace = [at(0, 20), at(100, 21), at(200, 22), at(60_000, 23)];
  const source = new RecordedSource({ device, trace, schedule });
  return {
    source,
    yieldUntil: async (enough) => {
      while (!enough()) schedule.goTo(schedule.ms + 50);
    },
  };
});

describe('the real schedule', () => {
  it('wakes once, and not when cancelled', async () => {
    const schedule = realSchedule(() => 0);
    const woken: string[] = [];
    schedule.after(1, () => woken.push('cancelled'))();
    await new Promise<void>((resolve) => {
      schedule.after(5, () => {
        woken.push('woken');
        resolve();
      });
    });
    expect(woken).toEqual(['woken']);
  });
});
