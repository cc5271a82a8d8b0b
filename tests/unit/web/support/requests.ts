import { item, summary } from './record-samples.ts';
import { iron, probe, schedule } from './samples.ts';
import { cement, piece } from './shop-samples.ts';

const { version: _version, madeAt: _madeAt, id: _id, ...draft } = schedule;
export const scheduleDraft = draft;
const { version: _c, madeAt: _a, id: _t, ...cementDraft } = cement;
const { version: _v, madeAt: _m, id: _p, ...pieceDraft } = piece;
export const alarm = { iron: iron.id, kind: 'over-limit', probe: probe.id };

const lagPath = `/api/probes/${encodeURIComponent(probe.id)}/lag`;
const motionPath = `/api/probes/${encodeURIComponent(probe.id)}/motion`;
const calibrationsPath = `/api/probes/${encodeURIComponent(probe.id)}/calibrations`;

/** One good request a route, by the name of its operation. */
export const good: Readonly<Record<string, { readonly path: string; readonly body?: unknown }>> = {
  getHealth: { path: '/api/health' },
  getLive: { path: '/api/live' },
  getDescription: { path: '/api/openapi.json' },
  openStream: { path: '/stream' },
  listSessions: { path: '/api/sessions' },
  getSession: { path: `/api/sessions/${summary.id}` },
  getReadings: { path: `/api/sessions/${summary.id}/readings.csv` },
  getFindings: { path: `/api/sessions/${summary.id}/findings` },
  verifySession: { path: `/api/sessions/${summary.id}/verification` },
  getTrace: { path: `/api/sessions/${summary.id}/trace?from=0&to=60000&points=400` },
  listItems: { path: '/api/items' },
  closeItem: { path: `/api/items/${item.id}/closing`, body: { by: 'A. Tester', found: 'Weave even.' } },
  startSession: { path: '/api/sessions', body: { iron: iron.id } },
  stopSession: { path: `/api/sessions/${summary.id}/stop`, body: {} },
  mark: { path: `/api/sessions/${summary.id}/marks`, body: { mark: { kind: 'stage', stageId: 'tack' } } },
  acknowledgeAlarm: { path: '/api/alarms/acknowledge', body: alarm },
  silenceAlarm: { path: '/api/alarms/silence', body: { ...alarm, forS: 30 } },
  chooseSource: { path: '/api/source', body: { kind: 'simulate' } },
  listSchedules: { path: '/api/schedules' },
  getSchedule: { path: `/api/schedules/${schedule.id}` },
  putSchedule: { path: `/api/schedules/${schedule.id}`, body: { ...scheduleDraft, basedOn: 3 } },
  listScheduleVersions: { path: `/api/schedules/${schedule.id}/versions` },
  listDevices: { path: '/api/devices' },
  putDeviceName: { path: '/api/devices/%2Fdev%2FttyUSB0', body: { name: 'left handle' } },
  putDeviceForm: {
    path: '/api/devices/%2Fdev%2FttyUSB0/form',
    body: { kind: 'columns', separator: 'tab', columns: [{ is: 't' }] },
  },
  readLines: { path: '/api/devices/%2Fdev%2FttyUSB0/lines' },
  tryForm: {
    path: '/api/devices/%2Fdev%2FttyUSB0/lines',
    body: { kind: 'pattern', pattern: '(?P<t>.*)' },
  },
  listIrons: { path: '/api/irons' },
  getIron: { path: `/api/irons/${iron.id}` },
  putIron: { path: `/api/irons/${iron.id}`, body: { name: 'Big', probes: ['a/1'], scheduleId: 'trial' } },
  getIronDial: { path: `/api/irons/${iron.id}/dial` },
  addTypedPoint: { path: `/api/irons/${iron.id}/dial/points`, body: { mark: 4.5, meanC: 150 } },
  removeDialPoint: { path: `/api/irons/${iron.id}/dial/removal`, body: { mark: 4.5 } },
  acceptDial: { path: `/api/irons/${iron.id}/dial/acceptance`, body: {} },
  getIronEvenness: { path: `/api/irons/${iron.id}/evenness` },
  addSpot: {
    path: `/api/irons/${iron.id}/evenness/spots`,
    body: { place: 'toe', readC: 154, thermometerK: 2 },
  },
  removeSpot: { path: `/api/irons/${iron.id}/evenness/removal`, body: { place: 'toe' } },
  forgetSpots: { path: `/api/irons/${iron.id}/evenness/forgetting`, body: {} },
  listProbes: { path: '/api/probes' },
  getProbe: { path: `/api/probes/${encodeURIComponent(probe.id)}` },
  putProbe: {
    path: `/api/probes/${encodeURIComponent(probe.id)}`,
    body: { label: 'x', thermocouple: 'J', unit: 'degF', mountingK: 1 },
  },
  putProbePlace: {
    path: `/api/probes/${encodeURIComponent(probe.id)}/place`,
    body: { kind: 'fitted', spot: 'middle', by: 'clamped' },
  },
  addTypedReading: { path: `/api/irons/${iron.id}/readings`, body: { plateC: 150 } },
  listPieces: { path: '/api/pieces' },
  putPiece: { path: `/api/pieces/${piece.id}`, body: { ...pieceDraft, basedOn: 2 } },
  getPieceHeat: { path: `/api/pieces/${piece.id}/heat` },
  notePiece: {
    path: `/api/pieces/${piece.id}/notes`,
    body: { note: { kind: 'tight', side: 1, by: 'A. Tester' } },
  },
  work: { path: '/api/work', body: { act: { kind: 'next' } } },
  getUnattended: { path: '/api/unattended' },
  putUnattended: { path: '/api/unattended', body: { reminderMin: 5, alarmMin: 7.5 } },
  presence: { path: '/api/presence', body: {} },
  listCements: { path: '/api/cements' },
  putCement: { path: `/api/cements/${cement.id}`, body: { ...cementDraft, basedOn: 1 } },
  learnAnew: { path: `/api/cements/${cement.id}/learn-anew`, body: {} },
  listCoats: { path: '/api/coats' },
  coat: { path: '/api/coats', body: { act: { kind: 'end', coat: 'coat', why: 'done' } } },
  getAir: { path: '/api/air' },
  sayAir: { path: '/api/air', body: { airC: 21.5, rhPct: 55 } },
  putAirFrom: { path: '/api/air/from', body: { probe: 'board/air' } },
  putForecast: {
    path: '/api/air/forecast',
    body: { points: [{ at: '2026-03-01T12:00:00Z', airC: 24, rhPct: null }] },
  },
  removeIron: { path: `/api/irons/${iron.id}/removal`, body: {} },
  getCalibrations: { path: `${calibrationsPath}?unit=F` },
  beginCalibration: { path: `${calibrationsPath}/begin`, body: { mounting: 'fitted' } },
  waitAtPoint: { path: `${calibrationsPath}/wait`, body: { kind: 'contact' } },
  keepPoint: {
    path: `${calibrationsPath}/keep?unit=F`,
    body: { kind: 'contact', plateC: 154, stated: { k: 1.5, as: 'limits' }, instrument: 'a thermometer' },
  },
  dropPoint: { path: `${calibrationsPath}/drop`, body: { point: 0 } },
  saveCalibration: { path: `${calibrationsPath}/save`, body: { by: 'A. Tester', dueUtcMs: null } },
  giveUpCalibration: { path: `${calibrationsPath}/give-up`, body: {} },
  getLag: { path: `${lagPath}?unit=F` },
  beginLag: { path: `${lagPath}/begin`, body: { mounting: 'fitted' } },
  waitForStep: { path: `${lagPath}/step?unit=F`, body: { kind: 'clip' } },
  stopStep: { path: `${lagPath}/stop`, body: {} },
  keepLag: { path: `${lagPath}/keep`, body: {} },
  getMotion: { path: motionPath },
  beginMotion: { path: `${motionPath}/begin`, body: {} },
  giveUpMotion: { path: `${motionPath}/give-up`, body: {} },
  giveUpLag: { path: `${lagPath}/give-up`, body: {} },
};
