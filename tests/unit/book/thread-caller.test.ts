import { describe, expect, it, onTestFinished } from 'vitest';
import { ThreadCaller } from '../../../daemon/book/thread/thread-caller.ts';

interface Calls {
  readonly echo: { readonly takes: { readonly value: unknown }; readonly gives: unknown };
  readonly fail: { readonly takes: object; readonly gives: null };
  readonly die: { readonly takes: object; readonly gives: null };
}

const script = `
  import { parentPort } from 'node:worker_threads';
  parentPort.on('message', ({ id, name, takes }) => {
    if (name === 'die') throw new Error('out of memory, say');
    parentPort.postMessage(
      name === 'fail' ? { id, ok: false, failure: 'locked', message: 'no' } : { id, ok: true, gives: takes.value },
    );
  });`;

function caller(): ThreadCaller<Calls> {
  const made = new ThreadCaller<Calls>(new URL(`data:text/javascript,${encodeURIComponent(script)}`), {
    folder: '',
  });
  onTestFinished(() => made.close());
  return made;
}

describe('calls to a thread', () => {
  it('start it with the first, and settle each by itself', async () => {
    const thread = caller();
    expect(thread.isRunning).toBe(false);
    const settled = await Promise.allSettled([
      thread.ask('echo', { value: { zero: -0, not: Number.NaN } }),
      thread.ask('fail', {}),
      thread.ask('echo', { value: 2 }),
    ]);
    expect(thread.isRunning).toBe(true);
    expect(settled).toMatchObject([
      { status: 'fulfilled', value: { zero: -0, not: Number.NaN } },
      { status: 'rejected', reason: { name: 'BookFailure', failure: 'locked', message: 'no' } },
      { status: 'fulfilled', value: 2 },
    ]);
  });

  it('that it owes are rejected when it dies, and the next one starts another', async () => {
    const thread = caller();
    const owed = [thread.ask('die', {}), thread.ask('echo', { value: 1 })];
    for (const call of owed)
      await expect(call).rejects.toMatchObject({
        failure: 'other',
        message: expect.stringContaining('out of memory'),
      });
    expect(thread.isRunning).toBe(false);
    expect(await thread.ask('echo', { value: 3 })).toBe(3);
  });

  it('that can not be sent are rejected', async () => {
    const thread = caller();
    await expect(thread.ask('echo', { value: () => 1 })).rejects.toThrow('could not be cloned');
    expect(await thread.ask('echo', { value: 3 })).toBe(3);
  });

  it('are refused once it is closed', async () => {
    const thread = caller();
    const owed = thread.ask('echo', { value: 1 }).catch((error: unknown) => error);
    await thread.close();
    expect(await owed).toMatchObject({ name: 'BookFailure' });
    await expect(thread.ask('echo', { value: 1 })).rejects.toMatchObject({
      message: 'The book has been closed.',
    });
  });
});
