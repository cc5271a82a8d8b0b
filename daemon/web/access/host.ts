import { BlockList, isIP } from 'node:net';

/** A host as it stands in a Host header, an Origin or an option. */
export interface Host {
  /** In lower case, without brackets and without a trailing dot. */
  readonly name: string;
  /** With its port, as a browser writes it: without the port where it is the scheme's own. */
  readonly written: string;
}

/** Nothing but a name or address and a port: no user, path, space or percent sign gets through. */
const hostForm = /^(\[[0-9a-f:.]{2,45}\]|[a-z0-9._-]{1,253})(:\d{1,5})?$/i;

/** Reads a Host header; null where it isn't one. `scheme` decides which port goes without saying. */
export function readHost(text: string, scheme: 'http:' | 'https:' = 'http:'): Host | null {
  if (!hostForm.test(text) || !URL.canParse(`${scheme}//${text}`)) return null;
  const url = new URL(`${scheme}//${text}`);
  return { name: bareName(url.hostname), written: url.host };
}

/** A name or address, in the one form that comparisons use. */
export const bareName = (name: string): string =>
  name
    .toLowerCase()
    .replace(/^\[(.*)\]$/, '$1')
    .replace(/\.$/, '');

const loopback = new BlockList();
loopback.addSubnet('127.0.0.0', 8, 'ipv4');
loopback.addAddress('::1', 'ipv6');

/** True for a name or address that only this machine can reach. */
export function isLoopback(host: string): boolean {
  const name = bareName(host);
  if (name === 'localhost') return true;
  const family = isIP(name);
  return family !== 0 && loopback.check(name, family === 6 ? 'ipv6' : 'ipv4');
}

/** True for what listens on every address of the machine. */
export const isEveryAddress = (host: string): boolean => ['0.0.0.0', '::', ''].includes(bareName(host));

export const isAddress = (name: string): boolean => isIP(name) !== 0;
