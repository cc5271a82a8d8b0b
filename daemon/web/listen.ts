import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { webWords } from '../../shared/words/web.ts';

export interface Listen {
  readonly host: string;
  readonly port: number;
}

/** Why the program can't listen where it was told to; the message is a sentence for the user. */
export class ListenFailure extends Error {
  readonly failure: 'in-use' | 'not-permitted' | 'no-such-address' | 'other';

  constructor(failure: ListenFailure['failure'], message: string) {
    super(message);
    this.name = 'ListenFailure';
    this.failure = failure;
  }
}

/** Listens, and says where. Rejects with `ListenFailure`. */
export function listenOn(server: Server, { host, port }: Listen): Promise<AddressInfo> {
  return new Promise((listening, failed) => {
    const refused = (error: NodeJS.ErrnoException): void => failed(listenFailure(error, host, port));
    server.once('error', refused);
    server.listen(port, host.replaceAll(/[[\]]/g, ''), () => {
      server.off('error', refused);
      const bound = server.address();
      if (bound === null || typeof bound === 'string') failed(new TypeError('the server has no port'));
      else listening(bound);
    });
  });
}

const failures: Readonly<Record<string, ListenFailure['failure']>> = {
  EADDRINUSE: 'in-use',
  EACCES: 'not-permitted',
  EADDRNOTAVAIL: 'no-such-address',
  ENOTFOUND: 'no-such-address',
  EAI_AGAIN: 'no-such-address',
};

function listenFailure(error: NodeJS.ErrnoException, host: string, port: number): ListenFailure {
  const failure = failures[error.code ?? ''] ?? 'other';
  const words = {
    'in-use': webWords.inUse(host, port),
    'not-permitted': webWords.notPermitted(host, port),
    'no-such-address': webWords.noSuchHost(host),
    other: webWords.cannotListen(host, port, error.message),
  };
  return new ListenFailure(failure, words[failure]);
}
