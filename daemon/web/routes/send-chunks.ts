import { once } from 'node:events';
import type { ServerResponse } from 'node:http';

/**
 * Sends chunks as fast as the client takes them, and asks for the next only then. A client that goes away ends the
 * asking. An error before the first chunk is thrown; later ones break the connection, since an answer that has
 * begun can't be taken back and one that merely ended would look complete.
 */
export async function sendChunks(response: ServerResponse, chunks: AsyncIterable<string>): Promise<void> {
  const gone = new AbortController();
  response.once('close', () => gone.abort());
  try {
    for await (const chunk of chunks) {
      if (gone.signal.aborted) return;
      if (!response.write(chunk)) await once(response, 'drain', { signal: gone.signal });
    }
  } catch (error) {
    if (gone.signal.aborted) return;
    if (response.headersSent) response.destroy();
    throw error;
  }
  response.end();
}
