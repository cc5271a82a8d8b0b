/** What the web side says when it can't do what was asked: what was wrong, and what would be right. */
export const webWords = {
  noSuchAddress: (path: string) =>
    `There is nothing at ${path}. /api/openapi.json lists every address of this program.`,
  wrongMethod: (method: string, path: string, allowed: string) =>
    `${path} does not take ${method}; it takes ${allowed}.`,
  notJson: (detail: string) => `The body is not JSON (${detail}). Send one JSON object.`,
  notJsonType: 'The body must be sent with "Content-Type: application/json", as UTF-8, uncompressed.',
  tooLarge: (limitKiB: number) => `The body is too large; at most ${limitKiB} KiB are taken.`,
  badAddress: 'The address can\'t be read: a "%" in it must be followed by two hexadecimal digits.',
  brokenRequest: 'The request broke off or is malformed. Send it again.',
  failed: 'The program failed at this; its log has the details. What is being watched goes on.',
  noSuch: (what: string, id: string, list: string) =>
    `There is no ${what} "${id}". ${list} lists those there are.`,

  viewOnly:
    'This program listens beyond its own machine, so it can be looked at but not commanded. Command it from a start that listens on 127.0.0.1 only.',
  wrongHost: (host: string, instead: string) =>
    `The program does not answer to the name "${host}". Open ${instead} instead.`,
  noHost: (instead: string) => `The request has no readable Host header. Open ${instead}.`,
  wrongOrigin: (origin: string) =>
    `A page from "${origin}" may not talk to this program; only its own page, at the address it was opened with, may.`,

  versionMissing:
    'A heat schedule is changed on top of the version that you saw: give it as "basedOn" in the body or as If-Match; 0 for a new schedule.',
  versionUnreadable: 'If-Match must be one version number in quotes, for example "3".',
  versionsDiffer: (basedOn: number, ifMatch: number) =>
    `"basedOn" says version ${basedOn} and If-Match says ${ifMatch}; give one of them, or both alike.`,

  streamOnly: '/stream is a WebSocket: connect with one (ws://), not with a plain request.',
  streamFull: (most: number) =>
    `${most} pages and programs are connected already, which is the most. Close one and try again.`,
  /** The reason of a WebSocket close: 123 bytes at most. */
  streamTakesOnly: 'The stream takes only {"kind":"sound","armed":true} or false; commands go to /api.',
  closing: 'The program is being stopped.',

  pageNotBuilt: 'The page is not built yet. "npm start" builds it; the API under /api works meanwhile.',

  inUse: (host: string, port: number) =>
    `Port ${port} on ${host} is in use already, perhaps by another start of this program. Stop that one, or choose another port with --listen HOST:PORT.`,
  notPermitted: (host: string, port: number) =>
    `Listening on port ${port} of ${host} is not permitted. Ports below 1024 are kept for the system: choose a higher one with --listen HOST:PORT.`,
  noSuchHost: (host: string) =>
    `This machine has no address "${host}" to listen on. Use 127.0.0.1, or one of its own addresses, with --listen HOST:PORT.`,
  cannotListen: (host: string, port: number, detail: string) =>
    `The program can't listen on ${host}, port ${port}: ${detail}.`,
} as const;
