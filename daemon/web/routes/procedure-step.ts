import type { z } from 'zod';
import { wordsInSchema } from '../../../shared/messages/calibration.ts';
import { probeIdSchema } from '../../../shared/thermometer/probe.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { type AnswerForm, json, type Route, route } from './route.ts';

interface Step<S extends z.ZodType> {
  /** Behind `/api/probes/{id}/`. */
  readonly path: string;
  /** Of what is sent; the operation has it too, with a small first letter. */
  readonly name: string;
  readonly does: string;
  readonly body: S;
  readonly answer: AnswerForm;
  readonly take: (probe: string, asked: z.output<S>, unit: TemperatureUnit) => Promise<unknown>;
}

/** One step of a procedure that is led for a probe: answers how things stand after it. */
export const procedureStep = <S extends z.ZodType>({
  path,
  name,
  does,
  body,
  answer,
  take,
}: Step<S>): Route =>
  route({
    method: 'post',
    path: `/api/probes/{id}/${path}`,
    name: `${name.charAt(0).toLowerCase()}${name.slice(1)}`,
    does,
    params: { id: probeIdSchema },
    query: wordsInSchema,
    body: { name, schema: body },
    answer,
    refusals: [404, 409, 422],
    handle: async ({ params, query, body: asked }) => json(await take(params.id, asked, query.unit)),
  });
