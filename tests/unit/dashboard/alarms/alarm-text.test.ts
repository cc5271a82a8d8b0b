import { describe, expect, it } from 'vitest';
import { announcement, detailText, stateText } from '../../../../dashboard/alarms/alarm-text.ts';
import { timeOfDay, uuidTimeMs } from '../../../../dashboard/parts/times.ts';
import { alarm } from '../../../fixtures/scenes.ts';

const wording = { difference: (k: number) => `${k} K`, moment: (utc: string) => utc };

describe('an alarm in plain words', () => {
  it('says how it stands', () => {
    expect(stateText('unacknowledged', null)).toBe('standing');
    expect(stateText('unacknowledged', '14:20:05')).toBe('standing, silenced until 14:20:05');
    expect(stateText('acknowledged', null)).toBe('standing, seen');
  });

  it('names a fault, and passes any other reason on', () => {
    expect(detailText(alarm({ detail: 'short-to-ground' }), wording)).toBe('Probe shorted to ground.');
    expect(detailText(alarm({ detail: 'The disk is full.' }), wording)).toBe('The disk is full.');
    expect(detailText(alarm(), wording)).toBe('');
    const drift = alarm({ kind: 'drift', detail: '-4.3 K since 2026-03-01T08:00:00.000Z' });
    expect(detailText(drift, wording)).toBe(
      'Runs 4.3 K colder than its dial chart since 2026-03-01T08:00:00.000Z.',
    );
  });

  it('says what is suspected of a probe, and what would put it right', () => {
    const suspect = (detail: string) => detailText(alarm({ kind: 'suspect-probe', detail }), wording);
    expect(suspect('reversed')).toContain('Swap them at one end');
    expect(suspect('type J')).toContain('If its wire is type J');
    expect(suspect('type')).toContain('See which type stands on its wire');
    expect(suspect('type X')).toBe('type X');
  });

  it('is announced with its iron and what to do', () => {
    expect(announcement(alarm(), 'Big iron')).toBe(
      'Plate over the fabric limit: Big iron. Lift the iron off and set it on its rest. Turn the dial down. Examine the area as the manual says.',
    );
  });
});

describe('the time in an id', () => {
  // RFC 9562, appendix A.6: the example of version 7, 2022-02-22T19:22:22.000Z.
  it('is read from a UUIDv7', () => {
    expect(uuidTimeMs('017F22E2-79B0-7CC3-98C4-DC0C0C07398F')).toBe(Date.parse('2022-02-22T19:22:22.000Z'));
  });

  it('is not guessed from any other', () => {
    for (const other of ['', 'next', '919108f7-52d1-4320-9bac-f847db4148a8'])
      expect(uuidTimeMs(other)).toBeNull();
  });

  it('is shown with a 24 hour clock', () => {
    expect(timeOfDay(Date.UTC(2026, 2, 4, 0, 5, 9))).toMatch(/^\d\d:\d5:09$/);
  });
});
