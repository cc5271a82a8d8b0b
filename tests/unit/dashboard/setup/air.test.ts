import { describe, expect, it, test } from 'vitest';
import * as forecasts from '../../../../dashboard/setup/air/forecast-draft.ts';
import { boundsOf, drawnOf, gapsOf, hoursOf } from '../../../../dashboard/setup/air/history-layout.ts';
import { hourStart, hourText, nextMoment, readHour } from '../../../../dashboard/setup/air/hour.ts';
import * as typed from '../../../../dashboard/setup/air/typed-draft.ts';
import type { AirAnswer } from '../../../../shared/messages/cure.ts';
import { fToC } from '../../../../shared/units/temperature.ts';
import { shopAir } from '../../../fixtures/air.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const NOW = new Date(2026, 2, 4, 13, 20).getTime();
const clock = (hour: number, minute = 0, day = 4) => new Date(2026, 2, day, hour, minute).getTime();

describe('air that is typed in', () => {
  const draft = (temperature: string, humidity: string): typed.Draft => ({
    unit: 'F',
    temperature,
    humidity,
  });

  it('has a decimal comma or point in either unit, and humidity may be left out', () => {
    expect(typed.checkDraft(draft('71,6', '56.5 %')).said).toEqual({ airC: fToC(71.6), rhPct: 56.5 });
    expect(typed.checkDraft({ unit: 'C', temperature: '22', humidity: '' }).said).toEqual({
      airC: 22,
      rhPct: null,
    });
  });

  test.each([
    ['warm', '', 'temperature', /Write a number in °F, for example 70 or 70,5/],
    ['', '50', 'temperature', /Write a number/],
    ['400', '50', 'temperature', /from -22 to 140 °F/],
    ['70', '101', 'humidity', /from 0 % to 100 %/],
    ['70', 'damp', 'humidity', /from 0 % to 100 %/],
  ] as const)('"%s" and "%s": what would be right stands beside the field', (t, rh, field, sentence) => {
    const checked = typed.checkDraft(draft(t, rh));
    expect(checked.said).toBeNull();
    expect(checked[field]).toMatch(sentence);
  });

  it('goes along with the unit that is shown, and what a tab kept wrongly is nothing', () => {
    expect(typed.inUnitNow(draft('68', '50'), 'C')).toEqual({ unit: 'C', temperature: '20', humidity: '50' });
    expect(typed.inUnitNow(draft('6x', ''), 'C').temperature).toBe('6x');
    expect(typed.readDraft('{"unit":"K"}', 'F')).toEqual(typed.emptyDraft('F'));
  });
});

describe('hours', () => {
  test.each([
    ['14', 840],
    ['14:30', 870],
    [' 7.05 ', 425],
    ['24', null],
    ['14:60', null],
    ['2 pm', null],
    ['', null],
  ])('"%s"', (text, minutes) => {
    expect(readHour(text)).toBe(minutes);
  });

  it('the next moment of an hour is today, or tomorrow where it is past', () => {
    expect(nextMoment(14 * 60, NOW)).toBe(clock(14));
    expect(nextMoment(13 * 60 + 20, NOW)).toBe(NOW);
    expect(nextMoment(13 * 60, NOW)).toBe(clock(13, 0, 5));
    expect(hourText(hourStart(NOW))).toBe('13:00');
  });
});

describe('a forecast that is typed in', () => {
  const starting = forecasts.startingDraft([], NOW, 'F');
  const filled = (...rows: readonly (readonly [hour: string, t: string, rh: string])[]): forecasts.Draft => ({
    ...starting,
    rows: rows.map(([hour, temperature, humidity]) => ({ hour, temperature, humidity })),
  });
  const errors = (draft: forecasts.Draft, nowMs = NOW) =>
    Object.fromEntries(forecasts.checkDraft(draft, nowMs).errors);

  it('begins with the next hours, every third of them for a day', () => {
    expect(starting.rows.map(({ hour }) => hour)).toEqual([
      '14:00',
      '17:00',
      '20:00',
      '23:00',
      '02:00',
      '05:00',
      '08:00',
      '11:00',
    ]);
    expect(forecasts.withNewRow(starting).rows.at(-1)?.hour).toBe('12:00');
  });

  it('begins with the one that stands, and gives that back', () => {
    const standing: AirAnswer['forecast'] = [
      { at: new Date(clock(17)).toISOString(), airC: 20, rhPct: 60, how: 'forecast' },
      { at: new Date(clock(5, 30, 5)).toISOString(), airC: 10, rhPct: null, how: 'forecast' },
    ];
    const draft = forecasts.startingDraft(standing, NOW, 'F');
    expect(draft.rows).toEqual([
      { hour: '17:00', temperature: '68', humidity: '60' },
      { hour: '05:30', temperature: '50', humidity: '' },
    ]);
    expect(forecasts.checkDraft(draft, NOW).points).toEqual(
      standing.map(({ at, airC, rhPct }) => ({ at, airC, rhPct })),
    );
    const far = [{ ...standing[0], at: new Date(clock(17, 0, 6)).toISOString() }] as typeof standing;
    expect(forecasts.startingDraft(far, NOW, 'F').rows).toHaveLength(8);
  });

  it('its rows go over midnight; those in which nothing stands are left out', () => {
    const draft = filled(['22', '60,5', '70'], ['23', '', ''], ['6:30', '50', '']);
    expect(forecasts.checkDraft(draft, NOW).points).toEqual([
      { at: new Date(clock(22)).toISOString(), airC: fToC(60.5), rhPct: 70 },
      { at: new Date(clock(6, 30, 5)).toISOString(), airC: 10, rhPct: null },
    ]);
  });

  it('says what would be right, row by row', () => {
    expect(errors(starting)).toEqual({ whole: expect.stringMatching(/one row/) });
    expect(errors(filled(['25', '60', '']))).toEqual({ '0.hour': expect.stringMatching(/0 to 23/) });
    expect(errors(filled(['15', '', '60']))).toEqual({
      '0.temperature': expect.stringMatching(/temperature too/),
    });
    expect(errors(filled(['15', '600', '120']))).toEqual({
      '0.temperature': expect.stringMatching(/to 140 °F/),
      '0.humidity': expect.stringMatching(/100 %/),
    });
    expect(errors(filled(['17', '60', ''], ['15', '60', '']))).toEqual({
      '1.hour': expect.stringMatching(/after the one before, which is 17/),
    });
  });

  it('what is kept unsent until its hour is past is said, and not moved to the next day', () => {
    const draft = filled(['15', '60', ''], ['18', '62', '']);
    expect(errors(draft, clock(16))).toEqual({ '0.hour': expect.stringMatching(/past/) });
    expect(errors(filled(['15', '', ''], ['18', '62', '']), clock(16))).toEqual({});
  });

  it('goes along with the unit, and what a tab kept wrongly is nothing', () => {
    expect(forecasts.inUnitNow(filled(['15', '68', '50']), 'C').rows[0]?.temperature).toBe('20');
    expect(forecasts.readDraft('{}')).toBeNull();
    expect(forecasts.readDraft(JSON.stringify(starting))).toEqual(starting);
  });
});

const told = (
  minutesAgo: number,
  airC: number,
  how: 'probe' | 'typed' = 'probe',
  rhPct: number | null = 50,
) => ({
  at: new Date(NOW - minutesAgo * MINUTE_MS).toISOString(),
  airC,
  rhPct,
  how,
});

describe('the last 24 hours', () => {
  const history = [
    told(600, 12, 'typed', null),
    told(300, 14),
    told(290, 15),
    told(200, 18),
    told(30, 20),
    told(20, 21),
  ];

  it('a silence is a gap in the line, a single reading and what was typed are dots', () => {
    const { lines, dots } = drawnOf(history, ({ airC }) => airC);
    expect(lines.map((line) => line.map(({ y }) => y))).toEqual([
      [14, 15],
      [20, 21],
    ]);
    expect(dots.map(({ y }) => y)).toEqual([12, 18]);
    expect(drawnOf(history, ({ rhPct }) => rhPct).dots).toHaveLength(1);
  });

  it('gaps are told from the reading before to the one after, the last up to now', () => {
    const spans = (of: typeof history, nowMs = NOW) =>
      gapsOf(of, nowMs).map(({ fromMs, toMs }) => [(NOW - fromMs) / MINUTE_MS, (NOW - toMs) / MINUTE_MS]);
    expect(spans(history)).toEqual([
      [290, 200],
      [200, 30],
    ]);
    expect(spans(history, NOW + HOUR_MS)).toContainEqual([20, -60]);
    expect(spans([told(600, 12, 'typed')])).toEqual([]);
  });

  it('by the hour: lowest and highest of each, and nothing where nothing was told', () => {
    const hours = hoursOf(history, NOW, hourStart);
    expect(hours).toHaveLength(25);
    expect(hours.at(-1)).toEqual({
      fromMs: clock(13),
      airC: { low: 21, high: 21 },
      rhPct: { low: 50, high: 50 },
    });
    expect(hours.find(({ fromMs }) => fromMs === clock(8))?.airC).toEqual({ low: 14, high: 15 });
    expect(hours.find(({ fromMs }) => fromMs === clock(3))).toMatchObject({
      airC: { low: 12, high: 12 },
      rhPct: null,
    });
    expect(hours.find(({ fromMs }) => fromMs === clock(5))?.airC).toBeNull();
    expect(hours.filter(({ airC }) => airC !== null)).toHaveLength(5);
  });

  it('holds every reading of a day in its hours', () => {
    const nowMs = Date.parse('2026-03-04T13:20:00Z');
    const hours = hoursOf(shopAir.history, nowMs, hourStart);
    const all = boundsOf(shopAir.history.map(({ airC }) => airC));
    const lows = hours.flatMap(({ airC }) => (airC === null ? [] : [airC.low]));
    const highs = hours.flatMap(({ airC }) => (airC === null ? [] : [airC.high]));
    expect(all).toEqual({ low: Math.min(...lows), high: Math.max(...highs) });
  });
});
