import { expect, it } from 'vitest';
import { sessionOf } from './warnings/sessions.ts';
import { type Outcome, watchSession } from './warnings/study.ts';
import { tableText, tally } from './warnings/table.ts';

/** `SOLEPLATE_HOURS` takes another number of simulated hours, for a slice. */
const HOURS = Number(process.env['SOLEPLATE_HOURS'] ?? 240);

it(`${HOURS} h of simulated work: warnings before the limit, by slope and by the filter`, () => {
  const outcomes: (readonly Outcome[])[] = [];
  for (let seed = 1; seed <= HOURS; seed++) outcomes.push(watchSession(sessionOf(seed, 3600)));
  const rows = tally(outcomes, HOURS);
  console.log(tableText(rows));
  const [slope, known, unknown] = rows;
  if (slope === undefined || known === undefined || unknown === undefined) return expect.unreachable();
  expect(known.crossings).toBeGreaterThan(HOURS / 4);
  expect(known.missed).toBeLessThanOrEqual(slope.missed);
  expect(known.falsePerHour).toBeLessThanOrEqual(slope.falsePerHour);
});
