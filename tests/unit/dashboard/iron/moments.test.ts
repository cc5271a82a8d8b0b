import { describe, expect, it } from 'vitest';
import { ageText, momentC, momentText } from '../../../../dashboard/iron/moments/moment-text.ts';
import { ironViews, leadingIron, plateView } from '../../../../dashboard/iron/plate.ts';
import { applyMessage, emptyStream } from '../../../../dashboard/link/stream.ts';
import type { CheckLive, Live } from '../../../../shared/messages/live.ts';
import { faults } from '../../../../shared/thermometer/reading.ts';
import { iron, live, probe, SMALL } from '../../../fixtures/scenes.ts';

const AT = '2026-03-04T13:16:00Z';
const check = (over: Partial<CheckLive> = {}): CheckLive => ({
  pad: 'bare',
  padC: null,
  last: {
    at: AT,
    ageMs: 247_000,
    plateC: 140,
    lowestC: 132,
    guardBandK: 5,
    standing: { kind: 'below', stages: [] },
  },
  missed: null,
  ...over,
});
const typed = {
  at: AT,
  ageMs: 62_000,
  plateC: 121,
  guardBandK: 3.7,
  standing: { kind: 'below', stages: [] },
} as const;
const checked = iron({ watched: 'checked', check: check() });
const views = (of: Live, isLive = true) =>
  ironViews(applyMessage(emptyStream, { epoch: 'run-1', seq: 1, kind: 'snapshot', live: of }, 0), isLive, 0);

describe('a probe that is not on the plate for good', () => {
  it('has no number that could pass for a live plate, whatever it reads', () => {
    for (const seat of ['check-pad', 'loose', 'not-told'] as const) {
      expect(plateView(probe(252, { seat }), 0, true)).toMatchObject({ kind: 'apart', seat });
      for (const fault of faults) expect(plateView(probe(fault, { seat }), 0, true).kind).toBe('apart');
      expect(plateView(probe(252, { seat }), 0, false)).toEqual({ kind: 'lost' });
    }
  });

  it('never leads over a plate that is read, and holds no place as one that has lost its reading', () => {
    const pad = iron({ id: 'small', probes: [SMALL], watched: 'checked', check: check() });
    const of = live([probe(90), probe(300, { id: SMALL, iron: 'small', seat: 'check-pad' })], [], {
      irons: [iron(), pad],
    });
    const all = views(of);
    expect(all.map((one) => one.unseenFault)).toEqual([false, false]);
    const [, small] = all;
    if (small === undefined) return expect.unreachable();
    expect(leadingIron({ view: small, rival: null }, all, 0)?.view.iron.id).toBe('big');
    expect(all[1]?.hot).toBe(true);
  });
});

describe('an iron without a probe', () => {
  const hand = iron({ id: 'hand', probes: [], watched: 'typed', typed, hot: true });

  it('is shown all the same, and nothing of it while the daemon is lost', () => {
    const of = live([], [], { irons: [hand] });
    expect(views(of)[0]).toMatchObject({ hot: true, plates: [{ view: { kind: 'apart' } }] });
    expect(views(of, false)[0]).toMatchObject({ hot: true, plates: [{ view: { kind: 'lost' } }] });
  });

  it('is as hot as the daemon says', () => {
    expect(views(live([], [], { irons: [{ ...hand, hot: false }] }))[0]?.hot).toBe(false);
  });
});

describe('what is said of an iron that was read at some moment', () => {
  it('is how and how long ago', () => {
    expect(momentText(checked)).toBe('checked 4 min ago');
    expect(momentC(checked)).toBe(140);
    expect(momentText(iron({ watched: 'typed', typed }))).toBe('typed 1 min ago');
    expect(momentC(iron({ watched: 'typed', typed }))).toBe(121);
  });

  it('is on the pad while it lies there, settling or settled', () => {
    expect(momentText(iron({ watched: 'checked', check: check({ pad: 'settled', padC: 140 }) }))).toBe(
      'on its check pad now',
    );
    const first = check({ pad: 'settling', padC: 90, last: null });
    expect(momentText(iron({ watched: 'checked', check: first }))).toBe('settling on its check pad');
  });

  it('is that there is nothing, where there is nothing', () => {
    expect(momentText(iron({ watched: 'checked', check: check({ last: null }) }))).toBe('not checked yet');
    expect(momentText(iron({ watched: 'typed' }))).toBe('nothing typed yet');
    expect(momentText(iron({ watched: 'not-told' }))).toBe('place not told');
    expect(momentText(iron())).toBe('');
    for (const watched of ['monitored', 'not-told'] as const)
      expect(momentC(iron({ watched, check: check(), typed }))).toBeNull();
  });

  it('has an age that stands still once it is more than a minute', () => {
    expect(ageText(8_400)).toBe('8 s');
    expect(ageText(125_000)).toBe('2 min');
    expect(ageText(3_720_000)).toBe('1 h 02 min');
  });
});
