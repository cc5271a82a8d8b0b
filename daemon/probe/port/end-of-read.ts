import { read as fsRead } from 'node:fs';
import { promisify } from 'node:util';

const readBytes = promisify(fsRead);

/** What the serial library's own binding has on Linux and macOS, as far as it is used here. */
interface UnixBinding {
  readonly fd: number | null;
  readonly poller: { once(event: 'readable', told: (error: Error | null) => void): unknown };
  read(buffer: Buffer, offset: number, length: number): Promise<{ bytesRead: number; buffer: Buffer }>;
}

const tryAgain: ReadonlySet<unknown> = new Set(['EAGAIN', 'EWOULDBLOCK', 'EINTR']);

const isUnix = (binding: object): binding is UnixBinding => 'fd' in binding && 'poller' in binding;

/**
 * Makes a read of no bytes the end of a port (github.com/serialport/bindings-cpp, issue 162 and pull request 164). A terminal whose device was pulled reads as empty for ever, and the
 * library's own read tries again at once each time: it never tells of the end and keeps a processor busy. A port that
 * is there never reads as empty, since it is opened to wait for one byte at least (VMIN 1).
 *
 * Call it before the first read. On Windows, where the library reads in another way, it does nothing.
 */
export function endOnEmptyRead(binding: object | undefined): void {
  if (binding === undefined || !isUnix(binding)) return;
  binding.read = async (buffer, offset, length) => {
    for (;;) {
      const bytesRead = await readOnce(fdOf(binding), buffer, offset, length);
      if (bytesRead === 0) throw new Error('the device hung up');
      if (bytesRead !== null) return { bytesRead, buffer };
      // It may have been closed meanwhile: waiting on the poller of a closed port ends the whole process.
      fdOf(binding);
      await readable(binding);
    }
  };
}

/** The open port's handle; a port that is closed cancels its reads, as the library wants it. */
function fdOf({ fd }: UnixBinding): number {
  if (fd === null) throw Object.assign(new Error('Port is not open'), { canceled: true });
  return fd;
}

/** Null where there is nothing to read yet. */
async function readOnce(fd: number, buffer: Buffer, offset: number, length: number): Promise<number | null> {
  try {
    return (await readBytes(fd, buffer, offset, length, null)).bytesRead;
  } catch (error) {
    if (tryAgain.has((error as NodeJS.ErrnoException).code)) return null;
    throw error;
  }
}

const readable = (binding: UnixBinding): Promise<void> =>
  new Promise((resolve, reject) => {
    binding.poller.once('readable', (error) => (error === null ? resolve() : reject(error)));
  });
