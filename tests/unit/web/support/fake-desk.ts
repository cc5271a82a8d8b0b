import type { BookReader } from '../../../../daemon/book/book.ts';
import { Refusal } from '../../../../daemon/refusal.ts';
import type { Desk, LiveChange } from '../../../../daemon/web/desk.ts';
import type { Outcome } from '../../../../shared/messages/command.ts';
import { usualUnattended } from '../../../../shared/watch/attended.ts';
import { fakeSettled, knownIron } from './fake-settled.ts';
import { fakeShop } from './fake-shop.ts';
import { Picture } from './picture.ts';
import { found, item, summary, trace, verification } from './record-samples.ts';

export interface FakeDesk extends Desk {
  /** Applies a change and tells it, as the program would. */
  change(change: LiveChange): void;
  /** Every command that came through, with its arguments. */
  readonly calls: readonly (readonly unknown[])[];
  readonly listeners: number;
}

export const EPOCH = 'test-epoch';

export const fakeReader = (over: Partial<BookReader> = {}): BookReader => ({
  sessions: async () => [summary],
  session: async (id) => (id === summary.id ? summary : null),
  findings: async () => found,
  readingsCsv: async function* (id) {
    yield 'utc,plateC\n';
    yield `2026-03-01T09:00:10.000Z,${id.length}\n`;
  },
  verify: async () => verification,
  trace: async () => trace,
  items: async () => [item],
  shop: async () => ({ visits: [], notes: [], entries: [], unreadable: 0 }),
  close: async () => {},
  ...over,
});

export function fakeDesk(over: Partial<Desk> = {}): FakeDesk {
  const picture = new Picture();
  const listeners = new Set<(change: LiveChange) => void>();
  const calls: unknown[][] = [];
  const outcome = (session: string | null, commandId: string, ...what: unknown[]): Promise<Outcome> => {
    calls.push([...what, commandId]);
    return Promise.resolve({ commandId, session, kept: true });
  };
  return {
    calls,
    hearing: (armedPages) => {
      calls.push(['hearing', armedPages]);
    },
    get listeners() {
      return listeners.size;
    },
    change(change) {
      picture.take(change);
      for (const listener of listeners) listener(change);
    },
    live: () => ({
      program: { name: 'soleplate', version: '0.1.0', epoch: EPOCH },
      at: '2026-03-01T09:00:00.000Z',
      probes: [...picture.probes.values()],
      alarms: [...picture.alarms.values()],
      situation: picture.situation,
    }),
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    reader: fakeReader(),
    startSession: async (ironId, commandId) => {
      knownIron(ironId);
      return outcome(summary.id, commandId, 'start', ironId);
    },
    stopSession: (id, commandId) => outcome(id, commandId, 'stop', id),
    mark: (id, mark, commandId) => outcome(id, commandId, 'mark', id, mark),
    acknowledge: async (ironId, alarm, commandId) => {
      knownIron(ironId);
      return outcome(summary.id, commandId, 'acknowledge', ironId, alarm);
    },
    silence: async (ironId, alarm, forMs, commandId) => {
      knownIron(ironId);
      return outcome(summary.id, commandId, 'silence', ironId, alarm, forMs);
    },
    closeItem: async (id, { by, found: what, commandId }) => {
      if (id !== item.id) throw new Refusal('unknown', `There is no item "${id}".`, 'id');
      calls.push(['closeItem', id, by, what, commandId]);
      return {
        ...item,
        closing: { item: id, by, found: what, commandId, atUtc: '2026-03-02T08:00:00.000Z' },
      };
    },
    choose: async (choice) => {
      if (choice.kind === 'serial') throw new Refusal('conflict', 'The choice is made already.');
      calls.push(['choose', choice]);
    },
    addTypedReading: async (ironId, plateC, commandId) => {
      calls.push(['addTypedReading', ironId, plateC, commandId]);
      return { commandId, session: summary.id, kept: true };
    },
    presence: () => {
      calls.push(['presence']);
    },
    ...fakeSettled(calls),
    ...fakeShop(calls),
    attended: { after: () => usualUnattended, put: async (after) => after },
    ...over,
  };
}
