import { request } from 'node:http';
import { connect, type Socket } from 'node:net';

/** A bare TCP connection to the stream, after its handshake. What the far end says is not read from then on. */
export async function rawStream(port: number): Promise<Socket> {
  const socket = connect(port, '127.0.0.1');
  socket.on('error', () => {});
  socket.write(
    [
      'GET /stream HTTP/1.1',
      `Host: 127.0.0.1:${port}`,
      'Upgrade: websocket',
      'Connection: Upgrade',
      'Sec-WebSocket-Version: 13',
      // The key of the example in RFC 6455, section 1.2.
      'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==',
      '',
      '',
    ].join('\r\n'),
  );
  const head = await new Promise<string>((answered) => {
    socket.once('data', (data: Buffer) => answered(data.toString('latin1')));
  });
  if (!head.startsWith('HTTP/1.1 101')) throw new Error(`not let in: ${head}`);
  socket.pause();
  return socket;
}

export interface RawAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** An HTTP request whose Host and Origin can be chosen, which fetch does not allow. */
export const rawRequest = (
  port: number,
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
): Promise<RawAnswer> =>
  new Promise((answered, failed) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers }, (answer) => {
      let text = '';
      answer.on('data', (chunk) => (text += String(chunk)));
      answer.on('end', () => answered({ status: answer.statusCode ?? 0, headers: answer.headers, text }));
    });
    asked.on('error', failed);
    asked.end();
  });
