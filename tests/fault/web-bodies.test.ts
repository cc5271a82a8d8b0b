import { connect } from 'node:net';
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problemSchema } from '../../shared/messages/command.ts';
import { summary } from '../unit/web/support/record-samples.ts';
import { eventually, type Running, running } from '../unit/web/support/running.ts';
import { iron } from '../unit/web/support/samples.ts';

let it_: Running;
beforeAll(async () => {
  it_ = await running();
});
afterAll(() => it_.web.close());

const head = (said: string): string =>
  `POST /api/sessions HTTP/1.1\r\nHost: 127.0.0.1:${it_.web.port}\r\nContent-Type: application/json\r\n${said}\r\n\r\n`;

/** Sends a head, then a part again and again until there is an answer; both as the far end takes them. */
async function poured(said: string, part: string, most: number): Promise<{ answer: string; parts: number }> {
  const socket = connect(it_.web.port, '127.0.0.1');
  const answer: string[] = [];
  const over = (): boolean => answer.length > 0 || socket.destroyed;
  socket.on('error', () => {});
  socket.on('data', (data) => answer.push(String(data)));
  socket.write(head(said));
  let parts = 0;
  for (; parts < most && !over(); parts += 1) {
    socket.write(part);
    await new Promise((next) => setImmediate(next));
  }
  await eventually(over);
  socket.destroy();
  return { answer: answer.join(''), parts };
}

describe('bodies that are huge', () => {
  it('by their own word are refused before they come', async () => {
    const { answer } = await poured('Content-Length: 100000000', '{', 1);
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(answer.toLowerCase()).toContain('connection: close');
    expect(answer).toContain('at most 64 KiB');
  });

  it('without a word are refused while they come', async () => {
    const chunk = `4000\r\n${'x'.repeat(0x4000)}\r\n`;
    const { answer, parts } = await poured('Transfer-Encoding: chunked', chunk, 5000);
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    expect(parts).toBeLessThan(5000);
  });

  it('and half sent leave nothing behind', async () => {
    const socket = connect(it_.web.port, '127.0.0.1');
    socket.write(`${head('Content-Length: 100')}{"iron":`);
    await new Promise((next) => setImmediate(next));
    socket.destroy();
    expect((await fetch(`${it_.url}/api/health`)).status).toBe(200);
  });
});

describe('bodies and addresses of any kind', () => {
  const paths = [
    ['POST', '/api/sessions'],
    ['POST', `/api/sessions/${summary.id}/stop`],
    ['POST', `/api/sessions/${summary.id}/marks`],
    ['POST', '/api/alarms/acknowledge'],
    ['POST', '/api/alarms/silence'],
    ['POST', '/api/source'],
    ['PUT', '/api/schedules/trial'],
    ['PUT', `/api/irons/${iron.id}`],
    ['PUT', '/api/probes/dev%2F1'],
  ] as const;

  it('are taken or refused as a problem, and never fail the program', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...paths),
        fc.oneof(fc.json(), fc.string(), fc.constantFrom('{"__proto__":{"x":1}}', '{"iron":{"toString":1}}')),
        async ([method, path], body) => {
          const answer = await fetch(it_.url + path, {
            method,
            body,
            headers: { 'content-type': 'application/json' },
          });
          expect(answer.status).toBeLessThan(500);
          if (answer.status >= 400) problemSchema.parse(await answer.json());
          else await answer.arrayBuffer();
        },
      ),
      { numRuns: 300 },
    );
  });

  it('hold for addresses too', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ maxLength: 60 }),
        fc.constantFrom('sessions', 'irons', 'probes'),
        async (id, of) => {
          const answer = await fetch(`${it_.url}/api/${of}/${encodeURIComponent(id)}`);
          expect(answer.status).toBeLessThan(500);
          if (answer.status >= 400) problemSchema.parse(await answer.json());
        },
      ),
      { numRuns: 200 },
    );
  });
});
