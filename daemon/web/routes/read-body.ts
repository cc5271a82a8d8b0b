import type { IncomingMessage } from 'node:http';
import { webWords } from '../../../shared/words/web.ts';
import { Trouble } from '../problem.ts';

const BODY_LIMIT_KIB = 64;
const BODY_LIMIT_BYTES = BODY_LIMIT_KIB * 1024;

/**
 * The JSON value in a request's body; undefined where there is no body. Throws a `Trouble`: 415 for any other type
 * (a page from elsewhere can send some of those unasked), 413 as soon as it is known to be too large, 400.
 */
export async function readJson(request: IncomingMessage): Promise<unknown> {
  const { headers } = request;
  const said = Number(headers['content-length'] ?? 0);
  if (headers['transfer-encoding'] === undefined && said === 0) return undefined;
  if (!isJson(headers['content-type'] ?? '') || (headers['content-encoding'] ?? 'identity') !== 'identity')
    throw new Trouble(415, webWords.notJsonType);
  if (said > BODY_LIMIT_BYTES) throw new Trouble(413, webWords.tooLarge(BODY_LIMIT_KIB));
  return parsed(await wholeBody(request));
}

/** `application/json`, with no charset or with UTF-8, the only one that JSON has (RFC 8259, section 8.1). */
const isJson = (contentType: string): boolean =>
  /^application\/json\s*(;\s*charset\s*=\s*"?utf-?8"?\s*)?$/i.test(contentType.trim());

/** Reads no further than the limit; what comes after it is left to the connection's end. */
function wholeBody(request: IncomingMessage): Promise<Buffer> {
  return new Promise((read, failed) => {
    const parts: Buffer[] = [];
    let bytes = 0;
    request.on('data', (part: Buffer) => {
      bytes += part.length;
      if (bytes <= BODY_LIMIT_BYTES) parts.push(part);
      else {
        request.removeAllListeners('data').pause();
        failed(new Trouble(413, webWords.tooLarge(BODY_LIMIT_KIB)));
      }
    });
    request.once('end', () => read(Buffer.concat(parts)));
    request.once('error', () => failed(new Trouble(400, webWords.brokenRequest)));
    request.once('close', () => failed(new Trouble(400, webWords.brokenRequest)));
  });
}

function parsed(body: Buffer): unknown {
  if (body.length === 0) return undefined;
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body));
  } catch (error) {
    throw new Trouble(400, webWords.notJson(error instanceof Error ? error.message.slice(0, 120) : ''));
  }
}
