import { afterEach, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { problemSchema } from '../../../shared/messages/command.ts';
import { EPOCH, fakeDesk } from './support/fake-desk.ts';
import { eventually, type Running, running, TestClient } from './support/running.ts';
import { alarmLive, probeLive, situation } from './support/samples.ts';

let it_: Running;
afterEach(() => it_.web.close());

/** What a refused WebSocket was answered over HTTP. */
const refusal = (url: string, headers: Record<string, string> = {}) =>
  new Promise<{ status: number | undefined; message: string }>((refused, failed) => {
    const socket = new WebSocket(url, { headers });
    socket.on('open', () => failed(new Error('it was let in')));
    socket.on('error', () => {});
    socket.on('unexpected-response', (_request, answer) => {
      let text = '';
      answer.on('data', (chunk) => (text += String(chunk)));
      answer.on('end', () =>
        refused({
          status: answer.statusCode,
          message: problemSchema.parse(JSON.parse(text)).error.message,
        }),
      );
    });
  });

describe('/stream', () => {
  it('begins with how things stand and goes on with every change', async () => {
    it_ = await running();
    it_.desk.change({ kind: 'readings', probes: [probeLive(120)] });
    const client = new TestClient(it_.web);
    await client.until((all) => all.length === 1);
    it_.desk.change({ kind: 'alarm', change: 'raised', alarm: alarmLive() });
    it_.desk.change({ kind: 'mark', iron: 'small', mark: { kind: 'place', place: 'on-work' } });
    it_.desk.change({ kind: 'situation', situation: situation() });
    await client.until((all) => all.length >= 4);
    expect(client.kinds().slice(0, 4)).toEqual(['snapshot', 'alarm', 'mark', 'situation']);
    expect(client.messages[0]).toMatchObject({ epoch: EPOCH, seq: 1, live: it_.desk.live() ? {} : null });
    expect(client.messages.map((message) => message.seq).slice(0, 4)).toEqual([1, 2, 3, 4]);
    await client.end();
    await eventually(() => it_.desk.listeners === 1);
    const health = (await (await fetch(`${it_.url}/api/health`)).json()) as { streamClients: number };
    expect(health.streamClients).toBe(0);
  });

  it('is not compressed, whatever is offered', async () => {
    it_ = await running();
    const client = new TestClient(it_.web);
    await client.until((all) => all.length === 1);
    expect(client.socket.extensions).toBe('');
    await client.end();
  });

  it('goes on where a client left off', async () => {
    it_ = await running();
    const first = new TestClient(it_.web);
    await first.until((all) => all.length === 1);
    await first.end();
    it_.desk.change({ kind: 'mark', iron: 'small', mark: { kind: 'note', text: 'missed' } });
    const again = new TestClient(it_.web, `?epoch=${EPOCH}&after=${first.messages[0]?.seq ?? -1}`);
    await again.until((all) => all.length >= 1);
    expect(again.kinds()[0]).toBe('mark');
    await again.end();
  });

  it('takes no messages', async () => {
    it_ = await running();
    const client = new TestClient(it_.web);
    await client.until((all) => all.length === 1);
    client.socket.send('{"mark":1}');
    expect(await client.closed).toMatchObject({ code: 1008, why: expect.stringContaining('/api') });
  });

  it('refuses what can not come in, saying why', async () => {
    it_ = await running({ limits: { clients: 1 } });
    const at = `ws://127.0.0.1:${it_.web.port}`;
    expect(await refusal(`${at}/stream`, { host: 'evil.example' })).toMatchObject({ status: 403 });
    expect(await refusal(`${at}/stream`, { origin: 'http://evil.example' })).toMatchObject({ status: 403 });
    expect(await refusal(`${at}/elsewhere`)).toMatchObject({ status: 404 });
    expect((await refusal(`${at}/stream?after=-1`)).message).toContain('"after"');
    const only = new TestClient(it_.web, '', { origin: `http://127.0.0.1:${it_.web.port}` });
    await only.until((all) => all.length === 1);
    expect(await refusal(`${at}/stream`)).toMatchObject({ status: 503 });
    await only.end();
  });

  it('closes where the program can not say how things stand', async () => {
    it_ = await running(
      {},
      fakeDesk({
        live: () => {
          throw new Error('no');
        },
      }),
    );
    const client = new TestClient(it_.web);
    expect(await client.closed).toMatchObject({ code: 1011 });
  });
});
