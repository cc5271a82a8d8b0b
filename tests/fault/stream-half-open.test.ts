import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';
import { expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { ManualTimers } from '../unit/web/support/manual-timers.ts';
import { running, streamClients, TestClient } from '../unit/web/support/running.ts';

/** A way in that can go dead: both ends stay open, nothing passes any more, as when a tablet leaves the room. */
async function deadableWay(to: number) {
  const pairs: Socket[][] = [];
  const server = createServer((near) => {
    const far = connect(to, '127.0.0.1');
    near.pipe(far).pipe(near);
    for (const socket of [near, far]) socket.on('error', () => {});
    pairs.push([near, far]);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    port: (server.address() as AddressInfo).port,
    goDead() {
      for (const socket of pairs.flat()) socket.unpipe().pause();
    },
    close() {
      for (const socket of pairs.flat()) socket.destroy();
      server.close();
    },
  };
}

it('a peer that is gone without a word is noticed within 10 s, and the others stay', async () => {
  const timers = new ManualTimers();
  const it_ = await running({ timers });
  const way = await deadableWay(it_.web.port);
  const stays = new TestClient(it_.web);
  const gone = new WebSocket(`ws://127.0.0.1:${way.port}/stream`);
  await Promise.all([stays.until((all) => all.length === 1), once(gone, 'open')]);
  expect(await streamClients(it_)).toBe(2);
  way.goDead();
  for (let ms = 0; ms < 10_000; ms += 250) {
    timers.advance(250);
    // A round trip over the same server: answers to pings that were on their way have come in.
    await streamClients(it_);
  }
  expect(await streamClients(it_)).toBe(1);
  expect(stays.socket.readyState).toBe(WebSocket.OPEN);
  gone.terminate();
  way.close();
  await it_.web.close();
});
