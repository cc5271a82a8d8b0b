import { motionPlainSchema, probeMotionSchema } from '../../../shared/messages/motion.ts';
import { probeIdSchema } from '../../../shared/thermometer/probe.ts';
import type { Desk } from '../desk.ts';
import { procedureStep } from './procedure-step.ts';
import { json, type Route, route } from './route.ts';

const answer = { kind: 'json', name: 'ProbeMotion', schema: probeMotionSchema } as const;

/** Whether a probe's line tells still from moving: how that stands, and the check that it takes. */
export const motionRoutes = ({ motions }: Pick<Desk, 'motions'>): Route[] => [
  route({
    method: 'get',
    path: '/api/probes/{id}/motion',
    name: 'getMotion',
    does: 'What is still and what is moving on a probe’s line, as far as that was checked, and how far the check is.',
    params: { id: probeIdSchema },
    answer,
    refusals: [404],
    handle: ({ params }) => json(motions.motion(params.id)),
  }),
  procedureStep({
    path: 'motion/begin',
    name: 'BeginMotion',
    does: 'Begins the check: the iron stands still, then it is moved. What is found counts at once, by itself.',
    body: motionPlainSchema,
    answer,
    take: async (probe) => motions.begin(probe),
  }),
  procedureStep({
    path: 'motion/give-up',
    name: 'GiveUpMotion',
    does: 'Ends the check without a result. What was found before stays.',
    body: motionPlainSchema,
    answer,
    take: async (probe) => motions.giveUp(probe),
  }),
];
