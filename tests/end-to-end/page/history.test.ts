import { it } from 'vitest';
import type { Session } from '../../../shared/messages/sessions.ts';
import type { Trace } from '../../../shared/messages/trace.ts';
import { fToC } from '../../../shared/units/temperature.ts';
import { BIG, iron, live, probe, SESSION, VERSION } from '../../fixtures/scenes.ts';
import { Bench } from './bench.ts';

/** The last minutes of a session that begins while the page is open: what was before the page comes from the book. */

const bench = Bench.ofFile();

const trace: Trace = {
  session: SESSION,
  fromMs: 0,
  toMs: 60_000,
  untilMs: 60_000,
  readUntilMs: 60_000,
  complete: true,
  broken: null,
  probes: [{ id: BIG, tMs: [0], minC: [fToC(180)], maxC: [fToC(190)], fault: [null] }],
  settings: [],
  work: [],
  notes: [],
  findings: [],
  findingsLeftOut: 0,
  cycles: 0,
};

const session: Session = {
  id: SESSION,
  iron: { id: 'big', name: 'Big iron' },
  simulated: false,
  watched: 'monitored',
  startedAt: '2026-03-04T13:19:00Z',
  startedBecause: 'hot',
  endedAt: null,
  endedBecause: null,
  lengthMs: 60_000,
  zone: 'UTC',
  continues: null,
  samples: 600,
  findings: 0,
  peakC: fToC(252),
  programVersion: VERSION,
  foldVersion: 1,
  seal: '',
};

it('is asked for again while the book hasn’t it yet', async () => {
  const { page, change } = await bench.show(live([probe(250)], [], { irons: [iron({ session: null })] }));
  let asked = 0;
  await page.route('**/api/sessions/**', async (route) => {
    const isTrace = route.request().url().includes('/trace');
    if (isTrace) asked += 1;
    if (asked <= 2)
      await route.fulfill({ status: 404, json: { error: { message: 'No such session.', where: 'id' } } });
    else await route.fulfill({ json: isTrace ? trace : session });
  });
  await change(live([probe(250)]));
  await page.getByRole('img', { name: /180 °F.*250 °F/ }).waitFor({ timeout: 15_000 });
}, 30_000);
