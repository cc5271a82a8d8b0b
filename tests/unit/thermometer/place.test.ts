import { describe, expect, it } from 'vitest';
import { fitCorrection } from '../../../shared/calibration/fit.ts';
import { seatOf, watchedHow } from '../../../shared/thermometer/place.ts';
import { budgetOf, type TrustedProbe } from '../../../shared/thermometer/trust.ts';
import { PAD_LIMIT_K } from '../../../shared/thermometer/uncertainty.ts';
import { probeSettings } from '../watch/support/settings.ts';

const at = (kind: 'check-pad' | 'loose', iron = 'iron') => ({
  place: { probe: 'board/1', iron, toldAt: '2026-03-02T09:00:00.000Z', is: { kind } },
});

describe('how an iron is watched', () => {
  it('is the best of what its probes tell', () => {
    expect(watchedHow([{}, at('check-pad')], 'iron')).toBe('monitored');
    expect(watchedHow([at('loose'), at('check-pad')], 'iron')).toBe('checked');
    expect(watchedHow([at('loose'), at('check-pad', 'another')], 'iron')).toBe('not-told');
    expect(watchedHow([at('loose')], 'iron')).toBe('typed');
    expect(watchedHow([], 'iron')).toBe('typed');
  });

  it('holds a place for the iron that it was told for', () => {
    expect(seatOf(at('check-pad'), 'iron')).toBe('check-pad');
    expect(seatOf(at('check-pad'), 'another')).toBe('not-told');
    const assumed = { place: { probe: 'board/1', iron: 'iron', toldAt: null, is: null } };
    expect(seatOf(assumed, 'iron')).toBe('fitted');
  });
});

describe('how far a check pad can be trusted', () => {
  const iron = { id: 'iron', confidence: 0.95 } as const;
  const mounting = (probe: TrustedProbe) =>
    budgetOf({ probe, iron }, { readC: 150, resolutionK: 0.25, lagUK: 0 }).parts.find(
      (part) => part.name === 'mounting',
    );
  const point = {
    kind: 'contact',
    readingC: 150,
    readingSpreadK: 0.1,
    readings: 50,
    resolutionK: 0.25,
    referenceC: 152,
    referenceUK: 1,
    pressureHpa: null,
    altitudeM: null,
    instrument: '',
    takenAt: '2026-03-01T09:00:00Z',
  } as const;
  const correction = fitCorrection([point], { mounting: 'fitted', thermocouple: 'K' });

  it('is less than that of a probe on the plate, until it is stated or compared', () => {
    expect(mounting(probeSettings('board/1', at('check-pad')))).toMatchObject({
      uK: PAD_LIMIT_K / Math.sqrt(3),
      note: 'mounting-pad',
    });
    expect(mounting(probeSettings('board/1', { ...at('check-pad'), mountingK: 2 }))).toMatchObject({
      note: 'mounting-stated',
    });
  });

  it('does not rest on a calibration that was made before the probe got there', () => {
    if (!('method' in correction)) throw new Error('it was refused');
    const made = (madeAt: string): TrustedProbe => ({
      ...probeSettings('board/1', at('check-pad')),
      calibration: { correction, mounting: 'fitted', iron: 'iron', madeAt },
    });
    expect(mounting(made('2026-03-01T09:00:00.000Z'))?.note).toBe('mounting-pad');
    expect(mounting(made('2026-03-03T09:00:00.000Z'))?.note).toBe('mounting-in-place');
  });
});
