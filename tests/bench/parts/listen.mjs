import { once } from 'node:events';
import { WebSocket } from 'ws';

/** Opens one client of a program's stream that gets `heard(data)` for each message; resolves once it is connected. */
export async function listen(address, heard) {
  const socket = new WebSocket(`${address.replace('http', 'ws')}/stream`, { perMessageDeflate: false });
  socket.on('message', heard);
  await once(socket, 'open');
  return socket;
}
