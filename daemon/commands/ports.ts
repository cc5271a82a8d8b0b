import { portsText } from '../../shared/words/serial.ts';
import { describePorts } from '../probe/ports.ts';

/** The serial ports of this machine as text, with what tells them apart and what is wrong with them. */
export const listPorts = async (): Promise<string> => portsText(await describePorts());
