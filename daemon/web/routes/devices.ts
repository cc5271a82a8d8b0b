import { z } from 'zod';
import { lineFormSchema, linesReadSchema } from '../../../shared/messages/line-form.ts';
import {
  deviceListSchema,
  deviceNameDraftSchema,
  deviceSettingsSchema,
} from '../../../shared/messages/settings.ts';
import type { Desk, DeviceDesk } from '../desk.ts';
import { json, type Route, route } from './route.ts';

/** Devices: their names, and the form of their lines. */
export const deviceRoutes = ({ devices }: Pick<Desk, 'devices'>): Route[] => [
  ...nameRoutes(devices),
  ...lineFormRoutes(devices),
];

const deviceId = z.string().min(1).max(300);
const deviceSettings = { kind: 'json', name: 'DeviceSettings', schema: deviceSettingsSchema } as const;

const nameRoutes = (desk: DeviceDesk): Route[] => [
  route({
    method: 'get',
    path: '/api/devices',
    name: 'listDevices',
    does: 'What the user has settled about devices: names, and the form of their lines. How devices stand is in /api/live.',
    answer: { kind: 'json', name: 'DeviceList', schema: deviceListSchema },
    handle: () => json({ devices: desk.devices() }),
  }),
  route({
    method: 'put',
    path: '/api/devices/{id}',
    name: 'putDeviceName',
    does: 'Names a device; an empty name takes its name away. An id may hold slashes, which are written %2F in the address.',
    params: { id: deviceId },
    body: { name: 'DeviceNameDraft', schema: deviceNameDraftSchema },
    answer: deviceSettings,
    refusals: [409, 422],
    handle: async ({ params, body }) => json(await desk.putName(params.id, body.name)),
  }),
];

const lineForm = { name: 'LineForm', schema: lineFormSchema } as const;
const linesRead = { kind: 'json', name: 'LinesRead', schema: linesReadSchema } as const;

const lineFormRoutes = (desk: DeviceDesk): Route[] => [
  route({
    method: 'put',
    path: '/api/devices/{id}/form',
    name: 'putDeviceForm',
    does: 'Settles in which form the lines of a device are: pairs, columns, or whatever a pattern fits. Takes effect with the next line.',
    params: { id: deviceId },
    body: lineForm,
    answer: deviceSettings,
    refusals: [409, 422],
    handle: async ({ params, body }) => json(await desk.putForm(params.id, body)),
  }),
  route({
    method: 'get',
    path: '/api/devices/{id}/lines',
    name: 'readLines',
    does: 'The last lines of a device as they came, and what was understood of each in the form in use.',
    params: { id: deviceId },
    answer: linesRead,
    refusals: [404, 409],
    handle: async ({ params }) => json(await desk.lines(params.id, null)),
  }),
  route({
    method: 'post',
    path: '/api/devices/{id}/lines',
    name: 'tryForm',
    does: 'The last lines of a device as they came, and what would be understood of each in the form that is sent. Settles nothing.',
    params: { id: deviceId },
    body: lineForm,
    answer: linesRead,
    refusals: [404, 409],
    handle: async ({ params, body }) => json(await desk.lines(params.id, body)),
  }),
];
