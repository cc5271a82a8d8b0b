import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Route } from '../../../daemon/web/routes/route.ts';
import { routeTable } from '../../../daemon/web/routes/table.ts';
import { problemSchema } from '../../../shared/messages/command.ts';
import { EPOCH, fakeDesk } from './support/fake-desk.ts';
import { found, summary } from './support/record-samples.ts';
import { alarm, good, scheduleDraft } from './support/requests.ts';
import { type Running, running } from './support/running.ts';
import { iron, probe, schedule } from './support/samples.ts';

const routes: readonly Route[] = routeTable(fakeDesk(), {
  version: '0',
  epoch: EPOCH,
  uptimeMs: () => 0,
  streamClients: () => 0,
  description: () => null,
});

let it_: Running;
beforeAll(async () => {
  it_ = await running();
});
afterAll(() => it_.web.close());

const ask = (path: string, method = 'GET', body?: unknown, headers: Record<string, string> = {}) =>
  fetch(it_.url + path, {
    method,
    headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
    ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  });

async function problem(answer: Response): Promise<{ status: number; message: string; where: string }> {
  return { status: answer.status, ...problemSchema.parse(await answer.json()).error };
}

describe('every route', () => {
  it.each(routes.map((route) => [route.name, route] as const))(
    '%s answers as it says',
    async (name, route) => {
      const request = good[name];
      if (request === undefined) throw new Error(`no request for ${name}`);
      const answer = await ask(request.path, route.method.toUpperCase(), request.body);
      if (route.answer.kind === 'json') {
        expect(answer.status).toBe(200);
        route.answer.schema.parse(await answer.json());
      } else
        expect(answer.status).toBe({ done: 204, upgrade: 426, csv: 200, 'any-json': 200 }[route.answer.kind]);
      expect(answer.headers.get('cache-control')).toBe('no-store');
      expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
      expect(answer.headers.get('x-powered-by')).toBeNull();
    },
  );

  it.each(routes.filter((route) => route.body !== null).map((route) => [route.name, route] as const))(
    '%s refuses what is not as it says, naming it',
    async (name, route) => {
      const request = good[name];
      const answer = await problem(
        await ask(request?.path ?? '', route.method.toUpperCase(), {
          ...(request?.body as object | undefined),
          extra: 1,
        }),
      );
      expect(answer.status).toBe(400);
      expect(answer.message).toContain('"extra"');
    },
  );

  it.each(routes.map((route) => [route.name, route] as const))(
    '%s takes no other method',
    async (name, route) => {
      const path = good[name]?.path ?? '';
      const answer = await ask(path, 'DELETE');
      expect(answer.status).toBe(405);
      const allowed = (answer.headers.get('allow') ?? '').split(', ');
      expect(allowed).toContain(route.method.toUpperCase());
      expect((await problem(answer)).message).toContain(allowed.join(', '));
    },
  );
});

describe('commands', () => {
  it('reach the desk as they were meant, under the id that the client gave', async () => {
    await ask('/api/alarms/silence', 'POST', { ...alarm, commandId: 'mine', forS: 12.5 });
    expect(it_.desk.calls.at(-1)).toEqual([
      'silence',
      iron.id,
      { kind: 'over-limit', probe: probe.id },
      12_500,
      'mine',
    ]);
    await ask('/api/alarms/acknowledge', 'POST', { iron: iron.id, kind: 'not-recording', commandId: 'm2' });
    expect(it_.desk.calls.at(-1)).toEqual([
      'acknowledge',
      iron.id,
      { kind: 'not-recording', probe: null },
      'm2',
    ]);
    await ask(`/api/sessions/${summary.id}/marks`, 'POST', {
      commandId: 'm3',
      mark: { kind: 'note', text: ' a ' },
    });
    expect(it_.desk.calls.at(-1)).toEqual(['mark', summary.id, { kind: 'note', text: 'a' }, 'm3']);
  });

  it('get an id at the door where they have none', async () => {
    const answer = (await (await ask('/api/sessions', 'POST', { iron: iron.id })).json()) as {
      commandId: string;
    };
    expect(answer.commandId).toMatch(/^[0-9a-f-]{14}7[0-9a-f]{3}-/);
    expect(it_.desk.calls.at(-1)).toEqual(['start', iron.id, answer.commandId]);
  });

  it('may come without a body where nothing is needed', async () => {
    const answer = await fetch(`${it_.url}/api/sessions/${summary.id}/stop`, { method: 'POST' });
    expect(answer.status).toBe(200);
  });

  it('are refused with the sentence of the desk', async () => {
    expect(await problem(await ask('/api/sessions', 'POST', { iron: 'other' }))).toEqual({
      status: 404,
      message: 'There is no iron "other".',
      where: 'iron',
    });
    expect((await problem(await ask('/api/source', 'POST', { kind: 'serial', path: 'x' }))).status).toBe(409);
    const put = await ask(`/api/irons/${iron.id}`, 'PUT', { name: 'B', probes: ['a/1'], scheduleId: 'none' });
    expect(await problem(put)).toMatchObject({ status: 422, where: 'scheduleId' });
  });
});

describe('bodies', () => {
  it('must be JSON, sent as JSON', async () => {
    const broken = await problem(await ask('/api/sessions', 'POST', '{"iron": '));
    expect(broken).toMatchObject({ status: 400, where: '' });
    expect(broken.message).toContain('not JSON');
    const asText = await ask('/api/sessions', 'POST', '{"iron":"small"}', { 'content-type': 'text/plain' });
    expect((await problem(asText)).status).toBe(415);
    const zipped = await ask('/api/sessions', 'POST', '{}', { 'content-encoding': 'gzip' });
    expect((await problem(zipped)).status).toBe(415);
    const latin = await ask('/api/sessions', 'POST', '{}', {
      'content-type': 'application/json; charset=latin1',
    });
    expect((await problem(latin)).status).toBe(415);
  });

  it.each(['5', 'null', '"x"', '[]', 'true'])('that are %s are told from an object', async (body) => {
    const answer = await problem(await ask('/api/sessions', 'POST', body));
    expect(answer.status).toBe(400);
    expect(answer.message).toMatch(/must be an object|"iron" is missing/);
  });

  it('take 64 KiB', async () => {
    const answer = await problem(await ask('/api/sessions', 'POST', { iron: 'x'.repeat(65_536) }));
    expect(answer).toMatchObject({ status: 413 });
    expect(answer.message).toContain('64 KiB');
  });
});

describe('addresses', () => {
  it('that are none of ours say so', async () => {
    const answer = await problem(await ask('/api/nothing?x=1'));
    expect(answer).toMatchObject({ status: 404 });
    expect(answer.message).toContain('/api/nothing');
    expect((await problem(await ask('/api'))).status).toBe(404);
    expect((await problem(await ask('/elsewhere'))).status).toBe(404);
  });

  it('must be readable, and name what there is', async () => {
    expect((await problem(await ask('/api/irons/%zz'))).message).toContain('hexadecimal');
    expect(await problem(await ask('/api/irons/a%20b'))).toMatchObject({ status: 400, where: 'id' });
    expect(await problem(await ask('/api/irons/none'))).toMatchObject({ status: 404, where: 'id' });
    expect((await problem(await ask('/api/sessions/none/findings'))).message).toContain('"none"');
    expect((await problem(await ask('/api/sessions/none/readings.csv'))).status).toBe(404);
    expect((await problem(await ask('/api/probes/dev%2Fnone'))).status).toBe(404);
  });
});

describe('heat schedules', () => {
  it('carry their version, and change only on top of the one that was seen', async () => {
    const { desk, web, url } = await running();
    const put = (body: unknown, headers = {}) =>
      fetch(`${url}/api/schedules/${schedule.id}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json', ...headers },
        body: JSON.stringify(body),
      });
    const got = await fetch(`${url}/api/schedules/${schedule.id}`);
    expect(got.headers.get('etag')).toBe('"3"');
    const first = await put(scheduleDraft, { 'if-match': '"3"' });
    expect([first.status, first.headers.get('etag')]).toEqual([200, '"4"']);
    const late = await problem(await put(scheduleDraft, { 'if-match': '"3"' }));
    expect(late).toMatchObject({ status: 409, where: 'basedOn' });
    expect(late.message).toContain('newest version is 4');
    expect((await put({ ...scheduleDraft, basedOn: 4 })).status).toBe(200);
    expect(await problem(await put(scheduleDraft))).toMatchObject({ status: 428, where: 'basedOn' });
    expect(await problem(await put(scheduleDraft, { 'if-match': '*' }))).toMatchObject({ status: 400 });
    expect(await problem(await put({ ...scheduleDraft, basedOn: 4 }, { 'if-match': '"5"' }))).toMatchObject({
      status: 400,
    });
    expect(desk.settings.schedules()[0]?.version).toBe(5);
    await web.close();
  });
});

describe('sessions', () => {
  it('tell every time by the wall clock and in ms of the session', async () => {
    const list = (await (await ask(`/api/sessions/${summary.id}/findings`)).json()) as {
      findings: { at: unknown; kind: string; alarm?: { raised: unknown } }[];
    };
    expect(list.findings.length).toBe(found.length);
    // The watch's clock began at 09:00:00 and the session 10 s later; the alarm is found at 30 s of that clock.
    const alarmed = list.findings.find((finding) => finding.kind === 'alarm');
    expect(alarmed?.at).toEqual({ utc: '2026-03-01T09:00:30.000+00:00', sessionMs: 20_000 });
    expect(alarmed?.alarm?.raised).toEqual({ utc: '2026-03-01T09:00:09.000+00:00', sessionMs: -1000 });
  });

  it('stream their readings, named as a file', async () => {
    const answer = await ask(`/api/sessions/${summary.id}/readings.csv`);
    expect(answer.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(answer.headers.get('content-disposition')).toBe(
      `attachment; filename="session-${summary.id}.csv"`,
    );
    expect(await answer.text()).toBe('utc,plateC\n2026-03-01T09:00:10.000Z,36\n');
    const head = await ask(`/api/sessions/${summary.id}/readings.csv`, 'HEAD');
    expect([head.status, await head.text()]).toEqual([200, '']);
  });
});
