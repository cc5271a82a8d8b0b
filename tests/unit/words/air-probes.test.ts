import { describe, expect, it } from 'vitest';
import type { AirProbeAnswer } from '../../../shared/messages/cure.ts';
import { airProbeText, clocksGoByText, refusedText } from '../../../shared/words/air-probes.ts';

const probe: AirProbeAnswer = {
  probe: 'bench/air',
  told: { at: '2026-03-04T13:20:00Z', airC: 20, rhPct: 50 },
  silent: false,
  heard: true,
  refused: [],
};

describe('what no air is like', () => {
  it('is said with its value, when it was, and what would be right, in the user’s unit', () => {
    expect(refusedText('bench/air', { part: 'rhPct', value: 134 }, '10:32', 'F')).toBe(
      'bench/air told humidity 134 % at 10:32: not taken. Relative humidity lies between 0 % and 100 %. Look at its sensor, its wires and its supply.',
    );
    expect(refusedText('bench/air', { part: 'airC', value: -127 }, '10:32', 'C')).toMatch(
      /^bench\/air told -127\.0 °C at 10:32: not taken\. A shop’s air lies between -30\.0 °C and 60\.0 °C\./,
    );
  });

  it('by a little is not rounded to what would be right', () => {
    expect(refusedText('a/b', { part: 'rhPct', value: -0.4 }, '10:32', 'F')).toContain('humidity -0.4 %');
    expect(refusedText('a/b', { part: 'rhPct', value: 105.1 }, '10:32', 'F')).toContain('humidity 105.1 %');
  });
});

describe('how a probe stands', () => {
  it('is what it tells and whether that is taken, since when it tells nothing, or that it never did', () => {
    const text = (change: Partial<AirProbeAnswer>, since = '13:20') =>
      airProbeText({ ...probe, ...change }, since, 'F');
    expect(text({})).toBe('bench/air: 68 °F, 50 % humidity; taken for the air of the shop.');
    expect(text({ heard: false })).toBe('bench/air: 68 °F, 50 % humidity; only shown here.');
    expect(text({ silent: true, heard: false })).toBe(
      'bench/air: has told no air since 13:20, when it was 68 °F, 50 % humidity.',
    );
    const never = { told: null, silent: true, heard: false };
    expect(text(never, '')).toBe('bench/air: not heard yet.');
    const refused = [{ part: 'airC' as const, value: 85, at: '2026-03-04T13:20:00Z' }];
    expect(text({ ...never, refused }, '')).toBe('bench/air: nothing that can be air, not taken.');
  });
});

describe('what the clocks go by', () => {
  it('is the air of now, or the instructions’ own', () => {
    const now = { ...probe.told, how: 'probe', probe: 'bench/air', dewPointC: null, marginK: null } as const;
    expect(clocksGoByText({ ...now, at: '', airC: 20, rhPct: null, old: false }, 'F', 'just now')).toBe(
      'Clocks go by 68 °F, humidity not told (by a probe, just now).',
    );
    expect(clocksGoByText(null, 'F', '')).toMatch(/instructions’ own air/);
  });
});
