import { heatScheduleSchema } from '../../../shared/heat/schedule.ts';
import { ironDraftSchema, ironSchema } from '../../../shared/iron/iron.ts';
import {
  ironListSchema,
  probeListSchema,
  scheduleListSchema,
  scheduleVersionsSchema,
  scheduleWriteSchema,
} from '../../../shared/messages/settings.ts';
import { probeDraftSchema, probeIdSchema, probeSettingsSchema } from '../../../shared/thermometer/probe.ts';
import { webWords } from '../../../shared/words/web.ts';
import type { Desk, SettingsDesk } from '../desk.ts';
import { Trouble } from '../problem.ts';
import { settledId as id, json, type Route, route } from './route.ts';
import { versioned, versionSeen } from './versions.ts';

/** Heat schedules, irons and probes: to read, and to change. */
export const settingsRoutes = ({ settings }: Pick<Desk, 'settings'>): Route[] => [
  ...scheduleRoutes(settings),
  ...versionRoutes(settings),
  ...ironRoutes(settings),
  ...probeRoutes(settings),
];

const scheduleRoutes = (desk: SettingsDesk): Route[] => [
  route({
    method: 'get',
    path: '/api/schedules',
    name: 'listSchedules',
    does: 'All heat schedules, each in its newest version.',
    answer: { kind: 'json', name: 'ScheduleList', schema: scheduleListSchema },
    handle: () => json({ schedules: desk.schedules() }),
  }),
  route({
    method: 'get',
    path: '/api/schedules/{id}',
    name: 'getSchedule',
    does: 'One heat schedule in its newest version.',
    params: { id },
    answer: { kind: 'json', name: 'HeatSchedule', schema: heatScheduleSchema },
    refusals: [404],
    versioned: true,
    handle: ({ params }) => versioned(oneOf(desk.schedules(), params.id, 'heat schedule', '/api/schedules')),
  }),
  route({
    method: 'put',
    path: '/api/schedules/{id}',
    name: 'putSchedule',
    does: 'Makes a new version of a heat schedule, or a new one. Says which version it is based on, in the body or as If-Match.',
    params: { id },
    body: { name: 'ScheduleWrite', schema: scheduleWriteSchema },
    answer: { kind: 'json', name: 'HeatSchedule', schema: heatScheduleSchema },
    refusals: [409, 422, 428],
    versioned: true,
    handle: async ({ params, body: { basedOn, ...draft }, ifMatch }) =>
      versioned(await desk.putSchedule(params.id, draft, versionSeen(basedOn, ifMatch))),
  }),
];

const versionRoutes = (desk: SettingsDesk): Route[] => [
  route({
    method: 'get',
    path: '/api/schedules/{id}/versions',
    name: 'listScheduleVersions',
    does: 'Every version of one heat schedule, the newest first.',
    params: { id },
    answer: { kind: 'json', name: 'ScheduleVersions', schema: scheduleVersionsSchema },
    refusals: [404],
    handle: ({ params }) => {
      oneOf(desk.schedules(), params.id, 'heat schedule', '/api/schedules');
      return json({ versions: desk.scheduleVersions(params.id) });
    },
  }),
];

const ironRoutes = (desk: SettingsDesk): Route[] => [
  route({
    method: 'get',
    path: '/api/irons',
    name: 'listIrons',
    does: 'All irons.',
    answer: { kind: 'json', name: 'IronList', schema: ironListSchema },
    handle: () => json({ irons: desk.irons() }),
  }),
  route({
    method: 'get',
    path: '/api/irons/{id}',
    name: 'getIron',
    does: 'One iron.',
    params: { id },
    answer: { kind: 'json', name: 'Iron', schema: ironSchema },
    refusals: [404],
    handle: ({ params }) => json(oneOf(desk.irons(), params.id, 'iron', '/api/irons')),
  }),
  route({
    method: 'put',
    path: '/api/irons/{id}',
    name: 'putIron',
    does: 'Settles what an iron is called, which probes sit on it and which heat schedule it works by.',
    params: { id },
    body: { name: 'IronDraft', schema: ironDraftSchema },
    answer: { kind: 'json', name: 'Iron', schema: ironSchema },
    refusals: [404, 409, 422],
    handle: async ({ params, body }) => json(await desk.putIron(params.id, body)),
  }),
];

const probeRoutes = (desk: SettingsDesk): Route[] => [
  route({
    method: 'get',
    path: '/api/probes',
    name: 'listProbes',
    does: 'All probes.',
    answer: { kind: 'json', name: 'ProbeList', schema: probeListSchema },
    handle: () => json({ probes: desk.probes() }),
  }),
  route({
    method: 'get',
    path: '/api/probes/{id}',
    name: 'getProbe',
    does: 'One probe. Its id holds slashes, which are written %2F in the address.',
    params: { id: probeIdSchema },
    answer: { kind: 'json', name: 'ProbeSettings', schema: probeSettingsSchema },
    refusals: [404],
    handle: ({ params }) => json(oneOf(desk.probes(), params.id, 'probe', '/api/probes')),
  }),
  route({
    method: 'put',
    path: '/api/probes/{id}',
    name: 'putProbe',
    does: 'Settles how a probe is read: its name, thermocouple type, unit, and what stands in for a calibration.',
    params: { id: probeIdSchema },
    body: { name: 'ProbeDraft', schema: probeDraftSchema },
    answer: { kind: 'json', name: 'ProbeSettings', schema: probeSettingsSchema },
    refusals: [404, 409, 422],
    handle: async ({ params, body }) => json(await desk.putProbe(params.id, body)),
  }),
];

function oneOf<T extends { readonly id: string }>(
  all: readonly T[],
  id: string,
  what: string,
  list: string,
): T {
  const one = all.find((candidate) => candidate.id === id);
  if (one === undefined) throw new Trouble(404, webWords.noSuch(what, id, list), 'id');
  return one;
}
