import type { IncomingHttpHeaders } from 'node:http';
import { webWords } from '../../../shared/words/web.ts';
import { bareName, type Host, isAddress, isEveryAddress, isLoopback, readHost } from './host.ts';

/** Who may talk to the program. */
export interface AccessRules {
  /** The sentence that says why a request is turned away, or null. */
  refusal(headers: IncomingHttpHeaders): string | null;
  /** Where the program listens beyond its own machine, it may be looked at but not commanded. */
  readonly viewOnly: boolean;
}

/**
 * A page from elsewhere can point a name of its own at this machine (DNS rebinding), so the Host must be a name that
 * is known to be ours; an address can't be pointed anywhere. Such a page can also send requests and open sockets
 * across origins, so an Origin, where there is one, must be the Host's own.
 *
 * `listenHost`: as the user asked for it. `machineName`: this machine's own. `instead`: the address to open.
 */
export function accessRules(listenHost: string, machineName: string, instead: string): AccessRules {
  const ours = ownNames(listenHost, machineName);
  const anyAddress = isEveryAddress(listenHost);
  return {
    viewOnly: !isLoopback(listenHost),
    refusal(headers) {
      const host = readHost(headers.host ?? '');
      if (host === null) return webWords.noHost(instead);
      if (!ours.has(host.name) && !(anyAddress && isAddress(host.name)))
        return webWords.wrongHost(host.written.slice(0, 100), instead);
      const { origin } = headers;
      return origin === undefined || isOwnOrigin(origin, headers.host ?? '')
        ? null
        : webWords.wrongOrigin(origin.slice(0, 100));
    },
  };
}

function ownNames(listenHost: string, machineName: string): ReadonlySet<string> {
  const names = ['localhost', '127.0.0.1', '::1'];
  const machine = bareName(machineName);
  const short = machine.split('.')[0] ?? machine;
  if (isEveryAddress(listenHost)) names.push(machine, short, `${short}.local`);
  else names.push(bareName(listenHost));
  return new Set(names.filter((name) => name !== ''));
}

function isOwnOrigin(origin: string, hostHeader: string): boolean {
  const scheme = /^(https?:)\/\/(.+)$/i.exec(origin);
  if (scheme === null) return false;
  const protocol = scheme[1]?.toLowerCase() === 'https:' ? 'https:' : 'http:';
  const own: Host | null = readHost(hostHeader, protocol);
  return own !== null && readHost(scheme[2] ?? '', protocol)?.written === own.written;
}
