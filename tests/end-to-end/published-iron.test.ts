import { join } from 'node:path';
import { pino } from 'pino';
import { expect, it, onTestFinished } from 'vitest';
import { startProgram } from '../../build/daemon/run.js';
import { settledCycle } from '../../daemon/probe/simulated/cycle.ts';
import { swingingIron } from '../../daemon/probe/simulated/irons.ts';
import { leftOnRest } from '../../daemon/probe/simulated/scenario.ts';
import { ironDialSchema } from '../../shared/messages/dial.ts';
import { ironAt, printedK, published, room } from '../reference/iron/published-iron.ts';
import { MachineOnDisk } from '../unit/probe/machine-on-disk.ts';
import { Api } from './support/api.ts';
import { freshFolder } from './support/folder.ts';
import { verify } from './support/program.ts';
import { until } from './support/until.ts';

/**
 * The published household iron (Schneider, USA about 1986; data/7_irons/SOURCES.md) through the whole program: its
 * simulated board's lines, the daemon, its settings and its book, with the marks of its dial told as commands.
 */

const RESOLUTION_K = 0.25;
const LAG_S = 0.5;
/** Simulated seconds for each real one. */
const SPEED = 250;

it('comes back at each of its marks within the resolution of its probe, and its stages are answered for', async () => {
  expect(published.map((p) => p.mark)).toEqual([3, 4, 5]);
  let now = published[0] ?? expect.unreachable();
  const turned = new Map(published.map((row) => [row.mark, ironAt(row)]));
  const at = () => turned.get(now.mark) ?? expect.unreachable();
  // The hand at the dial: what the simulated iron is asked for follows the mark that was told last.
  const traits = {
    ...swingingIron,
    get body() {
      return at().body;
    },
    probe: { ...swingingIron.probe, resolutionK: RESOLUTION_K, lagS: LAG_S },
    wire: { ...swingingIron.wire, periodMs: 250 },
  };
  const scenario = {
    ...leftOnRest(0),
    get turns() {
      return [{ atS: 0, dialC: at().dialC }];
    },
  };
  const dataDir = join(freshFolder(), 'data');
  const listen = { host: '127.0.0.1', port: 0 };
  const running = await startProgram(
    {
      kind: 'run',
      serial: [],
      simulate: true,
      thermocouple: null,
      simulatedPad: false,
      speed: SPEED,
      listen,
      dataDir,
    },
    {
      log: pino({ level: 'silent' }),
      say: () => undefined,
      machine: new MachineOnDisk(),
      simulated: { traits, scenario, seed: 7 },
    },
  );
  let stopped = false;
  onTestFinished(() => (stopped ? undefined : running.stop()));
  const api = new Api(running.address);
  const probe = await until('the probe is met', async () => (await api.probes())[0]);
  const { id, label, thermocouple, unit } = probe;
  const lag = { tauS: LAG_S, standardS: 0.05, measuredAt: '2026-01-01T08:00:00Z' };
  const path = `/api/probes/${encodeURIComponent(id)}`;
  expect((await api.put(path, { label, thermocouple, unit, lag })).status).toBe(200);
  const session = await until('it is recorded', () => api.running());
  const mark = (said: unknown) => api.post(`/api/sessions/${session}/marks`, { mark: said });
  expect((await mark({ kind: 'place', place: 'on-rest' })).status).toBe(200);
  const dial = async () =>
    ironDialSchema.parse(await (await fetch(`${running.address}/api/irons/iron-1/dial`)).json());

  for (const row of published) {
    expect((await mark({ kind: 'dial', mark: row.mark })).status).toBe(200);
    now = row;
    const truth = settledCycle(at().body, { ...room, dialC: at().dialC });
    const point = await until(
      `mark ${row.mark} is charted`,
      async () => {
        const found = (await dial()).chart.points.find((p) => p.mark === row.mark);
        return found !== undefined && found.cycles >= 8 ? found : null;
      },
      60_000,
    );
    // The published middle one is the middle of the other two; the mean over time is the simulated iron's own.
    expect(Math.abs(point.meanC - truth.meanC)).toBeLessThan(RESOLUTION_K);
    expect(Math.abs((point.peakC ?? 0) - row.highC)).toBeLessThan(RESOLUTION_K);
    expect(Math.abs((point.troughC ?? 0) - row.lowC)).toBeLessThan(printedK);
  }
  const answer = await dial();
  expect(answer.drift).toBeNull();
  // A swing of 26 to 31 K leaves no room in a band of 30 degF: it is said that this iron can't, and by how much.
  const hot = answer.advice.find(({ stageId }) => stageId === 'intermediate')?.advice;
  expect(hot).toMatchObject({ kind: 'too-wide', ceiling: 'stage-high' });
  // All its published peaks keep under 375 degF, and by more than the probe's uncertainty.
  expect(answer.highest).toEqual({ mark: 5, atEnd: true });
  expect(answer.drawing.stretches.map((s) => s.mark)).toEqual([3, 4, 5]);
  stopped = true;
  await running.stop();
  expect(await verify(session, dataDir)).toMatchObject({ code: 0 });
});
