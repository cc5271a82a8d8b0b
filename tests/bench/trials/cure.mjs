import { coatClock } from '../../../build/shared/cure/clock.js';
import { airCourse } from '../../../build/shared/cure/course.js';
import { cured, curingOf } from '../../../build/shared/cure/curing.js';
import { learn } from '../../../build/shared/cure/learn.js';
import { shippedCements } from '../../../build/shared/cure/shipped.js';
import { median } from '../parts/stats.mjs';

/** Clocks of coats over a week of the shop's air, without a program around them. DEMO DATA. */

const CLOCKS = 200;
const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const WEEK_MS = 7 * 24 * HOUR_MS;
const NOW_MS = Date.UTC(2026, 2, 14, 8);
const ROUNDS = 41;
/** Rounds in which the compiler finds what is hot; they do not count. */
const COLD_ROUNDS = 10;

/** A week told once a minute, of which the program keeps every seventh point or so: warmer by day, and humid at night. */
const points = Array.from({ length: 1500 }, (_, i) => {
  const atUtcMs = NOW_MS - WEEK_MS + Math.round((i * WEEK_MS) / 1500);
  const day = Math.sin((atUtcMs / (24 * HOUR_MS)) * 2 * Math.PI);
  return { atUtcMs, airC: 16 - 5 * day, rhPct: 65 + 15 * day, how: 'probe' };
});

/** Coats of three cements, put on over the last two days, some of them touched since. */
function coats(curings) {
  return Array.from({ length: CLOCKS }, (_, i) => {
    const at = i % shippedCements.length;
    const fromUtcMs = NOW_MS - Math.round((i * 48 * HOUR_MS) / CLOCKS);
    const atUtcMs = fromUtcMs + 20 * MINUTE_MS;
    const { likelyS } = cured(curings[at], fromUtcMs, atUtcMs);
    const touched = i % 4 === 0 && atUtcMs < NOW_MS;
    const checks = touched ? [{ atUtcMs, stage: 'set-to-touch', found: 'tacky', curedS: likelyS }] : [];
    return { at, fromUtcMs, checks };
  });
}

/** Twelve coats of one cement, touched at two stages on so many days. */
const observations = Array.from({ length: 12 }, (_, i) => ({
  fromUtcMs: NOW_MS - i * 24 * HOUR_MS,
  stages: [
    { aboveS: 800 + 20 * (i % 5), belowS: 1000 + 20 * (i % 7), stageS: 1200 },
    { aboveS: 2400 + 60 * (i % 5), belowS: 3000 + 60 * (i % 7), stageS: 3600 },
  ],
}));

/**
 * Time that these take, ms, in turns: all clocks from the air's course on, the answers as JSON, and what one cement's
 * coats teach.
 */
export function cure() {
  const learned = learn(observations);
  const told = coats(curingsAt(NOW_MS));
  const answers = clocks(told, learned, NOW_MS);
  if (answers.length !== CLOCKS || new Set(answers.map(({ state }) => state)).size < 2)
    throw new Error('the clocks all say the same');
  const parts = {
    // A moment later each time, so that nothing can be kept from before.
    clocks: (round) => clocks(told, learned, NOW_MS + round * 1000).length,
    json: () => JSON.stringify(answers).length,
    learn: () => learn(observations).learned.observations,
  };
  const times = { clocks: [], json: [], learn: [] };
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [name, part] of Object.entries(parts)) {
      const from = performance.now();
      sink += part(round);
      if (round >= COLD_ROUNDS) times[name].push(performance.now() - from);
    }
  }
  return { clocks: CLOCKS, points: points.length, observations: observations.length, ...medians(times) };
}

/** Keeps the compiler from leaving out what nobody reads. */
let sink = 0;

const medians = (times) =>
  Object.fromEntries(Object.entries(times).map(([name, all]) => [`${name}Ms`, median(all)]));

function curingsAt(nowUtcMs) {
  const course = airCourse({ points, forecast: [], nowUtcMs });
  return shippedCements.map((cement) => curingOf(cement, course));
}

function clocks(told, learned, nowUtcMs) {
  const curings = curingsAt(nowUtcMs);
  return told.map(({ at, fromUtcMs, checks }) =>
    coatClock({
      cement: shippedCements[at],
      fromUtcMs,
      checks,
      curing: curings[at],
      learned,
      nowUtcMs,
      clockLost: false,
    }),
  );
}
