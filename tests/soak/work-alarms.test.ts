import { expect, it } from 'vitest';
import { noMistakes } from '../../daemon/probe/simulated/worker/worker.ts';
import { byHour, countAlarms, countText } from '../simulated-work/count.ts';
import { type WorkAlarm, watchWork } from '../simulated-work/watch.ts';
import { workerOf } from '../simulated-work/workers.ts';
import { LIMIT_C } from '../unit/watch/support/settings.ts';

/** `SOLEPLATE_HOURS` takes another number of simulated hours, for a slice. */
const HOURS = Number(process.env['SOLEPLATE_HOURS'] ?? 120);
/** A working day each, so that a cold start counts as often as it does at a bench. */
const SESSION_HOURS = 4;

it(`${HOURS} h of correct simulated work: alarms an hour`, () => {
  const alarms: WorkAlarm[] = [];
  let over = 0;
  for (let session = 0; session < HOURS / SESSION_HOURS; session++) {
    const seed = session + 1;
    const worker = workerOf(seed, { mistakes: noMistakes, hours: SESSION_HOURS });
    const watched = watchWork(worker, seed);
    if (watched.highestC >= LIMIT_C) over++;
    const beforeMs = session * SESSION_HOURS * 3_600_000;
    for (const a of watched.alarms) {
      alarms.push({ ...a, tMs: a.tMs + beforeMs });
      if (a.change === 'raised')
        console.log(
          `seed ${seed}, ${a.iron}, ${(a.tMs / 60_000).toFixed(1)} min: ${a.alarm.kind} (${a.priority}) ${a.alarm.detail}`,
        );
    }
  }
  const raised = alarms.filter((a) => a.change === 'raised');
  const know = byHour(
    raised.filter((a) => a.priority === 1),
    HOURS,
  );
  console.log(
    [
      countText(countAlarms(alarms, HOURS)),
      `sessions in which the plate truly came to the guarded limit: ${over}`,
      `hours with no alarm of priority 1: ${know.none}, with one: ${know.one}, with more: ${know.more}; most in one hour: ${know.most}`,
    ].join('\n'),
  );
  expect(over).toBe(0);
  expect(raised.filter((a) => a.priority > 1)).toEqual([]);
  expect(raised.length / HOURS).toBeLessThanOrEqual(1);
});
