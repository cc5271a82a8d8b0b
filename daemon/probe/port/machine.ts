import { stat } from 'node:fs/promises';

/** One port as the serial library lists it on systems other than Linux. */
export interface ListedPort {
  readonly path: string;
  readonly manufacturer?: string | undefined;
  readonly serialNumber?: string | undefined;
  readonly locationId?: string | undefined;
  readonly vendorId?: string | undefined;
  readonly productId?: string | undefined;
}

/** The system's places that ports are looked for in; tests give their own. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  /** Where device nodes are. */
  readonly dev: string;
  /** Where Linux tells about devices. */
  readonly sys: string;
  /** Where the system keeps its groups. */
  readonly groups: string;
  list(): Promise<readonly ListedPort[]>;
}

/** Linux is asked through its own files: they are there without udev's tools, and ask for no child process. */
export const thisMachine: Machine = {
  platform: process.platform,
  dev: '/dev',
  sys: '/sys',
  groups: '/etc/group',
  list: async () => {
    const { SerialPort } = await import('serialport');
    return await SerialPort.list();
  },
};

const absent: ReadonlySet<unknown> = new Set(['ENOENT', 'ENOTDIR', 'ENODEV', 'ENXIO']);

/** Whether there is a node at the path. One that can't be looked at counts: opening it says why. */
export async function isThere(path: string, platform: NodeJS.Platform): Promise<boolean> {
  // A COM port is no file: only opening it tells.
  if (platform === 'win32') return true;
  try {
    await stat(path);
    return true;
  } catch (error) {
    return !absent.has((error as NodeJS.ErrnoException).code);
  }
}
