import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { routeTable } from '../../../daemon/web/routes/table.ts';
import { EPOCH, fakeDesk } from './support/fake-desk.ts';
import { summary } from './support/record-samples.ts';
import { type Running, running, TestClient } from './support/running.ts';
import { alarmLive, probe, probeLive, schedule } from './support/samples.ts';
import { cement, piece } from './support/shop-samples.ts';

/** The parts of OpenAPI 3.1.0 that are used, as its specification has them (spec.openapis.org/oas/v3.1.0, section 4.8). */
const reference = z.strictObject({ $ref: z.string().regex(/^#\/components\/schemas\/[A-Za-z0-9._-]+$/) });
const schemaObject = z.union([reference, z.record(z.string(), z.unknown())]);
const content = z.record(z.string().regex(/^[a-z]+\/[a-z.+-]+$/), z.strictObject({ schema: schemaObject }));
const header = z.strictObject({ description: z.string(), schema: schemaObject });
const response = z.strictObject({
  description: z.string().min(1),
  headers: z.record(z.string(), header).optional(),
  content: content.optional(),
});
const parameter = z.strictObject({
  name: z.string(),
  in: z.enum(['query', 'header', 'path', 'cookie']),
  required: z.boolean().optional(),
  description: z.string().optional(),
  schema: schemaObject,
});
const operation = z.strictObject({
  operationId: z.string(),
  summary: z.string(),
  parameters: z.array(parameter).optional(),
  requestBody: z.strictObject({ required: z.boolean(), content }).optional(),
  responses: z.record(z.string().regex(/^[1-5]\d\d$/), response),
});
const documentSchema = z.strictObject({
  openapi: z.literal('3.1.0'),
  info: z.strictObject({ title: z.string(), version: z.string(), description: z.string() }),
  paths: z.record(
    z.string().startsWith('/'),
    z.strictObject({
      get: operation.optional(),
      put: operation.optional(),
      post: operation.optional(),
    }),
  ),
  components: z.strictObject({
    schemas: z.record(z.string().regex(/^[A-Za-z0-9._-]+$/), z.record(z.string(), z.unknown())),
  }),
});

let it_: Running;
let text: string;
let document: z.infer<typeof documentSchema>;
beforeAll(async () => {
  it_ = await running();
  it_.desk.change({ kind: 'readings', probes: [probeLive(120)] });
  it_.desk.change({ kind: 'alarm', change: 'raised', alarm: alarmLive() });
  text = await (await fetch(`${it_.url}/api/openapi.json`)).text();
  document = documentSchema.parse(JSON.parse(text));
});
afterAll(() => it_.web.close());

const operations = () =>
  Object.entries(document.paths).flatMap(([path, item]) =>
    Object.entries(item).flatMap(([method, operation]) => (operation ? [{ path, method, operation }] : [])),
  );

const checks = new Map<string, z.ZodType>();

/** A schema of the document, as a check: built from what the document says, not from what it was made of. */
function check(name: string): z.ZodType {
  const made = checks.get(name) ?? z.fromJSONSchema({ $ref: `#/$defs/${name}`, $defs: inDocument() });
  checks.set(name, made);
  return made;
}

const inDocument = (): Record<string, z.core.JSONSchema.JSONSchema> =>
  JSON.parse(JSON.stringify(document.components.schemas).replaceAll('#/components/schemas/', '#/$defs/'));

describe('the description', () => {
  it('has every address of the server, once, and no other', () => {
    const table = routeTable(fakeDesk(), {
      version: '',
      epoch: EPOCH,
      uptimeMs: () => 0,
      streamClients: () => 0,
      description: () => null,
    });
    const described = operations().map(({ path, method }) => `${method} ${path}`);
    expect(described.sort()).toEqual(table.map(({ path, method }) => `${method} ${path}`).sort());
    const names = operations().map(({ operation }) => operation.operationId);
    expect(new Set(names).size).toBe(names.length);
  });

  it('refers to nothing that it does not hold', () => {
    const referred = [...text.matchAll(/"\$ref":"([^"]+)"/g)].map((match) => match[1] ?? '');
    expect(referred.length).toBeGreaterThan(40);
    const held = Object.keys(document.components.schemas).map((name) => `#/components/schemas/${name}`);
    expect(referred.filter((one) => !held.includes(one))).toEqual([]);
    expect(text).not.toContain('"$schema"');
    expect(text).not.toContain('"$id"');
  });

  it('gives every parameter of a path, as required', () => {
    for (const { path, operation } of operations()) {
      const inPath = [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
      const given = (operation.parameters ?? []).filter((one) => one.in === 'path');
      expect(given.map((one) => one.name)).toEqual(inPath);
      expect(given.every((one) => one.required === true)).toBe(true);
    }
  });

  it('tells a body field that may be left out from an answer that is always whole', () => {
    const { Silence, Outcome } = document.components.schemas;
    expect(Silence?.['required']).toEqual(['iron', 'kind']);
    expect(Outcome?.['required']).toEqual(['commandId', 'session', 'kept']);
  });

  it('holds for what the server answers', async () => {
    let checked = 0;
    const ids: Record<string, string> = {
      sessions: summary.id,
      schedules: schedule.id,
      irons: 'small',
      devices: '%2Fdev%2FttyUSB0',
      probes: encodeURIComponent(probe.id),
      pieces: piece.id,
      cements: cement.id,
    };
    for (const { path, method, operation } of operations()) {
      const name = nameOf(operation.responses['200']);
      if (method !== 'get' || name === null) continue;
      const address = path.replace('{id}', ids[path.split('/')[2] ?? ''] ?? '');
      const answer: unknown = await (await fetch(it_.url + address)).json();
      expect(check(name).safeParse(answer), address).toMatchObject({ success: true });
      expect(check(name).safeParse({ ...(answer as object), surplus: 1 }).success).toBe(false);
      checked += 1;
    }
    expect(checked).toBe(28);
  });

  it('holds for what the server refuses, and for what the stream says', async () => {
    const refused: unknown = await (await fetch(`${it_.url}/api/nothing`)).json();
    expect(check('Problem').safeParse(refused).success).toBe(true);
    const client = new TestClient(it_.web);
    it_.desk.change({ kind: 'readings', probes: [probeLive(121)] });
    const messages = await client.until((all) => all.length >= 2);
    for (const message of messages) expect(check('StreamMessage').safeParse(message).success).toBe(true);
    await client.end();
  });
});

describe('the written description', () => {
  it('names every address', () => {
    const page = readFileSync(new URL('../../../daemon/web/API.md', import.meta.url), 'utf8');
    const missing = operations().filter(
      ({ path, method }) => !page.includes(`${method.toUpperCase()} ${path}`),
    );
    expect(missing.map(({ path, method }) => `${method} ${path}`)).toEqual([]);
  });
});

function nameOf(answer: z.infer<typeof response> | undefined): string | null {
  const schema = answer?.content?.['application/json']?.schema;
  return typeof schema?.['$ref'] === 'string' ? (schema['$ref'].split('/').at(-1) ?? null) : null;
}
