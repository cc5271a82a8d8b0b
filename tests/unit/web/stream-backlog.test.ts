import { describe, expect, it } from 'vitest';
import { Backlog } from '../../../daemon/web/stream/backlog.ts';
import { streamLimits } from '../../../daemon/web/stream/limits.ts';
import { EPOCH } from './support/fake-desk.ts';
import { probeLive } from './support/samples.ts';

describe('what a client that comes back has missed', () => {
  it('can be read in part: what came before the break is not given again, what came after it is', () => {
    const backlog = new Backlog(EPOCH, streamLimits);
    const seqs = [
      backlog.readings([probeLive(120, 'one')]).seq,
      backlog.event({ kind: 'mark', iron: 'small', mark: { kind: 'place', place: 'on-work' } }).seq,
      backlog.readings([probeLive(130, 'other')]).seq,
    ];
    const missed = backlog.missedSince(0) ?? [];
    expect(missed.map(({ seq }) => seq)).toEqual(seqs);
    const kinds = missed.map(
      (message) => JSON.parse(message.text.toString()) as { probes?: { id: string }[] },
    );
    expect(kinds.map(({ probes }) => probes?.map(({ id }) => id))).toEqual([['one'], undefined, ['other']]);
    for (const [i, seq] of seqs.entries())
      expect((backlog.missedSince(seq) ?? []).map((message) => message.seq)).toEqual(seqs.slice(i + 1));
  });
});
