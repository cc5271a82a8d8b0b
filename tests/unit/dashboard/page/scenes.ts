import { shippedSchedule } from '../../../../shared/heat/shipped.ts';
import { placeAmongStages } from '../../../../shared/heat/standing.ts';
import type {
  AlarmLive,
  DeviceLive,
  IronLive,
  Live,
  ProbeLive,
  Situation,
} from '../../../../shared/messages/live.ts';
import type { Fault } from '../../../../shared/thermometer/reading.ts';
import { fToC } from '../../../../shared/units/temperature.ts';

/** How things stand in each state that the page can be in. */

export const VERSION = '0.1.0';
const AT = '2026-03-04T13:20:00Z';
export const SESSION = '019cb8f0-7a00-7000-8000-000000000001';
export const BIG = 'bench-board/1';
export const SMALL = 'bench-board/2';

export function probe(plateF: number | Fault, over: Partial<ProbeLive> = {}): ProbeLive {
  const plateC = typeof plateF === 'number' ? fToC(plateF) : null;
  const guardBandK = 2.2;
  return {
    id: BIG,
    label: 'Sole plate, toe',
    iron: 'big',
    simulated: false,
    quality: typeof plateF === 'number' ? 'ok' : plateF,
    plateC,
    standing: placeAmongStages(plateC, shippedSchedule, guardBandK),
    ageMs: plateC === null ? 12_000 : 40,
    trend: plateC === null ? null : 'steady',
    slopeKPerS: plateC === null ? null : 0,
    guardBandK,
    hot: plateC === null || plateC >= 43,
    ...over,
  };
}

export const iron = (over: Partial<IronLive> = {}): IronLive => ({
  id: 'big',
  name: 'Big iron',
  simulated: false,
  probes: [BIG],
  phase: 'regulating',
  hot: true,
  place: 'on-work',
  stageId: 'initial',
  session: SESSION,
  schedule: {
    ...shippedSchedule,
    name: 'Demo: Halvorsen Two-Seater, wing panels',
    cementLimitC: fToC(325),
    source: { manual: 'Demo covering manual (invented)', page: '41' },
  },
  ...over,
});

export const device = (over: Partial<DeviceLive> = {}): DeviceLive => ({
  id: 'bench-board',
  path: '/dev/ttyUSB0',
  simulated: false,
  link: 'connected',
  detail: '',
  hello: { id: 'bench-board', fw: '3' },
  linesAccepted: 5120,
  samplesMissed: 2,
  checksummed: true,
  rejected: [{ cause: 'checksum', count: 3, lastRaw: 'p=1 n=77 t=12\\x001.4*5B' }],
  lastLine: 'p=1 n=5122 ms=512203 t=121.4*5B',
  ...over,
});

export const alarm = (over: Partial<AlarmLive> = {}): AlarmLive => ({
  iron: 'big',
  kind: 'over-limit',
  probe: BIG,
  priority: 3,
  state: 'unacknowledged',
  since: '2026-03-04T13:19:18Z',
  peakC: fToC(386),
  detail: '',
  silencedUntil: null,
  ...over,
});

export const live = (
  probes: readonly ProbeLive[],
  alarms: readonly AlarmLive[] = [],
  situation: Partial<Situation> = {},
): Live => ({
  program: { name: 'soleplate', version: VERSION, epoch: 'run-1' },
  at: AT,
  probes,
  alarms,
  situation: {
    irons: [iron()],
    devices: [device()],
    keeping: { kept: true, detail: '' },
    hearing: { armedPages: 1, unheard: false },
    choice: null,
    viewOnly: false,
    simulated: false,
    ...situation,
  },
});

const simulatedIron = iron({ simulated: true, name: 'Simulated iron', schedule: shippedSchedule });

export const scenes = {
  'no-device': live([], [], { irons: [], devices: [] }),
  'waiting-for-choice': live([], [], {
    irons: [],
    devices: [],
    choice: [
      { path: '/dev/ttyUSB0', title: 'CP2102 USB to UART, serial number 0001', problem: '' },
      {
        path: '/dev/ttyACM0',
        title: 'a board without a name',
        problem:
          'You may not open it. Add yourself to the group "dialout" (sudo usermod -aG dialout $USER) and log in again.',
      },
    ],
  }),
  warming: live([probe(181, { trend: 'rising', slopeKPerS: 0.9 })], [], {
    irons: [iron({ phase: 'warming', place: 'on-rest', stageId: null })],
  }),
  'in-stage': live([probe(252)]),
  'over-limit': live([probe(383, { trend: 'rising' })], [alarm()]),
  'no-reading': live(
    [probe('open')],
    [alarm({ kind: 'no-reading', detail: 'open', peakC: null, since: '2026-03-04T13:19:48Z' })],
    { irons: [iron({ phase: 'unknown' })] },
  ),
  'device-lost': live(
    [probe('device-lost')],
    [alarm({ kind: 'no-reading', detail: 'device-lost', peakC: null, state: 'acknowledged' })],
    { devices: [device({ link: 'lost', detail: 'The port /dev/ttyUSB0 is gone. Plug the cable back in.' })] },
  ),
  'not-recording': live(
    [probe(252)],
    [alarm({ kind: 'not-recording', priority: 2, probe: null, peakC: null, detail: 'The disk is full.' })],
    { irons: [iron({ session: null })], keeping: { kept: false, detail: 'The disk is full.' } },
  ),
  simulated: live([probe(252, { simulated: true })], [], {
    irons: [simulatedIron],
    devices: [device({ simulated: true, path: 'simulated iron' })],
    simulated: true,
  }),
  'two-irons': live(
    [
      probe(304, { trend: 'falling' }),
      probe(301, { id: 'bench-board/3', label: 'Sole plate, heel' }),
      probe('silent', { id: SMALL, iron: 'small', label: 'Small iron, plate' }),
    ],
    [
      alarm({
        kind: 'no-reading',
        iron: 'small',
        probe: SMALL,
        peakC: null,
        detail: 'silent',
        state: 'acknowledged',
      }),
      alarm({ kind: 'above-band', priority: 1, state: 'returned-unacknowledged', peakC: null }),
    ],
    {
      irons: [
        iron({ probes: [BIG, 'bench-board/3'] }),
        iron({ id: 'small', name: 'Small iron', probes: [SMALL], place: 'on-rest', session: null }),
      ],
    },
  ),
  'view-only': live(
    [probe(96)],
    [alarm({ state: 'acknowledged', peakC: null, kind: 'below-band', priority: 1 })],
    {
      viewOnly: true,
      irons: [iron({ phase: 'cold', hot: false })],
    },
  ),
  silenced: live([probe(383)], [alarm({ silencedUntil: '2026-03-04T13:21:00Z' })]),
} satisfies Record<string, Live>;

export type SceneName = keyof typeof scenes;
