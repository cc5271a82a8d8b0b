import { z } from 'zod';
import { readAs } from '../problem.ts';

/** What a route is given: what came with the request, not yet read by any schema. */
export interface RawCall {
  readonly params: Readonly<Record<string, unknown>>;
  /** What stood after the question mark. */
  readonly query: Readonly<Record<string, unknown>>;
  /** Undefined where the request had no body. */
  readonly body: unknown;
  readonly ifMatch: string | undefined;
}

export type Answer =
  | { readonly kind: 'json'; readonly body: unknown; readonly etag?: string }
  | { readonly kind: 'done' }
  | { readonly kind: 'csv'; readonly fileName: string; readonly chunks: AsyncIterable<string> };

/** What a route answers when all is well. */
export type AnswerForm =
  | { readonly kind: 'json'; readonly name: string; readonly schema: z.ZodType }
  | { readonly kind: 'any-json' }
  | { readonly kind: 'done' }
  | { readonly kind: 'csv' }
  | { readonly kind: 'upgrade' };

/** One line of the table that both the server and /api/openapi.json are made from. */
export interface Route {
  readonly method: 'get' | 'put' | 'post';
  /** With parameters in braces, for example `/api/sessions/{id}`. */
  readonly path: string;
  /** Name of the operation, for programs made from the description. */
  readonly name: string;
  readonly does: string;
  readonly params: Readonly<Record<string, z.ZodType>>;
  /** What may stand after the question mark; null: whatever stands there is not looked at. */
  readonly query: z.ZodObject | null;
  readonly body: { readonly name: string; readonly schema: z.ZodType } | null;
  readonly answer: AnswerForm;
  /** Statuses that it may answer with beside the ones common to all. */
  readonly refusals: readonly number[];
  /** Takes If-Match and gives an ETag. */
  readonly versioned: boolean;
  handle(call: RawCall): Promise<Answer> | Answer;
}

/** A path parameter that a user can't get wrong in a harmful way. */
type Params = Readonly<Record<string, z.ZodType<string>>>;
type ParamsOf<P extends Params> = { readonly [K in keyof P]: string };

interface RouteSpec<P extends Params, B extends z.ZodType, Q extends z.ZodType> {
  readonly method: Route['method'];
  readonly path: string;
  readonly name: string;
  readonly does: string;
  readonly params?: P;
  readonly query?: Q & z.ZodObject;
  readonly body?: { readonly name: string; readonly schema: B };
  readonly answer: AnswerForm;
  readonly refusals?: readonly number[];
  readonly versioned?: boolean;
  readonly handle: (call: Call<P, B, Q>) => Promise<Answer> | Answer;
}

export interface Call<P extends Params, B extends z.ZodType, Q extends z.ZodType> {
  readonly params: ParamsOf<P>;
  readonly query: z.output<Q>;
  readonly body: z.output<B>;
  readonly ifMatch: string | undefined;
}

/** A route whose handler sees only what its schemas let through. A missing body counts as an empty object. */
export function route<
  P extends Params = Record<string, never>,
  B extends z.ZodType = z.ZodUndefined,
  Q extends z.ZodType = z.ZodUndefined,
>(spec: RouteSpec<P, B, Q>): Route {
  const params = z.object(spec.params ?? {});
  return {
    ...spec,
    params: spec.params ?? {},
    query: spec.query ?? null,
    body: spec.body ?? null,
    refusals: spec.refusals ?? [],
    versioned: spec.versioned ?? false,
    handle: (raw) =>
      spec.handle({
        params: readAs(params, raw.params, 'the address') as ParamsOf<P>,
        query: (spec.query === undefined
          ? undefined
          : readAs(spec.query, raw.query, 'the address')) as z.output<Q>,
        body: (spec.body === undefined
          ? undefined
          : readAs(spec.body.schema, raw.body ?? {}, 'the body')) as z.output<B>,
        ifMatch: raw.ifMatch,
      }),
  };
}

export const json = (body: unknown): Answer => ({ kind: 'json', body });

/** The id of something that the user has settled, in an address. */
export const settledId = z
  .string()
  .regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, digits, "_" and "-", at most 64 of them');
