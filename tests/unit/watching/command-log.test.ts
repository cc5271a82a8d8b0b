import { describe, expect, it } from 'vitest';
import { CommandLog } from '../../../daemon/watching/command-log.ts';
import type { Outcome } from '../../../shared/messages/command.ts';

const outcome = (commandId: string): Outcome => ({ commandId, session: 's', kept: true });

describe('a command that comes again', () => {
  it('is carried out once, and gets the outcome of the first time', async () => {
    const log = new CommandLog();
    let done = 0;
    const carryOut = async (): Promise<Outcome> => {
      done += 1;
      return outcome('a');
    };
    expect(await log.once('a', carryOut)).toEqual(outcome('a'));
    expect(await log.once('a', carryOut)).toEqual(outcome('a'));
    expect(done).toBe(1);
  });

  it('while the first one is under way waits for it', async () => {
    const log = new CommandLog();
    const answers: ((given: Outcome) => void)[] = [];
    const first = log.once('a', () => new Promise((resolve) => answers.push(resolve)));
    const second = log.once('a', () => Promise.reject(new Error('a second time')));
    for (const answer of answers) answer(outcome('a'));
    expect(await second).toEqual(await first);
  });

  it('after it was refused is tried again', async () => {
    const log = new CommandLog();
    await expect(log.once('a', () => Promise.reject(new Error('refused')))).rejects.toThrow('refused');
    expect(await log.once('a', async () => outcome('a'))).toEqual(outcome('a'));
  });

  it('after a restart is known from the book', async () => {
    const log = new CommandLog();
    log.remember(outcome('a'));
    const known = await log.once('a', () => Promise.reject(new Error('a second time')));
    expect(known).toEqual(outcome('a'));
  });

  it('long after is carried out anew: only so many are remembered', async () => {
    const log = new CommandLog();
    for (let i = 0; i < 2001; i += 1) void log.once(`c${i}`, async () => outcome(`c${i}`));
    let done = 0;
    const again = async (): Promise<Outcome> => {
      done += 1;
      return outcome('again');
    };
    await log.once('c2000', again);
    expect(done).toBe(0);
    await log.once('c0', again);
    expect(done).toBe(1);
  });
});
