/** What the user is told about serial ports: what is wrong with one, what tells them apart, and what to do. */

export const serialWords = {
  starting: 'The port is open; the board may be starting.',
  looking: (path: string) => `Looking for ${path}.`,
  unplugged: (path: string) =>
    `The device at ${path} is gone. Plug it in again: it is taken up by itself, under a new path too.`,
  broke: (path: string, reason: string) =>
    `The connection to ${path} broke off (${reason}). It is tried again by itself; check the cable and the plug.`,
  missing: (path: string) =>
    `There is no port ${path}. Plug the device in (it is taken up by itself), or start the program for another port: npm run ports lists those that there are.`,
  otherDevice: (path: string, wanted: string) =>
    `Another device is at ${path} now, not ${wanted}, so it isn’t read. Plug ${wanted} in again, or start again to watch the other one.`,
  mayReset: (path: string, reason: string) =>
    `Closing ${path} may reset the board, since its hang-up setting could not be changed (${reason}).`,
  recordingEnded: 'The recording has come to its end.',
  recordingBroke: (reason: string) => `The recording can’t be read on: ${reason}.`,
} as const;

/** Why a port can't be opened, as far as a program can tell. */
export type PortProblem = 'permission' | 'missing' | 'busy' | 'not-a-port' | 'baud' | 'other';

export interface PortTrouble {
  readonly path: string;
  /** Node's name of the platform. */
  readonly platform: string;
  /** The group whose members may use the port, where the system has one. */
  readonly group: string;
  /** The system's own words. */
  readonly reason: string;
}

const permission = ({ path, platform, group }: PortTrouble): string => {
  if (platform === 'win32')
    return `Windows refuses ${path}. Close other programs that use it, then unplug the device and plug it in again.`;
  if (platform === 'darwin')
    return `macOS refuses ${path}. See who may use it with "ls -l ${path}", and start from a user who may.`;
  return `This user may not use ${path}. Join the group "${group}" with "sudo usermod -aG ${group} $USER", then log out and in again.`;
};

const busy = ({ path, platform }: PortTrouble): string => {
  if (platform === 'win32') {
    return `${path} is in use by another program (a terminal, a board’s upload tool), or it is not there. Close the other program; it is tried again by itself.`;
  }
  const services =
    platform === 'linux' ? ', or a service that probes new ports for modems or braille displays' : '';
  return `${path} is in use by another program (a terminal, a board’s upload tool)${services}. Close it; it is tried again by itself.`;
};

/** One sentence or two for each problem: what is wrong with the port and what to do. */
export const portTroubleWords: Readonly<Record<PortProblem, (trouble: PortTrouble) => string>> = {
  permission,
  busy,
  missing: ({ path }) => serialWords.missing(path),
  'not-a-port': ({ path }) => `${path} is not a serial port. List the ports to see which there are.`,
  baud: ({ path, reason }) =>
    `${path} does not take this baud rate (${reason}). Use the rate that the board’s program sets, often 115200.`,
  other: ({ path, reason }) => `${path} could not be opened: ${reason}. It is tried again by itself.`,
};

/** On macOS each device has two paths, and the one that comes up first in listings waits for a modem’s carrier. */
export function pathAdvice(path: string, platform: string): string {
  if (platform !== 'darwin' || !path.startsWith('/dev/tty.')) return '';
  return `On macOS use ${path.replace('/dev/tty.', '/dev/cu.')}: the tty. path waits for a modem’s carrier.`;
}

/** What tells one port from another. Empty where it is not known. */
export interface PortFacts {
  readonly path: string;
  readonly manufacturer: string;
  readonly product: string;
  readonly serialNumber: string;
  readonly vendorId: string;
  readonly productId: string;
  /** A path that stays the same under another number, as Linux has it. */
  readonly byId: string;
  /** Where it is plugged in. */
  readonly physicalPort: string;
  readonly likely: boolean;
  /** What is wrong with it, as a sentence; empty where nothing is. */
  readonly problem: string;
}

/** A port in one line: its path and what it says of itself. */
export function portTitle(port: PortFacts): string {
  const name = [port.manufacturer, port.product].filter((part) => part !== '').join(' ');
  const number = port.serialNumber === '' ? '' : `serial number ${port.serialNumber}`;
  const said = [name, number].filter((part) => part !== '').join(', ');
  return said === '' ? port.path : `${port.path}: ${said}`;
}

const noPorts = 'No serial port was found. Plug the probe’s board in, with a cable that carries data.';

function portText(port: PortFacts): string {
  const usb = port.vendorId === '' ? '' : `USB id ${port.vendorId}:${port.productId}`;
  const where = port.physicalPort === '' ? '' : `plugged in at ${port.physicalPort}`;
  const details = [usb, where, port.byId, port.problem].filter((part) => part !== '');
  return [portTitle(port), ...details.map((detail) => `    ${detail}`)].join('\n');
}

/** The ports as text for a terminal, those first that are likely to be a probe’s board. */
export function portsText(ports: readonly PortFacts[]): string {
  if (ports.length === 0) return noPorts;
  const likely = ports.filter((port) => port.likely);
  const others = ports.filter((port) => !port.likely);
  const block = (title: string, some: readonly PortFacts[]): string[] =>
    some.length === 0 ? [] : [title, ...some.map(portText)];
  return [
    ...(likely.length === 0 ? [noPorts] : block('Likely a board:', likely)),
    ...block('Other ports:', others),
  ].join('\n');
}
