import { describe, expect, it } from 'vitest';
import { inOrder } from '../../../../dashboard/coats/in-order.ts';
import { putOnOf, startedTwice, tapOf } from '../../../../dashboard/coats/taps.ts';
import { ask, emptyOutbox } from '../../../../dashboard/link/outbox.ts';
import type { CoatAct } from '../../../../shared/messages/cure.ts';
import { coat, drying, fourCoats, mayBeReady } from '../../../fixtures/coats.ts';

const waiting = (...acts: readonly CoatAct[]) =>
  acts.reduce(
    (box, act, i) => ask(box, { commandId: `w${i}`, asked: { what: 'coat', act }, words: act.kind }, 0),
    emptyOutbox,
  ).waiting;

describe('what “take back” of a coat is for', () => {
  const tapped = coat({ lastTap: 'told' });
  const dry: CoatAct = { kind: 'check', coat: tapped.id, stage: 'ready-for-iron', found: 'dry' };

  it('is the last tap that the daemon tells, whichever page it came from', () => {
    expect(tapOf(tapped, [])).toBe('told');
    expect(tapOf(coat({}), [])).toBeNull();
    expect(tapOf(tapped, waiting({ ...dry, coat: 'another' }))).toBe('told');
  });

  it('is the one that waits to be sent, where one does', () => {
    expect(tapOf(tapped, waiting(dry, { ...dry, found: 'tacky' }))).toBe('w1');
  });

  it('is nothing while it is being taken back', () => {
    expect(tapOf(tapped, waiting({ kind: 'take-back', of: 'told' }))).toBeNull();
    expect(tapOf(tapped, waiting(dry, { kind: 'take-back', of: 'w0' }))).toBeNull();
    expect(tapOf(tapped, waiting({ kind: 'take-back', of: 'another' }))).toBe('told');
  });
});

describe('a start', () => {
  const before = fourCoats.map(putOnOf);
  const again = putOnOf(drying);

  it('is one too many for the same cement on the same place within a minute', () => {
    expect(startedTwice([again, { ...again, area: 'bare' }], before)).toEqual([again]);
    expect(startedTwice([{ ...again, atMs: again.atMs + 59_999 }], before)).toHaveLength(1);
    expect(startedTwice([{ ...again, atMs: again.atMs - 59_999 }], before)).toHaveLength(1);
  });

  it('is a new one a minute later, with another cement, and beside it', () => {
    const others = [
      { ...again, atMs: again.atMs + 60_000 },
      { ...again, cement: mayBeReady.cement.id },
      { ...again, side: 2 as const },
      { ...again, area: null },
      { ...again, piece: 'right-flap' },
    ];
    expect(startedTwice(others, before)).toEqual([]);
  });
});

describe('coats while somebody taps', () => {
  it('stand as they stood; new ones come behind them, and what is gone leaves no gap', () => {
    const [due, may, dries, stands] = fourCoats;
    const ids = fourCoats.map(({ id }) => id);
    expect(inOrder([...fourCoats].toReversed(), ids)).toEqual(fourCoats);
    expect(inOrder(fourCoats, [dries?.id ?? '', 'gone', due?.id ?? ''])).toEqual([dries, due, may, stands]);
    expect(inOrder(fourCoats, [])).toEqual(fourCoats);
  });
});
