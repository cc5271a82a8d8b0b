import { describe, expect, it, test } from 'vitest';
import { airConcernKinds } from '../../../shared/cure/conditions.ts';
import type { AirAnswer, AirConcern } from '../../../shared/messages/cure.ts';
import { airLine, concernText } from '../../../shared/words/air.ts';

const now: NonNullable<AirAnswer['now']> = {
  at: '2026-03-04T13:30:00Z',
  airC: 22.2,
  rhPct: 56,
  how: 'probe',
  probe: 'bench/air',
  dewPointC: 13,
  marginK: 9.2,
  old: false,
};

describe('the air in one line', () => {
  it('has temperature, humidity, dew point and how far over it the air is, and how all that is known', () => {
    expect(airLine(now, 'F', '20 min ago')).toBe(
      '72 °F, 56 % humidity, 17 °F over the dew point of 55 °F (by a probe, 20 min ago).',
    );
    expect(airLine(now, 'C', '')).toBe(
      '22.2 °C, 56 % humidity, 9.2 °C over the dew point of 13.0 °C (by a probe).',
    );
  });

  it('says what was not told, and what was told long ago', () => {
    const typed = { ...now, rhPct: null, dewPointC: null, marginK: null, how: 'typed', old: true } as const;
    expect(airLine(typed, 'F', '9 h ago')).toBe(
      '72 °F, humidity not told (typed, 9 h ago). It may be something else by now.',
    );
    expect(airLine(null, 'F', '')).toMatch(/not known/);
  });
});

const concern = (change: Partial<AirConcern>): AirConcern => ({
  kind: 'too-cold',
  by: 'practice',
  limit: 7.2,
  cements: [],
  ...change,
});

describe('what is amiss with the air', () => {
  test.each(airConcernKinds)('%s is a sentence in either unit', (kind) => {
    for (const unit of ['F', 'C'] as const)
      for (const by of ['practice', 'instructions'] as const)
        expect(concernText(concern({ kind, by, limit: 7 }), unit)).toMatch(
          /^Too .+: \d.* at (least|most), by .+\.$/,
        );
  });

  it('names the cements, the limit in the user’s unit, and whose word it is', () => {
    expect(concernText(concern({}), 'F')).toBe(
      'Too cold for cement: 45 °F at least, by general coating practice; the instructions decide.',
    );
    expect(
      concernText(concern({ by: 'instructions', limit: 10, cements: ['Rib cement', 'Tape'] }), 'C'),
    ).toBe('Too cold for Rib cement, Tape: 10.0 °C at least, by the instructions.');
  });

  it('gives a margin over the dew point as a difference, not as a temperature', () => {
    expect(concernText(concern({ kind: 'near-dew-point', limit: 3 }), 'F')).toContain('5 °F over it');
  });
});
