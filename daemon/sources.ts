import type { ChooseSource } from '../shared/messages/command.ts';
import { portTitle } from '../shared/words/serial.ts';
import { startWords } from '../shared/words/start.ts';
import type { Clock } from './clock.ts';
import { DEFAULT_BAUD, type RunCommand } from './options.ts';
import type { Machine } from './probe/port/machine.ts';
import type { SimulatedOptions } from './probe/simulated/source.ts';
import type { ProbeSource } from './probe/source.ts';
import type { Program } from './watching/program.ts';

/** Which sources a start takes into use. It never passes from a real port to the simulated iron. */
export interface SourcesSetup {
  readonly command: RunCommand;
  readonly clock: Clock;
  readonly machine: Machine;
  readonly say: (text: string) => void;
  readonly simulated: Pick<SimulatedOptions, 'traits' | 'scenario' | 'seed'>;
}

/** Takes into use what the command line names; else waits for a choice; else, with no device there, simulates. */
export async function addSources(program: Program, setup: SourcesSetup): Promise<void> {
  const { command, say, machine } = setup;
  if (command.simulate) {
    program.addSource(await makeSource({ kind: 'simulate' }, setup));
    say(startWords.simulatedAsAsked);
    return;
  }
  if (command.serial.length > 0) {
    for (const { path } of command.serial)
      program.addSource(await makeSource({ kind: 'serial', path }, setup));
    say(startWords.watching(command.serial.map((s) => s.path)));
    return;
  }
  const { probablePorts } = await import('./probe/ports.ts');
  const found = await probablePorts(machine);
  if (found.length > 0) {
    program.setChoice(
      found.map((port) => ({ path: port.path, title: portTitle(port), problem: port.problem })),
    );
    say(startWords.choose(found.map(portTitle)));
    return;
  }
  program.addSource(await makeSource({ kind: 'simulate' }, setup));
  say(startWords.simulated);
}

/** Makes the source that a choice names. What is not needed is not loaded: a start is quick. */
export async function makeSource(
  choice: ChooseSource,
  setup: Omit<SourcesSetup, 'say'>,
): Promise<ProbeSource> {
  const { command, clock, machine, simulated } = setup;
  if (choice.kind === 'simulate') {
    const { simulatedSource } = await import('./probe/simulated/source.ts');
    const { bigIron, padIron, withEmf } = await import('./probe/simulated/irons.ts');
    const iron = simulated.traits ?? (command.simulatedPad ? padIron : bigIron);
    const traits = command.thermocouple === null ? iron : withEmf(iron, command.thermocouple);
    return simulatedSource({ clock, speed: command.speed, ...simulated, traits });
  }
  const { SerialSource } = await import('./probe/serial.ts');
  const { identifyDevice } = await import('./probe/port/identity.ts');
  const baudRate = command.serial.find((s) => s.path === choice.path)?.baud ?? DEFAULT_BAUD;
  const device = await identifyDevice(machine, choice.path);
  return new SerialSource({ device, baudRate, nowMs: () => clock.nowMs() });
}
