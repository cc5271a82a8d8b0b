import { randomFillSync } from 'node:crypto';
import { once } from 'node:events';
import { connect } from 'node:net';
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, it } from 'vitest';
import { rawStream } from '../unit/web/support/raw.ts';
import { eventually, type Running, running, streamClients, TestClient } from '../unit/web/support/running.ts';

let it_: Running;
let good: TestClient;
beforeAll(async () => {
  it_ = await running();
  good = new TestClient(it_.web);
  await good.until((all) => all.length === 1);
});
afterAll(async () => {
  await good.end();
  await it_.web.close();
});

/** A client frame (RFC 6455, section 5.2), masked with zeros: the payload stands as it is. */
function frame(first: number, payload: Buffer, lengthSaid = payload.length): Buffer {
  const head =
    lengthSaid < 126
      ? Buffer.from([first, 0x80 | lengthSaid])
      : Buffer.concat([Buffer.from([first, 0xff]), bigEndian(lengthSaid)]);
  return Buffer.concat([head, Buffer.alloc(4), payload]);
}

function bigEndian(n: number): Buffer {
  const bytes = Buffer.alloc(8);
  bytes.writeBigUInt64BE(BigInt(n));
  return bytes;
}

/** The program is unharmed: the one good client hears the next mark. */
async function allIsWell(): Promise<void> {
  const text = `all is well ${good.messages.length}`;
  it_.desk.change({ kind: 'mark', iron: 'small', mark: { kind: 'note', text } });
  await good.until((all) =>
    all.some(
      (message) => message.kind === 'mark' && message.mark.kind === 'note' && message.mark.text === text,
    ),
  );
}

/** Sends bytes over a connection to the stream; resolves when the far end has closed it. */
async function sent(...parts: readonly Buffer[]): Promise<void> {
  const socket = await rawStream(it_.web.port);
  socket.resume();
  for (const part of parts) socket.write(part);
  if (!socket.closed) await once(socket, 'close');
}

describe('frames that are not as they should be', () => {
  it.each<[string, Buffer[]]>([
    ['are text', [frame(0x81, Buffer.from('{}'))]],
    ['are binary', [frame(0x82, Buffer.alloc(16))]],
    ['carry no mask', [Buffer.from([0x81, 0x02, 0x7b, 0x7d])]],
    ['set reserved bits', [frame(0xf1, Buffer.alloc(4))]],
    ['have no known kind', [frame(0x87, Buffer.alloc(4))]],
    ['claim more than they may carry', [frame(0x82, Buffer.alloc(16), 2048)]],
    ['claim more than anything can carry', [frame(0x82, Buffer.alloc(16), 2 ** 53)]],
    ['are pings that are too long', [frame(0x89, Buffer.alloc(126), 126)]],
    [
      'come in too many parts',
      [frame(0x01, Buffer.alloc(1)), ...Array.from({ length: 50 }, () => frame(0, Buffer.alloc(1)))],
    ],
    ['are pings without end', Array.from({ length: 200 }, () => frame(0x89, Buffer.alloc(4)))],
    ['are pongs without end', Array.from({ length: 200 }, () => frame(0x8a, Buffer.from('x')))],
  ])('that %s: the client is let go', async (_what, parts) => {
    await sent(...parts);
    await eventually(() => it_.desk.listeners === 1);
    await allIsWell();
    while ((await streamClients(it_)) > 1);
  });

  it('that are any bytes at all harm nobody', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ minLength: 1, maxLength: 300 }), async (bytes) => {
        const socket = await rawStream(it_.web.port);
        socket.resume();
        socket.end(bytes);
        if (!socket.closed) await once(socket, 'close');
      }),
      { numRuns: 150 },
    );
    await allIsWell();
    while ((await streamClients(it_)) > 1);
  });
});

describe('bytes that are not HTTP', () => {
  it('harm nobody', async () => {
    for (let i = 0; i < 30; i += 1) {
      const socket = connect(it_.web.port, '127.0.0.1');
      socket.on('error', () => {});
      socket.resume();
      socket.end(i % 2 === 0 ? randomFillSync(Buffer.alloc(500)) : `GET ${'x'.repeat(i * 2000)}\r\n\r\n`);
      if (!socket.closed) await once(socket, 'close');
    }
    await allIsWell();
  });
});
