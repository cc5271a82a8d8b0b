import type { InterruptedSession } from '../../../../daemon/book/book.ts';
import { withNewProbe } from '../../../../daemon/settings/change.ts';
import { firstSettings } from '../../../../daemon/settings/settings.ts';
import { normalAlarm } from '../../../../shared/alarm/machine.ts';
import { type Bench, bench, FakeSource, ORIGIN_UTC_MS } from './bench.ts';

/** A bench with one board that reads a plate of `plateC`. */
export function running(
  plateC: number,
  options: Parameters<typeof bench>[0] = {},
): Bench & { board: FakeSource } {
  const made = bench(options);
  const board = new FakeSource('A', made.clock);
  made.program.addSource(board);
  board.link('connected');
  made.heat(board, plateC, 3);
  return { ...made, board };
}

export const sessionOf = ({ program }: Bench): string => program.live().situation.irons[0]?.session ?? '';
export const alarmsOf = ({ program }: Bench) =>
  Object.fromEntries(program.live().alarms.map((a) => [a.kind, a.state]));

/** A session that was killed two minutes before this run's clock began, with its alarm standing. */
export const killed = (more: Partial<InterruptedSession> = {}): InterruptedSession => ({
  id: 'killed',
  ironId: 'iron-1',
  originUtcMs: ORIGIN_UTC_MS - 120_000,
  commandIds: [],
  dial: null,
  at: null,
  alarms: [
    {
      ...normalAlarm({ kind: 'over-limit', probe: 'A/1' }),
      state: 'unacknowledged',
      raisedAtMs: 60_000,
      peakC: 199,
    },
  ],
  stageId: 'final',
  place: 'on-work',
  hot: true,
  ...more,
});

/** The settings of a shop that knows the board's probe. */
export const known = withNewProbe(firstSettings, 'A/1', false);
