import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Journal } from '../../../../daemon/watching/drying/journal.ts';
import type { ShopEntry } from '../../../../shared/shop/entry.ts';

const entry = (commandId: string): ShopEntry => ({
  commandId,
  atUtcMs: 0,
  zone: 'Etc/UTC',
  simulated: false,
  happened: { kind: 'ended', coat: 'a', why: 'done' },
});

describe('the journal', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  const failing = (times: number) => {
    let left = times;
    const written: string[] = [];
    const complaints: string[] = [];
    const journal = new Journal({
      book: {
        addShopEntry: async (one) => {
          if (left > 0) {
            left -= 1;
            throw new Error('the disk is full');
          }
          written.push(one.commandId);
          return one;
        },
      },
      complain: (message) => complaints.push(message),
    });
    return { journal, written, complaints };
  };

  it('keeps what happens, in its order', async () => {
    const { journal, written } = failing(0);
    expect(await Promise.all(['a', 'b', 'c'].map((id) => journal.keep(entry(id))))).toEqual([
      true,
      true,
      true,
    ]);
    expect(written).toEqual(['a', 'b', 'c']);
  });

  it('says what could not be written, and writes it later, still in its order', async () => {
    const { journal, written, complaints } = failing(1);
    expect(await journal.keep(entry('a'))).toBe(false);
    expect(await journal.keep(entry('b'))).toBe(false);
    expect([written, complaints]).toEqual([[], ['What happened in the shop could not be written.']]);
    await vi.advanceTimersByTimeAsync(5000);
    expect(written).toEqual(['a', 'b']);
    expect(await journal.keep(entry('c'))).toBe(true);
  });

  it('tries what waits once more as the program ends', async () => {
    const { journal, written } = failing(1);
    await journal.keep(entry('a'));
    await journal.close();
    expect(written).toEqual(['a']);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(written).toEqual(['a']);
  });
});
