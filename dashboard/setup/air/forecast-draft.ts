import { z } from 'zod';
import type { AirAnswer, Forecast } from '../../../shared/messages/cure.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { typedAirWords, forecastWords as words } from '../../../shared/words/air.ts';
import { readKept } from '../../parts/keep.ts';
import { airBounds, percentBounds, rangeError, temperatureError } from '../fields/checks.ts';
import {
  figureTyped,
  inUnit,
  isTyped,
  readFigure,
  readTemperature,
  temperatureTyped,
} from '../fields/number.ts';
import { hourStart, hourText, nextMoment, readHour } from './hour.ts';

/** A day's forecast as it is typed: rows of hour, temperature and humidity. Pure. */

const rowSchema = z.strictObject({ hour: z.string(), temperature: z.string(), humidity: z.string() });
export type Row = z.infer<typeof rowSchema>;

const draftSchema = z.strictObject({
  unit: z.enum(['F', 'C']),
  /** The moment from which on its hours count: within a day from it each of them comes once. */
  fromMs: z.number(),
  rows: z.array(rowSchema).readonly(),
});
export type Draft = Readonly<z.infer<typeof draftSchema>>;

/** What the tab kept of it; null where that is nothing or can't be read. */
export const readDraft = (text: string | null): Draft | null => readKept(text, draftSchema);

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** Rows that are there to begin with, and how far apart they are. */
const FIRST_ROWS = 8;
const FIRST_STEP_MS = 3 * HOUR_MS;
export const MOST_ROWS = 24;

const emptyRow = (atMs: number): Row => ({ hour: hourText(atMs), temperature: '', humidity: '' });

/** The form before anything is typed: the forecast that stands, else the next hours, every third of them. */
export function startingDraft(forecast: AirAnswer['forecast'], nowMs: number, unit: TemperatureUnit): Draft {
  const fromMs = hourStart(nowMs) + HOUR_MS;
  const standing = forecast.map(({ at, airC, rhPct }) => ({ atMs: Date.parse(at), airC, rhPct }));
  const isADay = standing.every(({ atMs }) => atMs >= nowMs && atMs < nowMs + DAY_MS);
  if (standing.length === 0 || standing.length > MOST_ROWS || !isADay)
    return {
      unit,
      fromMs,
      rows: Array.from({ length: FIRST_ROWS }, (_, i) => emptyRow(fromMs + i * FIRST_STEP_MS)),
    };
  const rows = standing.map(({ atMs, airC, rhPct }) => ({
    hour: hourText(atMs),
    temperature: temperatureTyped(airC, unit).text,
    humidity: rhPct === null ? '' : figureTyped(rhPct).text,
  }));
  return { unit, fromMs: nowMs, rows };
}

/** The same in the unit that the page shows now. */
export const inUnitNow = (draft: Draft, unit: TemperatureUnit): Draft =>
  draft.unit === unit
    ? draft
    : {
        ...draft,
        unit,
        rows: draft.rows.map((row) => ({
          ...row,
          temperature: inUnit(readTemperature(row.temperature, draft.unit), unit).text,
        })),
      };

export const withRow = (draft: Draft, at: number, change: Partial<Row>): Draft => ({
  ...draft,
  rows: draft.rows.map((row, i) => (i === at ? { ...row, ...change } : row)),
});

/** One more row, an hour after the last one. */
export function withNewRow(draft: Draft): Draft {
  const minutes = readHour(draft.rows.at(-1)?.hour ?? '');
  const lastMs = minutes === null ? draft.fromMs : nextMoment(minutes, draft.fromMs);
  return { ...draft, rows: [...draft.rows, emptyRow(lastMs + HOUR_MS)] };
}

export interface CheckedForecast {
  /** Null while anything is wrong. */
  readonly points: Forecast['points'] | null;
  /** By the row's place and field, as in "2.hour"; `whole`: of all of it. */
  readonly errors: ReadonlyMap<string, string>;
}

const isFilled = ({ temperature, humidity }: Row): boolean =>
  temperature.trim() !== '' || humidity.trim() !== '';

/** The points that were typed, or what is wrong. Rows without temperature and humidity are left out. */
export function checkDraft(draft: Draft, nowMs: number): CheckedForecast {
  const errors = new Map<string, string>();
  const note = (key: string, error: string): void => {
    if (error !== '' && !errors.has(key)) errors.set(key, error);
  };
  const points: Forecast['points'][number][] = [];
  let before: { readonly atMs: number; readonly hour: string } | null = null;
  for (const [i, row] of draft.rows.entries()) {
    if (!isFilled(row)) continue;
    const minutes = readHour(row.hour);
    const airC = readTemperature(row.temperature, draft.unit);
    const rhPct = readFigure(row.humidity, '%');
    note(
      `${i}.temperature`,
      isTyped(airC) ? temperatureError(airC, draft.unit, airBounds) : words.noTemperature,
    );
    if (isTyped(rhPct)) note(`${i}.humidity`, rangeError(rhPct, percentBounds, typedAirWords.percent));
    if (minutes === null) {
      note(`${i}.hour`, words.wrongHour);
      continue;
    }
    const atMs = nextMoment(minutes, draft.fromMs);
    if (atMs <= nowMs) note(`${i}.hour`, words.past);
    if (before !== null && atMs <= before.atMs) note(`${i}.hour`, words.notRising(before.hour));
    before = { atMs, hour: row.hour.trim() };
    if (airC.value !== null)
      points.push({ at: new Date(atMs).toISOString(), airC: airC.value, rhPct: rhPct.value });
  }
  if (points.length === 0 && errors.size === 0) note('whole', words.empty);
  return { points: errors.size === 0 ? points : null, errors };
}
