import { describe, expect, it } from 'vitest';
import { itemOf, sessionOf, traceOf, verificationOf } from '../../../../daemon/web/routes/session-answers.ts';
import { sessionTimes } from '../../../../dashboard/parts/session-times.ts';
import { foundIn } from '../../../../dashboard/records/found.ts';
import { drawn, neighbour, widened } from '../../../../dashboard/records/trace-state.ts';
import type { Trace } from '../../../../shared/messages/trace.ts';
import { item, trace as read, summary, verification } from '../../web/support/record-samples.ts';

/** What the daemon answers, as the page words and draws it. */

const text = (c: number): string => `${c.toFixed(1)} C`;
const trace: Trace = traceOf(summary, read);
const session = sessionOf(summary);

describe('findings', () => {
  it('stand in the order of time, in words, with the notes between them', () => {
    const found = foundIn(trace, { temperature: text, difference: text });
    expect(found.map((one) => one.text)).toEqual([
      'The plate got hot',
      'Warming up',
      'Sole plate: Probe open',
      'Note: left end',
      'Plate over the fabric limit: raised',
      'Refused: no such alarm',
    ]);
    expect(found.map((one) => one.strong)).toEqual([false, false, false, false, true, false]);
    expect(new Set(found.map((one) => one.id)).size).toBe(found.length);
  });

  it('are gone through one by one, from the chosen one or from a moment', () => {
    const found = foundIn(trace, { temperature: text, difference: text });
    const [first, second, , , raised, last] = found;
    expect(neighbour(found, first?.id ?? '', 1, 0)).toBe(second);
    expect(neighbour(found, first?.id ?? '', -1, 0)).toBeNull();
    expect(neighbour(found, last?.id ?? '', 1, 0)).toBeNull();
    expect(neighbour(found, null, 1, 15_000)).toBe(raised);
    expect(neighbour(found, null, -1, 15_000)?.text).toBe('Note: left end');
  });
});

describe('what is drawn of a trace', () => {
  it('has a line a probe, the gap with its reason, the limits, the stage that was worked', () => {
    const range = widened(null, trace, session);
    const data = drawn(
      { trace, found: foundIn(trace, { temperature: text, difference: text }), chosen: null, read: range },
      text,
    );
    expect(data.lines).toHaveLength(1);
    expect(data.gaps).toEqual([{ fromMs: 500, toMs: 60_000, fault: 'open', text: 'Probe open' }]);
    expect(data.spans).toMatchObject([{ fabricC: 190.5, bands: [{ text: 'Tack', working: true }] }]);
    expect(data.marks).toHaveLength(6);
    expect(data.range.highC).toBeGreaterThan(193.4);
  });

  it('keeps its scale while one looks closer', () => {
    const before = widened(null, trace, session);
    const closer = {
      ...trace,
      probes: trace.probes.map((p) => ({ ...p, minC: [150, null], maxC: [151, null] })),
    };
    expect(widened(before, closer, session)).toEqual(before);
    expect(widened(null, { ...trace, probes: [] }, { ...session, peakC: null })).toEqual({
      lowC: 0,
      highC: 0,
    });
  });
});

describe('times of a session', () => {
  const noon = Date.UTC(2026, 2, 1, 12);
  it('are those of the zone in which it was recorded', () => {
    expect(sessionTimes('America/New_York').time(noon)).toBe('07:00:00');
    expect(sessionTimes('Asia/Kolkata').time(noon)).toBe('17:30:00');
    expect(sessionTimes('Nowhere/At_All').otherZone).toBe(false);
  });

  it('are as exact as the scale needs', () => {
    const times = sessionTimes('UTC');
    expect([60_000, 1000, 200].map((stepMs) => times.onScale(noon + 1500, stepMs))).toEqual([
      '12:00',
      '12:00:01',
      '12:00:01.5',
    ]);
  });
});

describe('an item and a verification', () => {
  it('are told as the book has them', () => {
    expect(itemOf(item)).toMatchObject({
      over: { sessionMs: 20_000 },
      back: { sessionMs: 31_000 },
      standing: false,
      lengthMs: 11_000,
      closing: null,
    });
    const open = itemOf({ ...item, crossing: { ...item.crossing, toMs: null } });
    expect(open).toMatchObject({ back: null, standing: true, lengthMs: 40_000 });
    expect(verificationOf(summary, verification).exact).toBe(false);
  });
});
