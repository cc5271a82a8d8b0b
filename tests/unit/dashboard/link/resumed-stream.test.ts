import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Backlog } from '../../../../daemon/web/stream/backlog.ts';
import { applyMessage, emptyStream, type StreamState } from '../../../../dashboard/link/stream.ts';
import { alarmKinds, alarmStates } from '../../../../shared/alarm/record.ts';
import type { AlarmLive, Live, ProbeLive, Situation } from '../../../../shared/messages/live.ts';
import { type StreamMessage, streamMessageSchema } from '../../../../shared/messages/stream.ts';
import { alarm, iron, live, probe } from '../../../fixtures/scenes.ts';

/** A page that came back, wherever it was cut off, knows exactly what one knows that was never cut off. */

type Change =
  | { readonly kind: 'readings'; readonly probes: readonly ProbeLive[] }
  | { readonly kind: 'alarm'; readonly alarm: AlarmLive }
  | { readonly kind: 'mark'; readonly stageId: string | null }
  | { readonly kind: 'situation'; readonly situation: Situation }
  | { readonly kind: 'beat' };

const ids = ['bench/1', 'bench/2', 'bench/3'];
const start = live(
  ids.map((id) => probe(90, { id })),
  [],
  { irons: [iron({ probes: ids })] },
);

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({
    kind: fc.constant('readings' as const),
    probes: fc.uniqueArray(
      fc
        .record({ id: fc.constantFrom(...ids), plateF: fc.integer({ min: 60, max: 400 }) })
        .map((r) => probe(r.plateF, { id: r.id })),
      { selector: (one) => one.id, minLength: 1 },
    ),
  }),
  fc.record({
    kind: fc.constant('alarm' as const),
    alarm: fc
      .record({
        kind: fc.constantFrom(...alarmKinds),
        state: fc.constantFrom(...alarmStates),
        priority: fc.constantFrom(1 as const, 2 as const, 3 as const),
        minute: fc.integer({ min: 10, max: 59 }),
      })
      .map(({ minute, ...rest }) => alarm({ ...rest, since: `2026-03-04T13:${minute}:00Z` })),
  }),
  fc.record({ kind: fc.constant('mark' as const), stageId: fc.constantFrom('tack', 'final', null) }),
  fc.record({
    kind: fc.constant('situation' as const),
    situation: fc
      .record({ kept: fc.boolean(), probes: fc.subarray(ids, { minLength: 1 }) })
      .map(({ kept, probes }) => ({
        ...start.situation,
        keeping: { kept, detail: kept ? '' : 'The disk is full.' },
        irons: [iron({ probes })],
      })),
  }),
  fc.constant({ kind: 'beat' as const }),
);

/** What the daemon's own backlog makes of a change, as it comes over the wire. */
function tell(backlog: Backlog, said: Change): StreamMessage {
  const message =
    said.kind === 'readings'
      ? backlog.readings(said.probes)
      : said.kind === 'alarm'
        ? backlog.event({ kind: 'alarm', change: 'raised', alarm: said.alarm })
        : said.kind === 'mark'
          ? backlog.event({ kind: 'mark', iron: 'big', mark: { kind: 'stage', stageId: said.stageId } })
          : said.kind === 'situation'
            ? backlog.situation(said.situation)
            : backlog.beat();
  return parsed(message);
}

const parsed = (message: { readonly text: { toString(): string } }): StreamMessage =>
  streamMessageSchema.parse(JSON.parse(message.text.toString()));

const known = ({ live: what, epoch }: StreamState): unknown => ({
  what: what === null ? null : { probes: what.probes, alarms: what.alarms, situation: what.situation },
  epoch,
});

/**
 * What the daemon says of a change, seeing how things stand: it speaks of no probe that no iron has, and a probe that an
 * iron gets (back) is read anew.
 */
function saidOf(change: Change, now: Live | null): readonly Change[] {
  const owned = new Set(now?.situation.irons.flatMap((one) => one.probes));
  if (change.kind === 'readings') {
    const probes = change.probes.filter((one) => owned.has(one.id));
    return probes.length > 0 ? [{ ...change, probes }] : [];
  }
  if (change.kind !== 'situation') return [change];
  const added = change.situation.irons.flatMap((one) => one.probes).filter((id) => !owned.has(id));
  const probes = added.map((id) => probe(75, { id }));
  return probes.length > 0 ? [change, { kind: 'readings', probes }] : [change];
}

describe('a resumed stream', () => {
  it('equals an unbroken one', () => {
    fc.assert(
      fc.property(
        fc.array(change, { minLength: 1, maxLength: 60 }),
        fc.nat(60),
        fc.integer({ min: 1, max: 40 }),
        fc.boolean(),
        (changes, cut, keptEvents, twice) => {
          const backlog = new Backlog('run-1', { keptEvents, keptBytes: 1_000_000 });
          let unbroken = applyMessage(emptyStream, parsed(backlog.snapshot(start)), 0);
          let broken = unbroken;
          changes.forEach((said, i) => {
            for (const one of saidOf(said, unbroken.live)) {
              const message = tell(backlog, one);
              unbroken = applyMessage(unbroken, message, i);
              if (i < cut) broken = applyMessage(broken, message, i);
            }
          });
          const now = unbroken.live ?? start;
          const missed = backlog.missedSince(broken.seq) ?? [backlog.snapshot(now)];
          const again = twice ? [...missed, ...missed] : missed;
          for (const message of again) broken = applyMessage(broken, parsed(message), 99);
          expect(known(broken)).toEqual(known(unbroken));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('is as it was where the same messages come again', () => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 30 }), (changes) => {
        const backlog = new Backlog('run-1', { keptEvents: 100, keptBytes: 1_000_000 });
        const begun = applyMessage(emptyStream, parsed(backlog.snapshot(start)), 0);
        const messages = changes.map((said) => tell(backlog, said));
        const once = messages.reduce((state, message) => applyMessage(state, message, 1), begun);
        const twice = messages.reduce((state, message) => applyMessage(state, message, 1), once);
        expect(twice).toEqual(once);
      }),
      { numRuns: 200 },
    );
  });
});
