import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { unattendedSchema } from '../../../shared/watch/attended.ts';
import { bench, FakeSource } from './support/bench.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('after how long a hot iron that is left alone is told of', () => {
  it('is settled at the desk, and counts at once', async () => {
    const made = bench();
    const board = new FakeSource('A', made.clock);
    made.program.addSource(board);
    board.link('connected');
    expect(made.desk.attended.after()).toEqual({ reminderMin: 10, alarmMin: 15 });
    made.heat(board, 22, 3);
    made.heat(board, 150, 60);
    made.heat(board, 150, 60);
    const kinds = (): string[] => made.program.live().alarms.map(({ kind }) => kind);
    expect(kinds()).not.toContain('unattended');
    const after = await made.desk.attended.put({ reminderMin: 3, alarmMin: 5.5 });
    expect(unattendedSchema.parse(after)).toEqual({ reminderMin: 3, alarmMin: 5.5 });
    expect(made.settings.current.unattended).toEqual(after);
    made.heat(board, 150, 90);
    expect(kinds()).toContain('unattended');
    expect(kinds()).not.toContain('left-alone');
    made.heat(board, 150, 150);
    expect(kinds()).toContain('left-alone');
  });
});
